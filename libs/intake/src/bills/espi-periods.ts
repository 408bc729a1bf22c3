import type { EspiBlock, EspiReading } from './espi-feed.js';
import type { EspiSeries } from './espi-series.js';
import type { LocalDays } from './local-days.js';

/** Use of whole days, as a bill will say it. */
export interface EspiPeriod {
  readonly line: number;
  readonly firstDay: string;
  readonly lastDay: string;
  readonly use_kWh: number;
  readonly peak_kW: number | null;
  readonly estimated: boolean;
}

export interface EspiPeriods {
  readonly periods: readonly EspiPeriod[];
  /** Days whose readings do not fill them, or blocks with holes. */
  readonly incomplete: readonly { readonly line: number; readonly firstDay: string; readonly lastDay: string }[];
  /** Readings that stand twice with two values. */
  readonly twice: readonly { readonly line: number; readonly day: string }[];
}

const HOUR_s = 3600;
const DAY_s = 86_400;
/** Quality codes of readings that were made up: reference day, interpolation, projected. From memory of the open form. */
const MADE_UP = new Set([8, 9, 12]);
/** From this share of made-up readings on, days are marked estimated. Common practice, no source. */
const ESTIMATED_SHARE = 0.1;

class Sum {
  covered_s = 0;
  use_kWh = 0;
  peak_kW: number | null = null;
  madeUp_s = 0;
  isTwice = false;
  constructor(readonly line: number) {}

  add(reading: EspiReading, kWh: number): void {
    this.covered_s += reading.duration_s;
    this.use_kWh += kWh;
    if (reading.qualities.some((code) => MADE_UP.has(code))) this.madeUp_s += reading.duration_s;
    if (reading.duration_s <= HOUR_s) this.peak_kW = Math.max(this.peak_kW ?? 0, kWh / (reading.duration_s / HOUR_s));
  }

  period(firstDay: string, lastDay: string): EspiPeriod {
    const { line, use_kWh, peak_kW } = this;
    // Watt-hours are whole; sums of binary kWh are put back on them.
    return { line, firstDay, lastDay, use_kWh: Math.round(use_kWh * 1e6) / 1e6, peak_kW: peak_kW === null ? null : Math.round(peak_kW * 1e6) / 1e6, estimated: this.madeUp_s >= ESTIMATED_SHARE * this.covered_s && this.madeUp_s > 0 };
  }
}

/** Each moment once: a reading that comes again with the same value is the same one; with another value both its days are in doubt. */
function once(series: EspiSeries, days: LocalDays): { readonly readings: readonly EspiReading[]; readonly twice: EspiPeriods['twice'] } {
  const byStart = new Map<number, EspiReading>();
  const twice: { line: number; day: string }[] = [];
  for (const { readings } of series.blocks) {
    for (const reading of readings) {
      const first = byStart.get(reading.start_s);
      if (first === undefined) byStart.set(reading.start_s, reading);
      else if (series.kWh(first) !== series.kWh(reading) || first.duration_s !== reading.duration_s) twice.push({ line: reading.line, day: days.dayOf(reading.start_s) });
    }
  }
  return { readings: [...byStart.values()].sort((a, b) => a.start_s - b.start_s), twice };
}

/** Readings of at most a day summed to the days of the place; a longer reading is a period of its own. */
export function espiDays(series: EspiSeries, days: LocalDays): EspiPeriods {
  const { readings, twice } = once(series, days);
  const doubtful = new Set(twice.map(({ day }) => day));
  const sums = new Map<string, Sum>();
  const periods: EspiPeriod[] = [];
  for (const reading of readings) {
    const day = days.dayOf(reading.start_s);
    if (reading.duration_s > DAY_s + HOUR_s) {
      const alone = new Sum(reading.line);
      alone.add(reading, series.kWh(reading));
      periods.push(alone.period(day, days.dayOf(reading.start_s + reading.duration_s - 1)));
      continue;
    }
    const sum = sums.get(day) ?? new Sum(reading.line);
    sums.set(day, sum);
    sum.add(reading, series.kWh(reading));
  }
  const incomplete: { line: number; firstDay: string; lastDay: string }[] = [];
  for (const [day, sum] of sums) {
    // A day read in one piece by a clock that is not turned may be an hour off at the turns; it is whole all the same.
    const isWhole = Math.abs(sum.covered_s - days.length_s(day)) < 1 || sum.covered_s === DAY_s;
    if (doubtful.has(day)) continue;
    if (isWhole) periods.push(sum.period(day, day));
    else incomplete.push({ line: sum.line, firstDay: day, lastDay: day });
  }
  return { periods, incomplete, twice };
}

/** Each block as one period of whole days, where its readings fill it. */
export function espiBlocks(series: EspiSeries, days: LocalDays): EspiPeriods {
  const [periods, incomplete]: [EspiPeriod[], { line: number; firstDay: string; lastDay: string }[]] = [[], []];
  const { twice } = once(series, days);
  const ofBlock = (block: EspiBlock): void => {
    const sum = new Sum(block.line);
    for (const reading of block.readings) sum.add(reading, series.kWh(reading));
    const [firstDay, lastDay] = [days.dayOf(block.start_s), days.dayOf(block.start_s + block.duration_s - 1)];
    const isWhole = Math.abs(sum.covered_s - block.duration_s) < 1 && block.duration_s >= DAY_s - HOUR_s;
    if (isWhole) periods.push(sum.period(firstDay, lastDay));
    else incomplete.push({ line: block.line, firstDay, lastDay });
  };
  series.blocks.forEach(ofBlock);
  return { periods, incomplete, twice };
}
