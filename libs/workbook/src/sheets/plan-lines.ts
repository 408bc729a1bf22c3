import type { Plan, PlanLine } from '#planning';
import type { Book } from '../book.js';
import { dollars } from '../cells.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import type { Column, TablePlace } from '../table.js';

/** Columns other sheets point at. */
export const PLAN_COLUMN = { panes: 6 } as const;

const placeColumns: readonly Column<PlanLine>[] = [
  { head: 'Phase', unit: '', width: 18, value: (l) => l.phase },
  { head: 'Building', unit: '', width: 9, value: (l) => l.building },
  { head: 'Dwelling', unit: '', width: 14, value: (l) => l.dwelling },
];

/** The plan by phase: which dwelling, which sides, which film, what it costs and is worth. */
export function planSheet(book: Book, plan: Plan): TablePlace {
  const money = plan.terms.currency;
  return oneTableSheet<PlanLine>(book, {
    name: SHEET.plan,
    isAsRun: true,
    about: `${plan.name}: ${String(plan.lines.length)} dwellings in ${String(plan.phases.filter((p) => p.lines > 0).length)} phases; a phase is a fiscal year of an owner entity`,
    notes: [
      `Cost of the lines is before what belongs to the plan (visits, freight, whole rolls, contingency): see ${SHEET.summary}. Values are net present at ${plan.terms.studyStart}, over the film's life. More of each line: ${SHEET.planDetails}.`,
    ],
    columns: [
      ...placeColumns,
      { head: 'Facades', unit: '° from north', width: 12, value: (l) => l.option.facades.join(', ') },
      { head: 'Film', unit: '', width: 6, value: (l) => l.option.film },
      { head: 'Panes', unit: '', width: 7, format: FORMAT.whole, isSummed: true, value: (l) => l.option.paneCount },
      { head: 'Installed cost', unit: money, width: 11, format: FORMAT.money, isSummed: true, value: (l) => dollars(l.option.cost.total_cents) },
      { head: 'Cooling cost reduced', unit: `${money}/yr, mean`, width: 11, format: FORMAT.money, isSummed: true, value: (l) => dollars(l.option.yearlyCooling_cents) },
      { head: 'Value, whole building', unit: money, width: 11, format: FORMAT.money, isSummed: true, value: (l) => dollars(l.value.whole_cents) },
      { head: 'Value, owner', unit: money, width: 11, format: FORMAT.money, isSummed: true, value: (l) => dollars(l.value.owner_cents) },
      { head: 'Simple payback', unit: 'years', width: 8, format: FORMAT.one, value: (l) => l.simplePayback_yr ?? l.paybackWhy ?? 'not known' },
      { head: 'Reason', unit: '', width: 48, value: (l) => l.reason },
    ],
    rows: plan.lines,
    total: 'Total',
    none: 'Nothing is planned: nothing eligible pays within the caps.',
    frozenColumns: 3,
  }).place;
}

/** Rows of the survey behind a line, file by file. */
function rowsOf(line: PlanLine): string {
  const files = new Map<string, Set<number>>();
  for (const { inventoryRow: at } of line.windows) files.set(at.file, (files.get(at.file) ?? new Set()).add(at.row));
  return [...files].map(([file, rows]) => `${file} ${[...rows].sort((a, b) => a - b).join(', ')}`).join('; ');
}

/** The rest of each line, in the same order. */
export function planDetailsSheet(book: Book, plan: Plan): void {
  oneTableSheet<PlanLine>(book, {
    name: SHEET.planDetails,
    isAsRun: true,
    about: `${plan.name}: effort, what bills are expected to show, and where each line comes from; same order as ${SHEET.plan}`,
    columns: [
      ...placeColumns,
      { head: 'Glass', unit: 'm²', width: 8, format: FORMAT.two, value: (l) => l.option.glassArea_m2 },
      { head: 'Labour', unit: 'person-min', width: 9, format: FORMAT.whole, value: (l) => l.option.minutes.best },
      { head: 'SIR', unit: 'ratio', width: 7, format: FORMAT.two, value: (l) => l.sir },
      { head: 'Expected in bills', unit: 'of the modelled', width: 10, format: FORMAT.percent, value: (l) => l.realisation?.middle ?? '' },
      { head: 'low', unit: '1 in 10 below', width: 8, format: FORMAT.percent, value: (l) => l.realisation?.low ?? '' },
      { head: 'high', unit: '1 in 10 above', width: 8, format: FORMAT.percent, value: (l) => l.realisation?.high ?? '' },
      { head: 'Where plan and rank differ', unit: '', width: 34, value: (l) => l.differs ?? '' },
      { head: 'From rows', unit: 'file and row of the survey', width: 32, value: rowsOf },
    ],
    rows: plan.lines,
    none: 'Nothing is planned.',
    frozenColumns: 3,
  });
}
