import { glazingOptics, rebate_cents, type FilmOnClear, type GlazingMakeUp, type Phase, type Rebate } from '#calc';
import { sortedBy } from '../grouped.js';

/** What a fund may give towards one option, as far as the option alone decides it. */
export interface OptionRebate {
  readonly rebate: string;
  readonly cents: number;
  /** Glass of the option that meets the fund's terms. */
  readonly area_m2: number;
  /** ISO date of the fund's letter; null where it asks for none. */
  readonly approvedOn: string | null;
  /** The fund asks for a letter that is not there: it counts in no phase. */
  readonly waits: boolean;
  readonly deadline: string | null;
}

/** Glass of one window of an option, for the terms of a fund. */
export interface RebateWindow {
  readonly azimuth_deg: number;
  readonly glass_m2: number;
  readonly glazing: string;
  readonly film: string;
}

/** An option as a fund looks at it. */
export interface RebateCase {
  readonly building: string;
  readonly cost_cents: number;
  readonly windows: readonly RebateWindow[];
}

/** SHGC at normal incidence, centre of glass, before and after. */
export type GainPair = (glazing: string, film: string) => { readonly before: number; readonly after: number };

/** Works each pair of glazing and film out once. */
export function gainPairs(glazings: ReadonlyMap<string, { readonly makeUp: GlazingMakeUp }>, films: ReadonlyMap<string, FilmOnClear>): GainPair {
  const kept = new Map<string, { readonly before: number; readonly after: number }>();
  return (glazing, film) => {
    const key = `${glazing}|${film}`;
    let pair = kept.get(key);
    if (pair === undefined) {
      const [glass, sheet] = [glazings.get(glazing), films.get(film)];
      if (glass === undefined || sheet === undefined) throw new RangeError(`glazing and film must be known, got ${key}`);
      const at = (on: FilmOnClear | null): number => glazingOptics(glass.makeUp, on).solarHeatGainAt(0);
      kept.set(key, (pair = { before: at(null), after: at(sheet) }));
    }
    return pair;
  };
}

const inSector = (azimuth_deg: number, { from_deg, to_deg }: { readonly from_deg: number; readonly to_deg: number }): boolean =>
  from_deg <= to_deg ? azimuth_deg >= from_deg && azimuth_deg <= to_deg : azimuth_deg >= from_deg || azimuth_deg <= to_deg;

function counts(window: RebateWindow, rebate: Rebate, gains: GainPair): boolean {
  if (rebate.sectors !== null && !rebate.sectors.some((sector) => inSector(window.azimuth_deg, sector))) return false;
  const { before, after } = gains(window.glazing, window.film);
  return before >= (rebate.solarHeatGainBeforeAtLeast ?? 0) && after <= (rebate.solarHeatGainAfterAtMost ?? 1);
}

/** Offers an option meets, by id. The least area is a matter of the whole project and is checked once the plan is chosen. */
export function optionRebates(option: RebateCase, of: { readonly rebates: readonly Rebate[]; readonly gains: GainPair }): OptionRebate[] {
  return sortedBy(of.rebates, (r) => r.id)
    .filter((rebate) => rebate.building === null || rebate.building === option.building)
    .flatMap((rebate): OptionRebate[] => {
      const area_m2 = option.windows.filter((w) => counts(w, rebate, of.gains)).reduce((sum, w) => sum + w.glass_m2, 0);
      const cents = rebate_cents({ area_m2, cost_cents: option.cost_cents }, rebate);
      const waits = rebate.needsPreApproval && rebate.preApprovedOn === null;
      return cents === 0 ? [] : [{ rebate: rebate.id, cents, area_m2, approvedOn: rebate.preApprovedOn, waits, deadline: rebate.deadline }];
    });
}

/** The best offer that counts for work in a phase: its letter is there by the last day, and its deadline does not end before the phase does. */
export function rebateIn(rebates: readonly OptionRebate[], phase: Pick<Phase, 'lastDay'>): OptionRebate | null {
  const open = rebates.filter((r) => !r.waits && (r.approvedOn === null || r.approvedOn <= phase.lastDay) && (r.deadline === null || r.deadline >= phase.lastDay));
  return open.reduce<OptionRebate | null>((best, r) => (best === null || r.cents > best.cents ? r : best), null);
}
