import { calibratedRealisation, learnedRealisation, studiedRealisation } from '#calc';
import { planTypesOf } from '../bills/compared-meters.js';
import { defaultsOf } from '../job/plan-job.js';
import type { Plan, PlanLine } from '../plan/plan.js';
import { builtIn } from './assumptions-of.js';
import type { Figure, ReceiptAt } from './figure.js';
import { digits, dollars } from './receipt-numbers.js';
import { BY_HAND, type Receipt, type ReceiptAssumption, type ReceiptStep, workedOut } from './receipt.js';

type Part = 'low' | 'middle' | 'high';
type About = Pick<Figure, 'id' | 'title'>;

const STUDIES = ['bronzeOffice', 'lowEFilmOffices', 'stormWindowHomes', 'absorbingTestRooms', 'reflectiveTestRooms'] as const;
const TENTH = 1.2816;
const WORDS: Readonly<Record<Part, string>> = { low: 'One in ten lies below', middle: 'Middle', high: 'One in ten lies above' };

/** What the kernel `realisation` takes for a dwelling. */
function inputOf(line: PlanLine, { plan, catalogue }: ReceiptAt): object {
  const defaultOf = defaultsOf(catalogue);
  const planType = planTypesOf(plan.dwellings)(line.dwelling);
  const group = plan.bills?.calibration.groups.find((g) => g.building === line.building && g.planType === planType);
  const measured = plan.bills?.verification?.realisation ?? null;
  const modelledShare = defaultOf<number>('study.modelledShare').value;
  return {
    studies: STUDIES.map((name) => ({ name, modelledShare, measuredShare: defaultOf<number>(`study.${name}`).value })),
    weight: line.realisation?.basis === 'model, not calibrated' ? 0 : (group?.weight ?? 0),
    explainedShare: defaultOf<number>('realisation.explainedShare').value,
    leftSpread: defaultOf<number>('realisation.leftSpread').value,
    ...(measured === null ? {} : { measured: { factor: measured.factor, standardError: measured.standardError } }),
  };
}

interface Given { readonly studies: readonly { readonly name: string; readonly measuredShare: number; readonly modelledShare: number }[]; readonly weight: number; readonly explainedShare: number; readonly leftSpread: number; readonly measured?: { readonly factor: number; readonly standardError: number } }

/** The factor by hand: mean and spread of logarithms, narrowed by bills before the work. */
function stepsOf(given: Given, part: Part): { readonly steps: ReceiptStep[]; readonly value: number } {
  const logs = given.studies.map((s) => Math.log(s.measuredShare / s.modelledShare));
  const mean = logs.reduce((sum, x) => sum + x, 0) / logs.length;
  const spread = Math.sqrt(logs.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (logs.length - 1));
  const kept = mean * (1 - given.weight * given.explainedShare);
  const left = Math.sqrt((1 - given.weight) * spread ** 2 + given.weight * Math.min(given.leftSpread, spread) ** 2);
  const sign = part === 'low' ? -1 : part === 'high' ? 1 : 0;
  const value = Math.exp(kept + sign * TENTH * left);
  const step = (label: string, substituted: string, of: number): ReceiptStep => ({ label, substituted, value: of, unit: 'share' });
  return {
    value,
    steps: [
      ...given.studies.map((s, i) => step(`study ${s.name}`, `ln(${digits(s.measuredShare)} ÷ ${digits(s.modelledShare)}) = ${digits(logs[i]!)}`, logs[i]!)),
      step('mean of the logarithms', `${digits(mean, 6)}, their standard deviation ${digits(spread, 6)}`, mean),
      step('bills before the work', `${digits(mean, 6)} × (1 − ${digits(given.weight, 6)} × ${digits(given.explainedShare)}) = ${digits(kept, 6)}`, kept),
      step('spread left', `√((1 − ${digits(given.weight, 6)}) × ${digits(spread, 6)}² + ${digits(given.weight, 6)} × ${digits(Math.min(given.leftSpread, spread), 6)}²) = ${digits(left, 6)}`, left),
      step('factor', `exp(${digits(kept, 6)}${sign === 0 ? '' : ` ${sign < 0 ? '−' : '+'} ${String(TENTH)} × ${digits(left, 6)}`}) = ${digits(value, 6)}`, value),
    ],
  };
}

/** The factor with bills after the work weighed in; null where there are none. */
function learnedValue({ studies, measured, weight, ...given }: Given, part: Part): number | null {
  return measured === undefined ? null : learnedRealisation(calibratedRealisation(studiedRealisation(studies), weight, given), measured)[part];
}

function sourcesOf({ catalogue }: ReceiptAt): ReceiptAssumption[] {
  const { assumptions } = catalogue;
  return [...STUDIES.map((name) => builtIn(`study ${name}, share of cooling saved`, assumptions.value(`study.${name}`))), builtIn('share saved as models give it', assumptions.value('study.modelledShare')), builtIn('part of the gap bills before the work explain', assumptions.value('realisation.explainedShare')), builtIn('spread left', assumptions.value('realisation.leftSpread'))];
}

function lineReceipt(line: PlanLine, part: Part, of: About & { readonly at: ReceiptAt }): Receipt {
  const stated = line.realisation![part];
  const input = inputOf(line, of.at) as Given;
  const { steps, value } = stepsOf(input, part);
  const learned = learnedValue(input, part);
  return {
    figure: of.id, title: of.title, value: stated, unit: 'share',
    formula: `share of a modelled saving expected in bills = exp(m ${part === 'middle' ? '' : `${part === 'low' ? '−' : '+'} 1.2816 × s`}); m and s are mean and standard deviation of ln(measured ÷ modelled) over the studies, m less the part that bills before the work explain${learned !== null ? '; then weighed with bills after the work by Bayes’ rule' : ''}`,
    steps: input.measured !== undefined && learned !== null ? [...steps, { label: 'bills after the work', substituted: `measured ÷ modelled ${digits(input.measured.factor)} ± ${digits(input.measured.standardError)}; weighed on a grid of 2,000 points of the logarithm: ${digits(learned, 6)}`, value: learned, unit: 'share' }] : steps,
    rows: [], assumptions: sourcesOf(of.at),
    compute: { kernel: 'realisation', input, result: [{ pointer: `/${part}`, times: 1 }], words: part }, computeWhy: null,
    worked: workedOut(stated, learned ?? value, 'bills or studies were changed since the plan was made'),
    see: [`line/${line.dwelling}/saving`],
  };
}

/** The factor of the whole plan: that of the lines, weighed by their yearly cooling cut. */
function planReceipt(plan: Plan, part: Part, of: About): Receipt {
  const stated = plan.bills!.plan[part];
  const cut = (l: PlanLine): number => Math.max(0, l.option.yearlyCooling_cents);
  const all = plan.lines.reduce((sum, l) => sum + cut(l), 0);
  const steps = plan.lines.map((l): ReceiptStep => ({ label: l.dwelling, substituted: `${dollars(cut(l))} × ${digits(l.realisation![part], 6)} = ${dollars(cut(l) * l.realisation![part])}`, value: cut(l) * l.realisation![part], unit: 'cents' }));
  const sum = steps.reduce((total, s) => total + s.value, 0);
  return {
    figure: of.id, title: of.title, value: stated, unit: 'share',
    formula: 'share expected of the plan = Σ yearly cooling cut × share of the line ÷ Σ yearly cooling cut: as if all lines were wrong together',
    steps: [...steps, { label: 'share', substituted: `${dollars(sum)} ÷ ${dollars(all)} = ${digits(sum / all, 6)}`, value: sum / all, unit: 'share' }],
    rows: [], assumptions: [], compute: null, computeWhy: BY_HAND, worked: workedOut(stated, sum / all, 'lines and plan do not close'), see: plan.lines.slice(0, 4).map((l) => `line/${l.dwelling}/realisation/${part}`),
  };
}

function expectedReceipt(plan: Plan, part: Part, of: About): Receipt {
  const { firstYearCooling_cents } = plan.payback;
  const share = plan.bills!.plan[part];
  const value = firstYearCooling_cents * share;
  return {
    figure: of.id, title: of.title, value, unit: 'cents', formula: 'first-year cooling saving expected in bills = first-year cooling saving as modelled × share expected of the plan',
    steps: [{ label: 'expected', substituted: `${dollars(firstYearCooling_cents)} × ${digits(share, 6)} = ${dollars(value)}`, value, unit: 'cents' }],
    rows: [], assumptions: [], compute: null, computeWhy: 'a product to be taken by hand', worked: workedOut(value, value, ''), see: [`plan/realisation/${part}`, 'plan/saving'],
  };
}

/** How much of the plan's saving is expected in bills. */
export function planRealisation(plan: Plan): Figure[] {
  if (plan.bills === undefined || plan.lines.length === 0 || plan.lines.some((l) => l.realisation === undefined)) return [];
  return (Object.keys(WORDS) as Part[]).flatMap((part): Figure[] => {
    const [share, money] = [{ id: `plan/realisation/${part}`, title: `${WORDS[part]}, share of the modelled saving expected in bills` }, { id: `plan/expected-saving/${part}`, title: `${WORDS[part]}, first-year cooling saving expected in bills` }];
    return [{ ...share, receipt: ({ plan: p }) => planReceipt(p, part, share) }, ...(plan.bills!.setting === 'as-modelled' ? [{ ...money, receipt: ({ plan: p }: ReceiptAt) => expectedReceipt(p, part, money) }] : [])];
  });
}

/** The same for a line. */
export const lineRealisation = (line: PlanLine): Figure[] =>
  line.realisation === undefined ? [] : (Object.keys(WORDS) as Part[]).map((part) => {
    const about = { id: `line/${line.dwelling}/realisation/${part}`, title: `${WORDS[part]}, share of the modelled saving of ${line.dwelling} expected in bills` };
    return { ...about, receipt: (at) => lineReceipt(line, part, { ...about, at }) };
  });
