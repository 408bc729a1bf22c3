import { stepsCost_cents } from '#calc';
import type { MonthUse } from '#planning';
import { address, fixed } from '../cells.js';
import { onTariffs, type StepsPlace, TARIFF_COLUMN, type TariffPlace } from './tariffs-sheet.js';

/** Columns of one month's use on the sheet: as found or with the film. */
export interface UseColumns {
  readonly bought: readonly number[];
  readonly sold: readonly number[];
  readonly periodPeak: readonly number[];
  readonly peak: number | null;
}

const run = (column: number, { first, last }: StepsPlace): string => `${fixed(column, first)}:${fixed(column, last)}`;

/**
 * Cost of an amount by steps, as a short formula: what lies above the start of each step, at what that step costs over the one before.
 * A limit stated for a day starts later in a long month.
 */
function stepsFormula(steps: StepsPlace, at: { readonly use: string; readonly days: string }): string {
  if (steps.first === steps.last) return `${at.use}*${onTariffs(fixed(TARIFF_COLUMN.price, steps.first))}`;
  const from = onTariffs(run(TARIFF_COLUMN.from, steps));
  const start = steps.daily ? `${at.days}*${from}` : from;
  return `SUMPRODUCT((${at.use}>${start})*(${at.use}-${start})*${onTariffs(run(TARIFF_COLUMN.over, steps))})`;
}

const perMonth = (row: number, per: 'month' | 'day', days: string): string => `${onTariffs(fixed(TARIFF_COLUMN.price, row))}${per === 'day' ? `*${days}` : ''}`;

/** All charges of a month before the least bill. */
export function chargesFormula(tariff: TariffPlace, at: { readonly columns: UseColumns; readonly row: number; readonly days: string; readonly month: number }): string {
  const cell = (column: number): string => address(column, at.row);
  const parts: string[] = tariff.energy.map((steps, p) => stepsFormula(steps, { use: cell(at.columns.bought[p]!), days: at.days }));
  tariff.sellRow.forEach((row, p) => {
    const column = at.columns.sold[p];
    if (row !== null && column !== undefined) parts.push(`-1*${cell(column)}*${onTariffs(fixed(TARIFF_COLUMN.price, row))}`);
  });
  parts.push(...tariff.demand.map((steps, p) => stepsFormula(steps, { use: cell(at.columns.periodPeak[p]!), days: at.days })));
  const flat = flatOf(tariff, at.month);
  if (flat !== null && at.columns.peak !== null) parts.push(stepsFormula(flat, { use: cell(at.columns.peak), days: at.days }));
  parts.push(perMonth(tariff.fixedRow, tariff.tariff.fixedPer, at.days));
  return parts.join('+').replaceAll('+-1*', '-1*');
}

const flatOf = (tariff: TariffPlace, month: number): StepsPlace | null => (tariff.tariff.flatDemand === null ? null : (tariff.flatDemand[tariff.tariff.flatDemand.months[month]!] ?? null));

/** The same charges in dollars, by the functions every bill is made with. */
export function charges(tariff: TariffPlace, use: MonthUse, of: { readonly days: number; readonly month: number }): number {
  const cost = (steps: StepsPlace, amount: number): number => stepsCost_cents(steps.steps, amount, of.days);
  const energy = tariff.energy.reduce((sum, steps, p) => sum + cost(steps, use.bought_kWh[p] ?? 0), 0);
  const sold = tariff.tariff.energy.reduce((sum, steps, p) => sum + (steps.find((s) => s.sell_cents !== null)?.sell_cents ?? 0) * (use.sold_kWh[p] ?? 0), 0);
  const demand = tariff.demand.reduce((sum, steps, p) => sum + cost(steps, use.periodPeak_kW[p] ?? 0), 0);
  const flat = flatOf(tariff, of.month);
  const { fixed_cents, fixedPer } = tariff.tariff;
  return (energy - sold + demand + (flat === null ? 0 : cost(flat, use.peak_kW)) + fixed_cents * (fixedPer === 'day' ? of.days : 1)) / 100;
}

/** The bill of a month: its charges, or the least bill where the tariff has one. */
export function billFormula(tariff: TariffPlace, at: { readonly charges: string; readonly days: string }): string {
  const least = perMonth(tariff.minimumRow, tariff.tariff.minimumPer, at.days);
  return `IF(${least}>0,MAX(${least},${at.charges}),${at.charges})`;
}

export function bill(tariff: TariffPlace, ofCharges: number, days: number): number {
  const least = (tariff.tariff.minimum_cents * (tariff.tariff.minimumPer === 'day' ? days : 1)) / 100;
  return least > 0 ? Math.max(least, ofCharges) : ofCharges;
}
