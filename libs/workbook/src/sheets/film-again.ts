import type { FilmCut, Plan, RedoMoney } from '#planning';
import { address, dollars, fixed, live, sumWhere } from '../cells.js';
import { FORMAT } from '../style.js';
import type { Column, TablePlace } from '../table.js';
import { type BoughtRoll, boughtColumns } from './bought-rolls.js';

/** How film for panes to be done again is told from film of the plan's lines. */
const MARK = 'to be done again';
const markedPhase = (phase: string): string => `${phase} redo: ${MARK}`;

/** Cuts for panes to be done again, their phase marked; none where no work was recorded. */
export const cutsAgain = (plan: Pick<Plan, 'settled'>): readonly FilmCut[] => (plan.settled?.redoCuts ?? []).map((cut) => ({ ...cut, phase: `${cut.phase}: ${MARK}` }));

/** All cuts of a plan, those for panes to be done again last and marked. */
export const markedCuts = (plan: Pick<Plan, 'cuts' | 'settled'>): readonly FilmCut[] => [...plan.cuts, ...cutsAgain(plan)];

/** Panes to be done again that film is cut for: their glass is there and a year is left for them. */
export const panesToCutAgain = (plan: Pick<Plan, 'settled'>): number => (plan.settled?.redoWork ?? []).filter((w) => w.phase !== null).reduce((sum, w) => sum + w.panes.length, 0);

export const againRows = (plan: Pick<Plan, 'settled'>): BoughtRoll[] => cutsAgain(plan).flatMap((c) => c.bought.map((b): BoughtRoll => ({ ...b, phase: c.phase, film: c.film })));

/** Rolls bought for panes of a year to be done again, in cents before tax. */
export const boughtAgain_cents = (plan: Pick<Plan, 'settled'>, phase: string): number => againRows(plan).filter((r) => r.phase === markedPhase(phase)).reduce((sum, r) => sum + r.count * r.price_cents, 0);

const COST_COLUMN = 8;
/** Columns of the table of money. */
export const KEPT = { rolls: 3, tax: 4, film: 5 } as const;

export const againColumns = (money: string): readonly Column<BoughtRoll>[] => [
  ...boughtColumns(),
  { head: 'Price of a roll', unit: money, width: 13, format: FORMAT.money, value: (r) => dollars(r.price_cents) },
  { head: 'Cost', unit: money, width: 13, format: FORMAT.money, isSummed: true, value: (r, _, row) => live(`ROUND(${address(6, row)}*${address(7, row)},2)`, dollars(r.count * r.price_cents)) },
];

/** What is kept of each cap for panes to be done again, beside the rolls of the table above. */
export function keptColumns(plan: Plan, rolls: TablePlace): readonly Column<RedoMoney>[] {
  const money = plan.terms.currency;
  const run = (column: number): string => `${fixed(column, rolls.firstRow)}:${fixed(column, Math.max(rolls.firstRow, rolls.lastRow))}`;
  return [
    { head: 'Phase', unit: '', width: 18, value: (k) => markedPhase(k.phase) },
    { head: 'Panes', unit: '', width: 12, format: FORMAT.whole, isSummed: true, value: (k) => (plan.settled?.redoWork ?? []).filter((w) => w.phase === k.phase).reduce((sum, w) => sum + w.panes.length, 0) },
    { head: 'Rolls above', unit: money, width: 32, format: FORMAT.money, isSummed: true, value: (k, _, row) => live(sumWhere(run(COST_COLUMN), [[run(1), address(1, row)]]), dollars(boughtAgain_cents(plan, k.phase))) },
    { head: 'Tax on film', unit: 'share, as run', width: 12, format: FORMAT.percent, value: () => plan.terms.materialTaxShare },
    { head: 'Film kept', unit: `${money}, tax in it`, width: 12, format: FORMAT.money, isSummed: true, value: (k) => dollars(k.film_cents) },
    { head: 'Work kept', unit: money, width: 12, format: FORMAT.money, isSummed: true, value: (k) => dollars(k.work_cents) },
    { head: 'Crew', unit: 'person-min', width: 12, format: FORMAT.whole, isSummed: true, value: (k) => k.minutes },
  ];
}
