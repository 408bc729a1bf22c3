import { shareReaching, spreadOf } from '#calc';
import type { LineChances } from '../uncertainty/outlook.js';
import type { Plan, PlanLine } from '../plan/plan.js';
import { beyondLinesNow_cents, drawnAgain, type DrawnLine } from './drawn-again.js';
import type { Figure, ReceiptAt } from './figure.js';
import { digits, dollars, percent } from './receipt-numbers.js';
import { type Receipt, type ReceiptAssumption, type ReceiptStep, workedOut } from './receipt.js';

type Basis = 'as-modelled' | 'in-bills';
type Quantity = 'yearly' | 'value' | 'pays-back';
type Which = 'nine-in-ten' | 'middle' | 'one-in-ten';

interface ChanceFigure extends Pick<Figure, 'id' | 'title'> {
  readonly lines: readonly PlanLine[];
  /** Null for the plan as a whole. */
  readonly dwelling: string | null;
  readonly basis: Basis;
  readonly quantity: Quantity;
  readonly which: Which | null;
}

const FIELD = { 'nine-in-ten': 'nineInTenAtLeast', middle: 'middle', 'one-in-ten': 'oneInTenMoreThan' } as const;
const GONE = 'the survey kept now does not hold all these dwellings any more';

/** One draw of a quantity with its numbers in. */
interface Drawn {
  readonly value: number;
  readonly words: string;
}

function drawOf({ drawn, found }: DrawnLine, of: { readonly quantity: Quantity; readonly basis: Basis; readonly d: number }): Drawn {
  const share = of.basis === 'in-bills' ? found[of.d]! : 1;
  const words = of.basis === 'in-bills' ? `${digits(share, 6)} × ` : '';
  if (of.quantity === 'yearly') return { value: share * drawn.yearly_cents[of.d]!, words: `${words}${dollars(drawn.yearly_cents[of.d]!)} a year` };
  const [saved, cost] = of.quantity === 'value' ? [drawn.saved_cents[of.d]!, drawn.cost_cents[of.d]!] : [drawn.plainSaved_cents[of.d]!, drawn.plainCost_cents[of.d]!];
  return { value: share * saved - cost, words: `${words}${dollars(saved)} − ${dollars(cost)}` };
}

/** All draws of the figure. The plan's own chance of paying back is that of a value not below zero. */
function drawsOf(of: ChanceFigure, lines: readonly DrawnLine[], plan: Plan): Drawn[] {
  const quantity = of.dwelling === null && of.quantity === 'pays-back' ? 'value' : of.quantity;
  const beyond = of.dwelling === null && quantity === 'value' ? beyondLinesNow_cents(plan) : 0;
  return Array.from({ length: plan.outlook!.draws }, (_, d): Drawn => {
    const each = lines.map((l) => drawOf(l, { quantity, basis: of.basis, d }));
    if (of.dwelling !== null) return each[0]!;
    const sum = each.reduce((total, e) => total + e.value, 0);
    return { value: sum - beyond, words: `Σ lines ${dollars(sum)}${beyond === 0 ? '' : ` − beyond the lines ${dollars(beyond)}`}` };
  });
}

const statedOf = (of: ChanceFigure, chances: LineChances): number => (of.which === null ? chances.paysBackShare : (of.quantity === 'yearly' ? chances.yearly_cents : chances.value_cents)[FIELD[of.which]]);

function formulaOf({ dwelling, quantity, basis, which }: ChanceFigure, draws: number): string {
  const share = basis === 'in-bills' ? 'share found in bills × ' : '';
  const each = quantity === 'yearly' ? `${share}mean yearly saving over the film’s life, all payers, net of added heating` : quantity === 'value' || dwelling === null ? `${share}savings of the film’s life worth today − cost less rebate, taking film off at its end in it${dwelling === null ? ', all lines, less what is paid beyond them' : ''}` : `${share}savings of the film’s life − cost less rebate, taking film off at its end in it, not discounted`;
  if (which === null) return `chance = share of ${String(draws)} draws in which this is not below zero: ${each}`;
  const place = { 'nine-in-ten': '0.1', middle: '0.5', 'one-in-ten': '0.9' }[which];
  return `the draw at place (${String(draws)} − 1) × ${place} in rising order, between two draws in proportion, of: ${each}. Each draw runs the dwelling hour by hour, bare and filmed, and bills both`;
}

/** What was drawn; a kernel gives the draws of each. */
function drawn(plan: Plan): ReceiptAssumption[] {
  const { seed, draws, inputs } = plan.outlook!;
  return [{ name: 'seed and number of draws', value: `${String(seed)}, ${String(draws)}`, unit: 'kernel `draw` gives the draws of an input from them', source: 'asked for', basis: 'given' }, ...inputs.map((i): ReceiptAssumption => ({ name: i.label, value: `a draw for each ${i.scope}`, unit: i.unit, source: i.source, basis: 'assumed' }))];
}

async function chanceReceipt(of: ChanceFigure, at: ReceiptAt): Promise<Receipt> {
  const { plan } = at;
  const outlook = plan.outlook!;
  const survey = await at.survey();
  const found = await Promise.all(of.lines.map((line) => drawnAgain(line, plan, survey)));
  const lines = found.flatMap((l) => l ?? []);
  const whole = lines.length === of.lines.length;
  const draws = whole ? drawsOf(of, lines, plan) : [];
  const values = draws.map((d) => d.value);
  const chances = of.dwelling === null ? outlook : outlook.lines.find((l) => l.dwelling === of.dwelling)!;
  const stated = statedOf(of, of.basis === 'in-bills' ? chances.inBills : chances.asModelled);
  const worked = !whole || values.length === 0 ? 'not worked' : of.which === null ? shareReaching(values, 0) : spreadOf(values)[FIELD[of.which]];
  const read = of.which === null ? 'shareReaching' : FIELD[of.which];
  const unit = of.which === null ? 'share' : 'cents';
  return {
    figure: of.id, title: of.title, value: stated, unit, formula: formulaOf(of, outlook.draws),
    steps: [...draws.map((d, i): ReceiptStep => ({ label: `draw ${String(i)}`, substituted: `${d.words} = ${dollars(d.value)}`, value: d.value, unit: 'cents' })), ...(typeof worked === 'number' ? [{ label: 'result', substituted: `of ${String(values.length)} draws: ${of.which === null ? percent(worked) : dollars(worked)}`, value: worked, unit }] : [])],
    rows: [], assumptions: drawn(plan),
    compute: typeof worked === 'number' ? { kernel: 'spread', input: { draws: values }, result: [{ pointer: `/${read}`, times: 1 }], words: read } : null,
    computeWhy: typeof worked === 'number' ? 'the draws listed are full runs made again from the survey; the kernel `draw` gives what was drawn of each input' : GONE,
    worked: workedOut(stated, worked, 'the survey was changed since the plan was made, or neighbours on the meter were chosen in other rounds'),
    see: of.dwelling === null ? of.lines.slice(0, 3).map((l) => `line/${l.dwelling}/chance/${of.basis}/value/middle`) : [`line/${of.dwelling}/npv`, `line/${of.dwelling}/realisation/middle`],
  };
}

const WORDS: Readonly<Record<Which, string>> = { 'nine-in-ten': '9 in 10 chance of at least', middle: 'Middle', 'one-in-ten': '1 in 10 chance of more than' };
const BASIS: Readonly<Record<Basis, string>> = { 'as-modelled': 'as modelled', 'in-bills': 'as expected in bills' };

function figures(place: { readonly prefix: string; readonly of: string; readonly lines: readonly PlanLine[]; readonly dwelling: string | null }): Figure[] {
  const make = (rest: string, title: string, asked: Pick<ChanceFigure, 'basis' | 'quantity' | 'which'>): Figure => {
    const about = { id: `${place.prefix}/chance/${asked.basis}/${rest}`, title: `${title} of ${place.of}, ${BASIS[asked.basis]}` };
    return { ...about, receipt: (at) => chanceReceipt({ ...about, ...asked, lines: place.lines, dwelling: place.dwelling }, at) };
  };
  return (Object.keys(BASIS) as Basis[]).flatMap((basis) => [
    ...(['yearly', 'value'] as const).flatMap((quantity) => (Object.keys(WORDS) as Which[]).map((which) => make(`${quantity}/${which}`, `${WORDS[which]}, ${quantity === 'yearly' ? 'yearly saving' : 'value'}`, { basis, quantity, which }))),
    make('pays-back', 'Chance of paying back', { basis, quantity: 'pays-back', which: null }),
  ]);
}

/** Chances of the plan as a whole. */
export const planChances = (plan: Plan): Figure[] => (plan.outlook === null || plan.lines.length === 0 ? [] : figures({ prefix: 'plan', of: 'the plan', lines: plan.lines, dwelling: null }));

/** Chances of a line. */
export const lineChances = (plan: Plan, line: PlanLine): Figure[] =>
  plan.outlook?.lines.some((l) => l.dwelling === line.dwelling) === true ? figures({ prefix: `line/${line.dwelling}`, of: line.dwelling, lines: [line], dwelling: line.dwelling }) : [];
