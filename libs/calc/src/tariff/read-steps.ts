import type { PriceStep, TariffFinding } from './tariff.js';

/** Dollars as written to cents, with the binary dust of the multiplication taken off. */
export const centsOfDollars = (dollars: number): number => Math.round(dollars * 1e10) / 1e8;

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);
const shown = (value: unknown): string => (value === undefined ? 'nothing' : JSON.stringify(value));

/** What the amount of a charge is counted in; a `daily` step grows with the days of the month. */
export type StepUnit = 'kWh' | 'kW';

interface Reading {
  readonly unit: StepUnit;
  readonly place: string;
  readonly findings: TariffFinding[];
}

function upperEnd(tier: Record<string, unknown>, isLast: boolean, to: Reading): number {
  const { max } = tier;
  if (max === undefined || max === null) {
    if (!isLast) to.findings.push({ weight: 'error', place: `${to.place}/max`, seen: 'nothing', expected: 'an upper end: only the last step may leave it out' });
    return Infinity;
  }
  if (!isNumber(max) || max <= 0) {
    to.findings.push({ weight: 'error', place: `${to.place}/max`, seen: shown(max), expected: `${to.unit} above zero` });
    return Infinity;
  }
  if (isLast) {
    // Some sources write a very large number where no end is meant.
    to.findings.push({ weight: max >= 1e6 ? 'note' : 'warning', place: `${to.place}/max`, seen: shown(max), expected: 'no upper end on the last step; its price is used above it too' });
    return Infinity;
  }
  return max;
}

function isDaily(unit: unknown, to: Reading): boolean {
  if (unit === undefined || unit === null) return false;
  const words = typeof unit === 'string' ? unit.trim().toLowerCase().replace(/\s+/g, ' ') : '';
  if (words === to.unit.toLowerCase()) return false;
  if (words === `${to.unit.toLowerCase()} daily`) return true;
  to.findings.push({ weight: 'error', place: `${to.place}/unit`, seen: shown(unit), expected: `"${to.unit}" or "${to.unit} daily"` });
  return false;
}

function money(tier: Record<string, unknown>, field: 'adj' | 'sell', to: Reading): number | null {
  const value = tier[field];
  if (value === undefined || value === null) return null;
  if (isNumber(value)) return centsOfDollars(value);
  to.findings.push({ weight: 'error', place: `${to.place}/${field}`, seen: shown(value), expected: `dollars per ${to.unit}` });
  return null;
}

function step(value: unknown, isLast: boolean, to: Reading): PriceStep {
  const tier = typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
  const adjust_cents = money(tier, 'adj', to);
  const { rate } = tier;
  if (!isNumber(rate) && (rate !== undefined || adjust_cents === null)) {
    to.findings.push({ weight: 'error', place: `${to.place}/rate`, seen: shown(rate), expected: `dollars per ${to.unit}` });
  }
  return {
    upTo: upperEnd(tier, isLast, to),
    daily: isDaily(tier['unit'], to),
    price_cents: (isNumber(rate) ? centsOfDollars(rate) : 0) + (adjust_cents ?? 0),
    sell_cents: money(tier, 'sell', to),
  };
}

/** Reads a structure `[period][step]` of the open form into price steps; what is wrong goes to `findings`. */
export function readSteps(value: unknown, to: Reading): PriceStep[][] {
  if (!Array.isArray(value) || value.length === 0) {
    to.findings.push({ weight: 'error', place: to.place, seen: shown(value), expected: 'at least one period with at least one price' });
    return [];
  }
  return value.map((period: unknown, p) => {
    const place = `${to.place}/${p}`;
    if (!Array.isArray(period) || period.length === 0) {
      to.findings.push({ weight: 'error', place, seen: shown(period), expected: 'at least one price' });
      return [];
    }
    const steps = period.map((tier: unknown, t) => step(tier, t === period.length - 1, { ...to, place: `${place}/${t}` }));
    steps.forEach((each, t) => {
      const before = steps[t - 1];
      if (before !== undefined && !(each.upTo > before.upTo)) {
        to.findings.push({ weight: 'error', place: `${place}/${t}/max`, seen: String(each.upTo), expected: `more than the step before (${before.upTo})` });
      }
      if (before !== undefined && each.upTo !== Infinity && each.daily !== before.daily) {
        to.findings.push({ weight: 'error', place: `${place}/${t}/unit`, seen: 'monthly and daily upper ends in one period', expected: 'one of them' });
      }
    });
    return steps;
  });
}
