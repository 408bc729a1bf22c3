import type { Bill } from '../portfolio/index.js';

export type BillTroubleKind = 'negative' | 'estimated' | 'settles-estimate' | 'overlap' | 'unit-slip' | 'short' | 'long';

/** One reason why a bill is not compared with the weather, in a sentence with its dates. */
export interface BillTrouble {
  readonly kind: BillTroubleKind;
  readonly why: string;
}

/** A bill that stays as it was sent and is left out of fits. */
export interface LeftOutBill {
  readonly bill: Bill;
  readonly troubles: readonly BillTrouble[];
  /** All of them in one line. */
  readonly why: string;
}

/** Days between two bills of a meter that no bill covers; both included. */
export interface BillGap {
  readonly meter: string;
  readonly firstDay: string;
  readonly lastDay: string;
  readonly days: number;
}

export interface UsableBills {
  /** By meter and first day. */
  readonly used: readonly Bill[];
  readonly leftOut: readonly LeftOutBill[];
  readonly gaps: readonly BillGap[];
}

const DAY_MS = 86_400_000;
const dayNumber = (iso: string): number => Date.parse(`${iso}T00:00:00Z`) / DAY_MS;
const isoOf = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);

/** A slip of a whole unit is a thousandfold; anything under a hundredfold may be true. Common practice, no source. */
const SLIP = 1000;
const SUSPECT = 100;
/** A corrected value must fall this near to the other periods: between half the least and twice the greatest use a day. */
const ROOM = 2;
/** Periods that must be there before one of them is held against the others. */
const OTHERS = 3;

/** Days of a bill, both ends included. */
export function billDays({ firstDay, lastDay }: Pick<Bill, 'firstDay' | 'lastDay'>): number {
  return dayNumber(lastDay) - dayNumber(firstDay) + 1;
}

/**
 * The middle of some values, or the mean of the two in the middle.
 *
 * @param values in any order, at least one
 * @returns within the range of the values
 * @source definition
 */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return sorted.length % 2 === 1 ? sorted[Math.floor(middle)]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

const span = ({ firstDay, lastDay }: Bill): string => `${firstDay} to ${lastDay}`;

/** Shortest and longest period that goes with the usual one. */
function lengthsBeside(usual_days: number): readonly [number, number] {
  if (usual_days < 4) return [1, Math.ceil(usual_days)];
  if (usual_days >= 25 && usual_days <= 35) return [25, 35];
  if (usual_days > 35 && usual_days <= 70) return [50, 70];
  return [Math.floor(usual_days * 0.8), Math.ceil(usual_days * 1.2)];
}

function lengthTrouble(bill: Bill, usual_days: number): BillTrouble | null {
  const days = billDays(bill);
  const [shortest, longest] = lengthsBeside(usual_days);
  if (days >= shortest && days <= longest) return null;
  return { kind: days < shortest ? 'short' : 'long', why: `${days} days, ${span(bill)}; the bills of this meter usually run ${usual_days}` };
}

function slipTrouble(bill: Bill, others_kWh_day: readonly number[]): BillTrouble | null {
  const perDay = bill.use_kWh / billDays(bill);
  if (others_kWh_day.length < OTHERS || !(perDay > 0)) return null;
  const ratio = perDay / median(others_kWh_day);
  const factor = ratio > SUSPECT ? 1 / SLIP : ratio < 1 / SUSPECT ? SLIP : 1;
  const [least, greatest] = [Math.min(...others_kWh_day) / ROOM, Math.max(...others_kWh_day) * ROOM];
  if (factor === 1 || perDay * factor < least || perDay * factor > greatest) return null;
  const [seen, meant] = factor < 1 ? ['kWh', 'Wh'] : ['kWh', 'MWh'];
  return { kind: 'unit-slip', why: `${bill.use_kWh} ${seen} from ${span(bill)} is ${ratio > 1 ? `${Math.round(ratio)} times` : `1/${Math.round(1 / ratio)} of`} the other periods; it looks like ${meant}` };
}

/** Bills that share days with another of the same meter, with the other's dates. */
function overlaps(ordered: readonly Bill[]): Map<Bill, BillTrouble> {
  const found = new Map<Bill, BillTrouble>();
  const note = (bill: Bill, other: Bill): void => {
    if (!found.has(bill)) found.set(bill, { kind: 'overlap', why: `${span(bill)} shares days with the bill of ${span(other)}; only one of them can be right` });
  };
  ordered.forEach((bill, i) => {
    for (let j = i + 1; j < ordered.length && ordered[j]!.firstDay <= bill.lastDay; j++) {
      note(bill, ordered[j]!);
      note(ordered[j]!, bill);
    }
  });
  return found;
}

/** Actual readings that come straight after estimates: their use makes up for what was guessed. */
function settlers(ordered: readonly Bill[]): Map<Bill, BillTrouble> {
  const found = new Map<Bill, BillTrouble>();
  ordered.forEach((bill, i) => {
    const before = ordered[i - 1];
    if (bill.estimated || before?.estimated !== true || dayNumber(before.lastDay) + 1 !== dayNumber(bill.firstDay)) return;
    found.set(bill, { kind: 'settles-estimate', why: `the reading of ${bill.lastDay} makes up for the estimate of ${span(before)} before it` });
  });
  return found;
}

function ofMeter(ordered: readonly Bill[]): { readonly used: Bill[]; readonly leftOut: LeftOutBill[] } {
  const usual = median(ordered.map(billDays));
  const [overlapping, settling] = [overlaps(ordered), settlers(ordered)];
  const plain = ordered.filter((bill) => !bill.estimated && bill.use_kWh > 0);
  const [used, leftOut]: [Bill[], LeftOutBill[]] = [[], []];
  for (const bill of ordered) {
    const troubles = [
      bill.use_kWh < 0 ? { kind: 'negative' as const, why: `${bill.use_kWh} kWh from ${span(bill)} is less than nothing` } : null,
      bill.estimated ? { kind: 'estimated' as const, why: `nobody read the meter for ${span(bill)}` } : null,
      settling.get(bill) ?? null,
      overlapping.get(bill) ?? null,
      slipTrouble(bill, plain.filter((other) => other !== bill).map((other) => other.use_kWh / billDays(other))),
      lengthTrouble(bill, usual),
    ].filter((trouble) => trouble !== null);
    if (troubles.length === 0) used.push(bill);
    else leftOut.push({ bill, troubles, why: troubles.map(({ why }) => why).join('; ') });
  }
  return { used, leftOut };
}

function gapsOf(ordered: readonly Bill[]): BillGap[] {
  const gaps: BillGap[] = [];
  let reached = ordered[0] === undefined ? 0 : dayNumber(ordered[0].lastDay);
  for (const bill of ordered.slice(1)) {
    const first = dayNumber(bill.firstDay);
    if (first > reached + 1) gaps.push({ meter: bill.meter, firstDay: isoOf(reached + 1), lastDay: isoOf(first - 1), days: first - reached - 1 });
    reached = Math.max(reached, dayNumber(bill.lastDay));
  }
  return gaps;
}

/**
 * Which bills may be compared with the weather, and why the others may not. Nothing is changed, filled in or averaged.
 *
 *   left out, meter by meter: use below zero; estimated reads; the actual read straight after an estimate; periods that share
 *   days; use a thousandfold or a thousandth of the meter's other periods; periods much longer or shorter than the meter's usual
 *   (monthly 25…35 days, two-monthly 50…70, else a fifth more or less than the median)
 *
 * @param bills of any number of meters, in any order; both days included
 * @returns bills to use by meter and first day, those left out with every reason, and the days no bill covers
 * @source periods of 25…35 and at most 70 days: published degree-day method for billing data; the rest common practice, no source
 */
export function usableBills(bills: readonly Bill[]): UsableBills {
  const byMeter = new Map<string, Bill[]>();
  for (const bill of bills) byMeter.set(bill.meter, [...(byMeter.get(bill.meter) ?? []), bill]);
  const meters = [...byMeter].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, ofOne]) => ofOne.sort((a, b) => (a.firstDay < b.firstDay ? -1 : a.firstDay > b.firstDay ? 1 : a.lastDay < b.lastDay ? -1 : 1)));
  const parts = meters.map(ofMeter);
  return { used: parts.flatMap(({ used }) => used), leftOut: parts.flatMap(({ leftOut }) => leftOut), gaps: meters.flatMap(gapsOf) };
}
