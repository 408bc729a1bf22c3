import { type Building, type HourlyYear, savingWarnings, tonOf_W } from '#calc';
import type { FilmChoices } from '../options/film-choices.js';
import { grouped, sortedBy } from '../grouped.js';
import type { FilmOption } from '../options/option.js';
import type { PlanLine, RankedDwelling } from '../plan/plan.js';
import type { PlanTerms } from '../plan/terms.js';
import type { SkiesOnFacades } from '../sky/sky-on-facades.js';
import { paneWeathers } from '../sky/site-extremes.js';
import { setOfOption, type ValuedOptions } from '../options/valued-options.js';
import type { PlanJob } from '../job/plan-job.js';
import type { Workers } from '../workers.js';
import type { DwellingEnergy, MonthEnergy } from './dwelling-energy.js';
import type { BuildingPeak, EnergyReview, OptionEnergy, PeakCut, SeasonEnergy } from './energy-types.js';
import { failureBreakEven } from './failure-break-even.js';
import { glassReview } from './glass-review.js';

/** What the review needs of the plan's stages. */
export interface EnergyRequest {
  readonly job: Pick<PlanJob, 'weather' | 'catalogue'>;
  readonly valued: ValuedOptions;
  readonly choices: FilmChoices;
  readonly skies: SkiesOnFacades;
  readonly lines: readonly PlanLine[];
  readonly ranked: { readonly dwellings: readonly RankedDwelling[]; readonly facades: readonly RankedDwelling[] };
  readonly buildings: ReadonlyMap<string, Building>;
  readonly terms: Pick<PlanTerms, 'realDiscountRate'>;
  readonly valueOf: (option: FilmOption) => number;
  readonly work: Workers;
}

/** Months 5…10 north of the equator, the others south of it. */
const isSummer = (month: number, latitude_deg: number): boolean => (month >= 4 && month <= 9) === latitude_deg >= 0;

function season(months: readonly MonthEnergy[], isIn: (month: number) => boolean): SeasonEnergy {
  const sum = (of: (m: MonthEnergy) => number): number => months.reduce((total, m, i) => total + (isIn(i) ? of(m) : 0), 0);
  return { cooling_kWh: sum((m) => m.cooling_kWh), cooling_cents: sum((m) => m.cooling_cents), addedHeating_kWh: sum((m) => m.addedHeating_kWh), addedHeating_cents: sum((m) => m.addedHeating_cents) };
}

const hardest = (hours: readonly number[]): number => hours.reduce((best, kW, hour) => (kW > hours[best]! ? hour : best), 0);

function peakCut({ asFound_kW, filmed_kW, asFound_W, filmed_W }: DwellingEnergy['peak']): PeakCut {
  const hour = hardest(asFound_kW);
  return { hour, asFound_kW: asFound_kW[hour]!, filmedThen_kW: filmed_kW[hour]!, filmed_kW: Math.max(...filmed_kW), asFound_tons: tonOf_W(asFound_W), filmed_tons: tonOf_W(filmed_W) };
}

/** Warm-humid: 3,000 hours a year at a wet bulb of 19.5 °C or more, or 1,500 at 23 °C. Source: definition of the U.S. energy code for houses, from memory; there of the six warmest months. */
export function isWarmHumid(year: Pick<HourlyYear, 'wetBulb_degC'>): boolean {
  const hours = (least_degC: number): number => year.wetBulb_degC.reduce((n, t) => n + (t >= least_degC ? 1 : 0), 0);
  return hours(19.5) >= 3000 || hours(23) >= 1500;
}

/** Warnings of an option beside its figures; the figures stay as they are. */
function warningsOf(option: FilmOption, isHumid: boolean): string[] {
  const saved_kWh = option.segments[0]?.saving.coolingElectricity_kWh ?? 0;
  const warnings = option.glassArea_m2 > 0 ? savingWarnings({ saved_kWh, bare_kWh: option.asFoundCooling_kWh, film_m2: option.glassArea_m2 }) : [];
  return isHumid ? [...warnings, 'Humid climate: less run time takes out less moisture; without a lower fan speed or a dehumidifier the room may get damper.'] : warnings;
}

function buildingPeaks(energies: ReadonlyMap<string, DwellingEnergy>, of: EnergyRequest, isHumid: (building: string) => boolean): BuildingPeak[] {
  const peaks = [...grouped(of.lines, (l) => l.building)].map(([building, lines]): BuildingPeak => {
    const day = of.choices.room.designDays.get(of.skies.siteOf.get(building) ?? '')!;
    const sum = (part: 'asFound_kW' | 'filmed_kW'): number[] => Array.from({ length: 24 }, (_, hour) => lines.reduce((total, l) => total + energies.get(l.option.id)!.peak[part][hour]!, 0));
    const [before, after] = [sum('asFound_kW'), sum('filmed_kW')];
    const hour = hardest(before);
    return { building, designDay: day.name, dryBulb_degC: day.dryBulb_degC, wetBulb_degC: day.wetBulb_degC, dwellings: lines.length, hour, asFound_kW: before[hour]!, filmed_kW: after[hour]!, isHumid: isHumid(building) };
  });
  return sortedBy(peaks, (p) => p.building);
}

/** Equal dwellings with equal sets are looked at once. */
async function energiesOf(options: readonly FilmOption[], of: EnergyRequest): Promise<Map<string, DwellingEnergy>> {
  const tasks = new Map(of.valued.tasks.map((t) => [t.dwelling.id, t]));
  const asked = options.map((option) => {
    const task = tasks.get(option.dwelling);
    if (task === undefined) throw new RangeError(`dwelling must have a task, got ${option.dwelling}`);
    const set = setOfOption(option, of.choices);
    return { option: option.id, key: `${task.key}|${JSON.stringify(set)}`, task, set };
  });
  const distinct = [...grouped(asked, (a) => a.key).values()].map((same) => same[0]!);
  const found = await of.work.dwellingEnergies(distinct.map(({ task, set }) => ({ task, set })), of.choices.room);
  const byKey = new Map(distinct.map((d, i) => [d.key, found[i]!]));
  return new Map(asked.map((a) => [a.option, byKey.get(a.key)!]));
}

/** Looks closely at every line of the plan and at the best option of each ranked dwelling; nothing here changes a rank or a choice. */
export async function energyReview(of: EnergyRequest): Promise<EnergyReview> {
  const byId = new Map(of.valued.options.map((o) => [o.id, o]));
  const phaseOf = new Map(of.lines.map((l) => [l.option.id, l.phase]));
  const ofRanks = (rows: readonly RankedDwelling[]): FilmOption[] => rows.flatMap((r) => byId.get(r.option) ?? []);
  const unique = (options: readonly FilmOption[]): FilmOption[] => sortedBy(new Map(options.map((o) => [o.id, o])).values(), (o) => o.id);
  const close = unique([...of.lines.map((l) => l.option), ...ofRanks(of.ranked.dwellings)]);
  const energies = await energiesOf(close, of);
  const humid = new Map([...of.job.weather].map(([building, year]) => [building, isWarmHumid(year)]));
  const isHumid = (building: string): boolean => humid.get(building) ?? false;
  const weathers = new Map([...of.job.weather].map(([building, year]) => [building, paneWeathers(year, of.job.catalogue)]));
  return {
    options: close.map((option): OptionEnergy => {
      const found = energies.get(option.id)!;
      const latitude_deg = of.job.weather.get(option.building)?.site.latitude_deg ?? 0;
      return {
        option: option.id,
        dwelling: option.dwelling,
        building: option.building,
        phase: phaseOf.get(option.id) ?? null,
        summer: season(found.months, (m) => isSummer(m, latitude_deg)),
        winter: season(found.months, (m) => !isSummer(m, latitude_deg)),
        asFoundCooling_kWh: found.asFoundCooling_kWh,
        runHoursAvoided_h: found.runHoursAvoided_h,
        damper: found.damper,
        peak: peakCut(found.peak),
        failure: failureBreakEven({ value_cents: of.valueOf(option), panes: option.paneCount, paneReplacement_cents: of.buildings.get(option.building)?.paneReplacement_cents ?? null, years: option.filmLife_yr, realDiscountRate: of.terms.realDiscountRate }),
        warnings: warningsOf(option, isHumid(option.building)),
      };
    }),
    glass: glassReview(unique([...close, ...ofRanks(of.ranked.facades)]), { valued: of.valued, choices: of.choices, weathersOf: (b) => weathers.get(b) ?? [] }),
    buildings: buildingPeaks(energies, of, isHumid),
  };
}
