import { cents, roundHalfAway, type Cents } from '../money/index.js';
import { MONTH_DAYS } from './calendar.js';
import type { MonthSums } from './month-sums.js';
import { stepsCost_cents, stepShares } from './steps-cost.js';
import type { Tariff } from './tariff.js';
import type { TariffClock } from './tariff-clock.js';

/** kWh of one period and tier of a month. */
export interface EnergyLine {
  readonly period: number;
  readonly tier: number;
  readonly kWh: number;
  readonly cents: number;
}

/** kWh sent out in one period of a month; the money is below zero. */
export interface ExportLine {
  readonly period: number;
  readonly kWh: number;
  readonly cents: number;
}

/** The peak of a month in one demand period, or its greatest hour (`flat`). */
export interface DemandLine {
  readonly period: number | 'flat';
  readonly kW: number;
  readonly cents: number;
}

/** One month of one meter. Lines keep fractions of a cent; the month is rounded once, here. */
export interface MonthBill {
  readonly energy: readonly EnergyLine[];
  readonly exported: readonly ExportLine[];
  readonly demand: readonly DemandLine[];
  readonly demand_cents: number;
  readonly fixed_cents: number;
  /** The least bill of the month; absent where the tariff has none. */
  readonly minimum_cents?: number;
  /** What the minimum adds to the other charges, ≥ 0. */
  readonly raised_cents: number;
  /** Before rounding. */
  readonly exact_cents: number;
  readonly total_cents: Cents;
}

/** Twelve months of one meter; the year is the sum of the rounded months. */
export interface TariffBill {
  readonly months: readonly MonthBill[];
  readonly total_cents: Cents;
  /** What had to be taken for true to bill at all, in sentences; empty from hourly use. */
  readonly assumed: readonly string[];
}

/** Fixed charge of a month in cents. */
export function fixedOfMonth_cents(tariff: Tariff, days: number): number {
  return tariff.fixedPer === 'day' ? tariff.fixed_cents * days : tariff.fixed_cents;
}

/** Least bill of a month in cents. */
export function minimumOfMonth_cents(tariff: Tariff, days: number): number {
  return tariff.minimumPer === 'day' ? tariff.minimum_cents * days : tariff.minimum_cents;
}

/** Cents paid for a kWh sent out in a period: the first stated price of its steps, 0 where none is stated. */
export function sellPrice_cents_kWh(tariff: Tariff, period: number): number {
  return tariff.energy[period]!.find((step) => step.sell_cents !== null)?.sell_cents ?? 0;
}

function demandLines(tariff: Tariff, sums: MonthSums, month: number): DemandLine[] {
  const days = MONTH_DAYS[month]!;
  const byPeriod = (tariff.demand?.steps ?? []).map((steps, period): DemandLine => {
    const kW = sums.periodPeak_kW[month * (tariff.demand?.steps.length ?? 0) + period]!;
    return { period, kW, cents: stepsCost_cents(steps, kW, days) };
  });
  const lines = byPeriod.filter((line) => line.kW > 0);
  if (tariff.flatDemand !== null) {
    const kW = sums.peak_kW[month]!;
    const steps = tariff.flatDemand.steps[tariff.flatDemand.months[month]!]!;
    lines.push({ period: 'flat', kW, cents: stepsCost_cents(steps, kW, days) });
  }
  return lines;
}

const sumOf = (lines: readonly { readonly cents: number }[]): number => lines.reduce((sum, line) => sum + line.cents, 0);

function monthBill(clock: TariffClock, sums: MonthSums, month: number): MonthBill {
  const { tariff } = clock;
  const days = MONTH_DAYS[month]!;
  const periods = tariff.energy.length;
  const energy: EnergyLine[] = [];
  const exported: ExportLine[] = [];
  tariff.energy.forEach((steps, period) => {
    const kWh = sums.bought_kWh[month * periods + period]!;
    const sold_kWh = sums.sold_kWh[month * periods + period]!;
    if (kWh > 0) energy.push(...stepShares(steps, kWh, days).map((share) => ({ period, tier: share.tier, kWh: share.amount, cents: share.cents })));
    if (sold_kWh > 0) exported.push({ period, kWh: sold_kWh, cents: -sold_kWh * sellPrice_cents_kWh(tariff, period) });
  });
  const demand = demandLines(tariff, sums, month);
  const demand_cents = sumOf(demand);
  const fixed_cents = fixedOfMonth_cents(tariff, days);
  const minimum_cents = minimumOfMonth_cents(tariff, days);
  const charges_cents = sumOf(energy) + sumOf(exported) + demand_cents + fixed_cents;
  const exact_cents = minimum_cents > 0 ? Math.max(minimum_cents, charges_cents) : charges_cents;
  return {
    energy,
    exported,
    demand,
    demand_cents,
    fixed_cents,
    ...(minimum_cents > 0 ? { minimum_cents } : {}),
    raised_cents: exact_cents - charges_cents,
    exact_cents,
    total_cents: cents(roundHalfAway(exact_cents)),
  };
}

/**
 * The twelve bills of a meter from its sums by month.
 *
 *   month = max(minimum, energy − exported + demand + fixed), rounded once, half away from zero; year = Σ months
 *
 * @param clock the tariff laid over the year
 * @param sums kWh by month and period, peaks by month
 * @param assumed sentences on what the sums rest on
 * @returns the bills, lines in fractions of a cent, totals in whole cents
 * @source order of charges: U.S. Utility Rate Database; minimum as the greater of itself and all other charges
 */
export function billOfSums(clock: TariffClock, sums: MonthSums, assumed: readonly string[] = []): TariffBill {
  const months = MONTH_DAYS.map((_, month) => monthBill(clock, sums, month));
  return { months, total_cents: cents(months.reduce((sum, month) => sum + month.total_cents, 0)), assumed };
}
