import type { CutJob, CutResult, LotJob } from '#calc';
import { defaultsOf } from '../job/plan-job.js';
import type { Plan } from '../plan/plan.js';
import type { FilmCut } from '../rolls/cut-types.js';
import { type CutMade, keepsLots } from '../rolls/cut-list.js';
import { priceByRolls } from '../rolls/price-by-rolls.js';
import { termsUsed } from './assumptions-of.js';
import type { Figure, ReceiptAt } from './figure.js';
import { part } from './figure.js';
import { added, digits, dollars } from './receipt-numbers.js';
import { type Receipt, type ReceiptCompute, type ReceiptStep, workedOut } from './receipt.js';
import { rollRows, windowRows } from './survey-rows.js';

const SAME_WIDTH_mm = 1e-6;

/** The cutting of all phases of a plan once more, with what each cut was asked: a phase uses what the ones before it left. */
export function cutsAgain({ plan, catalogue }: ReceiptAt): readonly CutMade[] {
  const phases = plan.phases.map((p) => p.phase);
  const lines = plan.lines.map((line) => ({ option: line.option, phase: phases.findIndex((p) => p.id === line.phase), value: line.value }));
  const windows = new Map(plan.lines.map((line) => [line.option.id, line.windows]));
  const rule = plan.cutReviews[0]?.rule;
  const lotRule = plan.cutReviews[0]?.oneLot?.rule;
  const assumedRotate = defaultsOf(catalogue)<boolean>('mayRotate').value;
  const priced = priceByRolls({ lines, proof: plan.proof }, {
    phases,
    buildings: new Map(plan.buildings.map((b) => [b.id, b])),
    films: new Map(plan.films.map((f) => [f.film.id, f.film])),
    rolls: plan.rolls,
    terms: plan.terms,
    visit: () => ({ cents: 0, minutes: 0 }), // only the cuts are read
    mayRotate: (film) => film.mayRotate ?? assumedRotate,
    ...(rule === undefined ? {} : { cutRule: rule }),
    ...(lotRule === undefined ? {} : { lotRule }),
    windowsOf: ({ option }) => windows.get(option.id) ?? [],
  });
  return priced.phases.flatMap((p) => p.made);
}

/** A cut job as the kernel takes it. */
function kernelInput({ job, request }: CutMade): object {
  const { groupOf, crewOrder, elevationOf, lotOf, ...own } = job as CutJob & Partial<LotJob> & { readonly groupOf?: Readonly<Record<string, string>>; readonly crewOrder?: readonly string[] };
  const rule = request.rule ?? 'pooled';
  const isOneLot = keepsLots(request, own.rolls);
  const pieces = own.pieces.map((p) => ({ ...p, ...(rule === 'pooled' ? {} : { group: groupOf?.[p.id] ?? p.id }), ...(isOneLot ? { elevation: elevationOf?.[p.id] ?? p.id } : {}) }));
  const rolls = isOneLot ? own.rolls.map((r, row) => ({ ...r, ...(typeof lotOf?.[row] === 'string' ? { lot: lotOf[row] } : {}) })) : own.rolls;
  return { pieces, rolls, ...(isOneLot ? { oneLot: true } : {}), ...(rule === 'pooled' ? {} : rule === 'crew order' ? { crewOrder } : { keepTogether: true }) };
}

const cutStep = (cut: FilmCut): ReceiptStep[] => cut.bought.map((b): ReceiptStep => ({ label: `roll ${b.roll}, ${b.width} wide`, substituted: `${String(b.count)} × ${dollars(b.price_cents)} = ${dollars(b.cost_cents)}`, value: b.cost_cents, unit: 'cents' }));

function usedSteps(cut: FilmCut): ReceiptStep[] {
  return cut.rolls.map((roll): ReceiptStep => {
    const pieces = cut.pieces.filter((p) => p.roll === roll.roll);
    return { label: `${roll.roll} (${roll.source})`, substituted: `${String(pieces.length)} pieces end at ${digits(roll.running_mm)} mm of ${digits(roll.length_mm)} mm`, value: roll.running_mm, unit: 'mm' };
  });
}

interface RollFigure extends Pick<Figure, 'id' | 'title'> {
  readonly cut: FilmCut;
  readonly field: 'cost' | 'bought-area' | 'least-area';
}

const statedOf = ({ cut, field }: RollFigure): number => (field === 'cost' ? cut.cost_cents : field === 'bought-area' ? cut.boughtArea_m2 : cut.lowerBoundArea_m2);

/** Rolls of one kind bought in the kernel's answer are counted in its list; the cost is theirs. */
function resultOf(field: RollFigure['field'], result: CutResult): Pick<ReceiptCompute, 'result' | 'words'> | null {
  if (field === 'cost') return result.cost_cents === null ? null : { result: [{ pointer: '/cost_cents', times: 1 }], words: 'cost_cents' };
  const pointer = field === 'bought-area' ? '/boughtArea_mm2' : '/lowerBoundArea_mm2';
  return { result: [{ pointer, times: 1e-6 }], words: `${pointer.slice(1)} ÷ 1,000,000` };
}

function rollReceipt(of: RollFigure, at: ReceiptAt): Receipt {
  const { plan } = at;
  const { cut } = of;
  const stated = statedOf(of);
  const made = cutsAgain(at).find((m) => m.cut.phase === cut.phase && m.cut.film === cut.film);
  const again = made === undefined ? null : statedOf({ ...of, cut: made.cut });
  const answer = made === undefined ? null : resultOf(of.field, made.result);
  const same = again !== null && Math.abs(again - stated) <= SAME_WIDTH_mm;
  const bought = cutStep(cut);
  const lines = plan.lines.filter((l) => l.phase === cut.phase);
  return {
    figure: of.id,
    title: of.title,
    value: stated,
    unit: of.field === 'cost' ? 'cents' : 'm2',
    formula: of.field === 'cost' ? 'film bought = Σ whole rolls × price; every pane is a whole piece laid on a roll, stock first' : of.field === 'bought-area' ? 'area bought = Σ width × length of the rolls bought' : 'the least area any cutting of these pieces could buy',
    steps: [...usedSteps(cut), ...bought, ...(of.field === 'cost' ? [{ label: 'film bought', substituted: `${added(bought.map((b) => dollars(b.value))) || 'all from stock'} = ${dollars(cut.cost_cents)}`, value: cut.cost_cents, unit: 'cents' }] : [])],
    rows: [...rollRows(plan, cut.film), ...lines.flatMap((l) => windowRows(l.windows.filter((w) => w.film === cut.film), ['width', 'height', 'lite_rows', 'lite_columns']))],
    assumptions: termsUsed(plan.terms, ['trimPerEdge_mm']),
    compute: made === undefined || answer === null || !same ? null : { kernel: 'cut', input: kernelInput(made), ...answer },
    computeWhy: same ? (answer === null ? 'nothing is bought: all pieces come from stock' : null) : 'the rolls were laid out with film or work that is not in the plan any more',
    worked: workedOut(stated, again ?? 'not cut again', 'the rolls were laid out with film or work that is not in the plan any more'),
    see: [`phase/${part(cut.phase)}/spending`],
  };
}

/** Rolls of one film in one phase. */
export function rollFigures(cut: FilmCut): Figure[] {
  const figure = (field: RollFigure['field'], title: string): Figure => {
    const about = { id: `rolls/${part(cut.phase)}/${part(cut.film)}/${field}`, title: `${title} of ${cut.film} in ${cut.phase}` };
    return { ...about, receipt: (at) => rollReceipt({ ...about, cut, field }, at) };
  };
  return [figure('cost', 'Film bought'), figure('bought-area', 'Area bought'), figure('least-area', 'Least area to buy')];
}

/** Cuts of a plan that can be opened. */
export const rollsOfPlan = (plan: Plan): Figure[] => plan.cuts.flatMap(rollFigures);
