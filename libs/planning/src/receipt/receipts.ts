import type { Plan } from '../plan/plan.js';
import { curveFigures } from './cap-curve.js';
import { lineChances, planChances } from './chance.js';
import { coolingFigures } from './cooling.js';
import { calendarFigures } from './crew-minutes.js';
import { cutSizes } from './cut-size.js';
import type { Figure, ReceiptAt } from './figure.js';
import { filmFigures } from './film-price.js';
import { glassFigures } from './glass.js';
import { ledgerFigures } from './ledger.js';
import { priceFigures } from './limit-price.js';
import { lineCost } from './line-cost.js';
import { lineOwner } from './line-owner.js';
import { lineSaving } from './line-saving.js';
import { lineValue } from './line-value.js';
import { meterFigures } from './meter-bill.js';
import { meterSavings } from './meter-saving.js';
import { phaseFigures } from './phase-spending.js';
import { planFigures } from './plan-figures.js';
import { planTotals } from './plan-totals.js';
import { dwellingRank, facadeRank, lineRank } from './rank.js';
import { lineRealisation, planRealisation } from './realisation.js';
import { rebateFigures } from './rebate.js';
import type { Receipt } from './receipt.js';
import { reserveFigures } from './reserve-line.js';
import { rollsOfPlan } from './rolls.js';
import { sunFigures } from './sun.js';
import { waitingFigures } from './waiting.js';

/** The figures of the plan as a whole: few, whatever its size. */
export const headlineFigures = (plan: Plan): Figure[] => [
  ...planFigures(), ...planTotals(), ...planRealisation(plan), ...planChances(plan),
  ...plan.phases.flatMap(phaseFigures), ...ledgerFigures(plan), ...rebateFigures(plan), ...priceFigures(plan), ...curveFigures(plan), ...calendarFigures(plan),
  ...plan.films.flatMap(filmFigures), ...rollsOfPlan(plan), ...waitingFigures(plan), ...glassFigures(plan),
];

/** Every figure of a plan that can be opened, in the order of reading: the plan as a whole, its lines, then cooling, bills, sun, sizes, ranks. */
export function receiptFigures(plan: Plan): Figure[] {
  const ranked = new Map(plan.rankedDwellings.map((row) => [row.dwelling, row]));
  return [
    ...headlineFigures(plan),
    ...plan.lines.flatMap((line) => {
      const row = ranked.get(line.dwelling);
      return [...lineCost(line), lineSaving(line), ...lineValue(line), ...lineOwner(plan, line), ...lineRealisation(line), ...lineChances(plan, line), ...(row === undefined ? [] : [lineRank(row)])];
    }),
    ...plan.lines.flatMap(coolingFigures),
    ...plan.meters.flatMap((meter) => [...meterFigures(meter), ...meterSavings(meter)]),
    ...sunFigures(plan),
    ...plan.lines.flatMap(cutSizes),
    ...reserveFigures(plan),
    ...plan.rankedDwellings.map(dwellingRank),
    ...plan.rankedFacades.map(facadeRank),
  ];
}

/** What a plan shows and no receipt opens, with the reason. */
export const WITHOUT_RECEIPT: readonly { readonly what: string; readonly why: string }[] = [
  { what: 'how often a line makes the plan, what moves the result, range of a rank', why: 'they come from choices made again, or from all draws of all dwellings at once; the same plan with the same seed gives them again. The kernel `draw` gives what was drawn of each input' },
  { what: 'everything eligible, and the part of it that pays', why: 'they look at all options, of which a plan keeps the chosen ones; `rollout plan` works them again' },
  { what: 'seasons and design day of the energy review, edge stress', why: 'the design day has hours of its own that no kernel takes; the loads and the electricity of the year have receipts' },
  { what: 'calibration and verification by bills', why: '`rollout verify` works them again from the bills; the kernel `change-point` takes the bills of one meter' },
  { what: 'savings of later spans of a line', why: 'the first span is opened; later ones run the same way with the plant or the windows of their years' },
];

/** There is no such figure; these come nearest. */
export interface NoSuchFigure {
  readonly asked: string;
  readonly nearest: readonly string[];
}

/** The same id whether or not its slashes are written as %2F. */
function plain(id: string): string {
  try {
    return decodeURIComponent(id);
  } catch {
    return id;
  }
}

const pairsOf = (text: string): Set<string> => new Set(Array.from({ length: Math.max(0, text.length - 1) }, (_, i) => text.slice(i, i + 2)));

/** How alike two ids are, 0…1: neighbouring letters they share. */
function alike(a: ReadonlySet<string>, b: ReadonlySet<string>): number {
  let shared = 0;
  for (const pair of a) if (b.has(pair)) shared += 1;
  return a.size + b.size === 0 ? 0 : (2 * shared) / (a.size + b.size);
}

const NEAREST = 5;

/** Opens a figure of a plan. */
export async function receiptOf(id: string, at: ReceiptAt): Promise<Receipt | NoSuchFigure> {
  const figures = receiptFigures(at.plan);
  const wanted = plain(id);
  const found = figures.find((f) => plain(f.id) === wanted);
  if (found !== undefined) return found.receipt(at);
  const asked = pairsOf(wanted.toLowerCase());
  const scored = figures.map((f) => ({ id: f.id, score: alike(asked, pairsOf(plain(f.id).toLowerCase())) }));
  scored.sort((a, b) => b.score - a.score || (a.id < b.id ? -1 : 1));
  return { asked: id, nearest: scored.slice(0, NEAREST).map((s) => s.id) };
}
