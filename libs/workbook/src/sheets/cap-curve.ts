import type { CapCurve, CapCurvePoint, Plan } from '#planning';
import type { Book } from '../book.js';
import { dollars } from '../cells.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';

interface CurveRow {
  readonly curve: CapCurve;
  readonly point: CapCurvePoint;
  readonly before: CapCurvePoint | undefined;
}

/** Value of the next dollar on the way to a point, from the one before. */
function slope({ point, before }: CurveRow): number | null {
  if (before === undefined || point.cap_cents <= before.cap_cents) return null;
  return (point.value_cents - before.value_cents) / (point.cap_cents - before.cap_cents);
}

/** Value against cap: exact breakpoints where the caps share no dwelling, otherwise the choice made again. */
export function capCurveSheet(book: Book, plan: Plan): void {
  const money = plan.terms.currency;
  const curves = plan.explanations?.curves ?? [];
  const rows = curves.flatMap((curve) => curve.points.map((point, i): CurveRow => ({ curve, point, before: curve.points[i - 1] })));
  oneTableSheet<CurveRow>(book, {
    name: SHEET.capCurve,
    isAsRun: true,
    about: `${plan.name}: what more or less money would be worth`,
    notes: [...new Set(curves.map((c) => `${c.of}: ${c.basis}; ${c.why}`))],
    columns: [
      { head: 'Cap of', unit: '', width: 18, value: (r) => r.curve.of },
      { head: 'Cap', unit: money, width: 13, format: FORMAT.money, value: (r) => dollars(r.point.cap_cents) },
      { head: 'Value', unit: money, width: 13, format: FORMAT.money, value: (r) => dollars(r.point.value_cents) },
      { head: 'No plan passes', unit: money, width: 13, format: FORMAT.money, value: (r) => dollars(r.point.bound_cents) },
      { head: 'Per further dollar', unit: 'value per dollar', width: 14, format: '0.00', value: (r) => slope(r) },
      { head: 'What changes', unit: 'dwellings that enter, change or leave', width: 60, value: (r) => r.point.changes.join(' ') },
    ],
    rows,
    none: 'No dwelling can be chosen: there is nothing to draw.',
  });
}
