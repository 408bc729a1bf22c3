import type { Plan } from '../plan/plan.js';
import { coolingFigures } from './cooling.js';
import { cutSizes } from './cut-size.js';
import type { Figure, ReceiptAt } from './figure.js';
import { filmFigures } from './film-price.js';
import { glassFigures } from './glass.js';
import { lineCost } from './line-cost.js';
import { lineSaving } from './line-saving.js';
import { lineValue } from './line-value.js';
import { meterFigures } from './meter-bill.js';
import { phaseFigures } from './phase-spending.js';
import { planFigures } from './plan-figures.js';
import { dwellingRank, facadeRank, lineRank } from './rank.js';
import type { Receipt } from './receipt.js';
import { rollsOfPlan } from './rolls.js';
import { sunFigures } from './sun.js';

/** The figures of the plan as a whole: few, whatever its size. */
export const headlineFigures = (plan: Plan): Figure[] => [...planFigures(), ...plan.phases.flatMap(phaseFigures), ...plan.films.flatMap(filmFigures), ...rollsOfPlan(plan), ...glassFigures(plan)];

/** Every figure of a plan that can be opened, in the order of reading: the plan as a whole, its lines, then cooling, bills, sun, sizes, ranks. */
export function receiptFigures(plan: Plan): Figure[] {
  const ranked = new Map(plan.rankedDwellings.map((row) => [row.dwelling, row]));
  return [
    ...headlineFigures(plan),
    ...plan.lines.flatMap((line) => {
      const row = ranked.get(line.dwelling);
      return [...lineCost(line), lineSaving(line), ...lineValue(line), ...(row === undefined ? [] : [lineRank(row)])];
    }),
    ...plan.lines.flatMap(coolingFigures),
    ...plan.meters.flatMap(meterFigures),
    ...sunFigures(plan),
    ...plan.lines.flatMap(cutSizes),
    ...plan.rankedDwellings.map(dwellingRank),
    ...plan.rankedFacades.map(facadeRank),
  ];
}

/** What a plan shows and no receipt opens, with the reason. */
export const WITHOUT_RECEIPT: readonly { readonly what: string; readonly why: string }[] = [
  { what: 'chances, ranges, what moves the result', why: 'they come from draws over all dwellings; the same plan with the same seed gives them again' },
  { what: 'everything eligible, value behind a letter, reserve, value against cap', why: 'they look at all options, of which a plan keeps the chosen ones; `rollout plan` works them again' },
  { what: 'cooling with film under its own moisture, design day', why: 'moisture of the dwelling as found is kept behind film, and no kernel takes it; the saving they lead to has a receipt' },
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
