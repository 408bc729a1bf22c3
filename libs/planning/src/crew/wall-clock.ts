import { type Building, readTariff, type TariffText, type TariffTime } from '#calc';
import { sortedBy } from '../grouped.js';
import type { DwellingTask } from '../dwelling/dwelling-task.js';

/** What the survey says about the clock on the wall of a building. */
export interface WallClock {
  /** Tariff whose clock rule is taken; null where no tariff of the place runs on daylight time, and so nothing says whether clocks change. */
  readonly tariff: string | null;
  /** The survey itself says whether clocks change here. */
  readonly isSurveyed?: true;
  /** Hours the clock is ahead of standard time on a day, from daybreak on; null where that is not known. */
  readonly ahead_h: (day: string) => 0 | 1 | null;
}

type DaylightTime = Extract<TariffTime, { readonly kind: 'daylight' }>;

const UNKNOWN: WallClock = { tariff: null, ahead_h: () => null };
/** Buildings this near to each other in one time zone keep one clock. */
const SAME_PLACE_deg = 1;

const twoDigits = (n: number): string => String(n).padStart(2, '0');

/** The n-th Sunday of a month (0…11) as `MM-DD`. */
function sunday(year: number, month: number, nth: number): string {
  const first = new Date(Date.UTC(year, month, 1)).getUTCDay();
  return `${twoDigits(month + 1)}-${twoDigits(1 + ((7 - first) % 7) + 7 * (nth - 1))}`;
}

/**
 * Whether clocks show daylight time in the hours of work of a day: from the first day on, and no longer on the last.
 *
 * @param day ISO date
 * @source dates of the tariff; where it gives none, second Sunday of March to first Sunday of November, 15 U.S.C. 260a (from memory)
 */
export function isDaylightDay(time: DaylightTime, day: string): boolean {
  const { dates } = time;
  const year = Number(day.slice(0, 4));
  const given = ([month, date]: readonly [number, number]): string => `${twoDigits(month + 1)}-${twoDigits(date)}`;
  const first = dates === null ? sunday(year, 2, 2) : given(dates.first);
  const last = dates === null ? sunday(year, 10, 1) : given(dates.last);
  const date = day.slice(5, 10);
  return first < last ? date >= first && date < last : date >= first || date < last;
}

const isNear = (a: Building, b: Building): boolean =>
  a.timeZone_h !== null && a.timeZone_h === b.timeZone_h && Math.abs((a.latitude_deg ?? NaN) - (b.latitude_deg ?? NaN)) <= SAME_PLACE_deg && Math.abs((a.longitude_deg ?? NaN) - (b.longitude_deg ?? NaN)) <= SAME_PLACE_deg;

function clockOf(tariff: TariffText): WallClock | null {
  if (tariff.clock !== 'daylight') return null;
  const { time } = readTariff(tariff);
  return time.kind === 'daylight' ? { tariff: tariff.label, ahead_h: (day) => (isDaylightDay(time, day) ? 1 : 0) } : null;
}

/** Hours the clock of a building is ahead of world time, or null where its rule or its time zone is not known. */
export const utcOffset_h = ({ timeZone_h }: Pick<Building, 'timeZone_h'>, ahead_h: 0 | 1 | null): number | null => (timeZone_h === null || ahead_h === null ? null : timeZone_h + ahead_h);

/** The clock as the survey has it; dates of daylight time as a tariff of the place gives them, else those of the law. */
function surveyed(isDaylight: boolean, tariff: WallClock): WallClock {
  if (!isDaylight) return { tariff: null, isSurveyed: true, ahead_h: () => 0 };
  return tariff.tariff === null ? { tariff: null, isSurveyed: true, ahead_h: (day) => (isDaylightDay({ kind: 'daylight', dates: null }, day) ? 1 : 0) } : tariff;
}

/**
 * The clock of each building: as the survey says, else the rule is that of a tariff on daylight time, of the building itself or of one near it. A tariff on standard time bills by it and says nothing about the clocks of the people who live there.
 */
export function wallClocks(buildings: ReadonlyMap<string, Building>, tasks: readonly Pick<DwellingTask, 'dwelling'>[]): (building: Building) => WallClock {
  const own = new Map<string, WallClock>();
  for (const { dwelling } of sortedBy(tasks, (t) => t.dwelling.meter.tariff.label)) {
    const clock = own.has(dwelling.building) ? null : clockOf(dwelling.meter.tariff);
    if (clock !== null) own.set(dwelling.building, clock);
  }
  const all = sortedBy(buildings.values(), (b) => b.id);
  return (building) => {
    const near = own.has(building.id) ? building : all.find((b) => own.has(b.id) && isNear(building, b));
    const byTariff = near === undefined ? UNKNOWN : own.get(near.id)!;
    const isDaylight = building.daylightTime ?? null;
    return isDaylight === null ? byTariff : surveyed(isDaylight, byTariff);
  };
}
