import type { FilmOnClear, GlazingMakeUp, InnerLayer, PlantPerformance, ScreenKind, TariffText } from '#calc';
import type { DesignDay } from '../energy/design-day.js';
import type { MeasuredGlass } from '../known/measured-glass.js';
import type { SiteSky } from '../sky/sky-on-facades.js';

/** A film as the options use it. */
export interface OptionFilm {
  readonly id: string;
  readonly sheet: FilmOnClear;
}

/** How wrong the drivers of one dwelling may be: one standard deviation each. */
export interface Doubt {
  readonly setPoint_K: number;
  readonly filmCut: number;
  readonly useFactor: number;
  readonly efficiency: number;
}

/** What all dwellings of a job share; handed to a thread once. Plain data and typed arrays only. */
export interface OptionRoom {
  /** By site: the day machines are sized for. */
  readonly designDays: ReadonlyMap<string, DesignDay>;
  /** Of the ground before the facades. */
  readonly albedo: number;
  /** What meters found on site, by `WindowPanel.measuredAt`. */
  readonly measured: ReadonlyMap<string, MeasuredGlass>;
  readonly sites: ReadonlyMap<string, SiteSky>;
  readonly glazings: ReadonlyMap<string, GlazingMakeUp>;
  readonly films: readonly OptionFilm[];
  /** A film of unknown sheet that hangs there already. */
  readonly oldFilm: FilmOnClear;
  /** Inside devices by their shade of colour, and when they are drawn. */
  readonly blinds: Readonly<Record<'light' | 'medium' | 'dark', InnerLayer>>;
  /** Share of the sun a screen outside lets by. */
  readonly screenPasses: Readonly<Record<ScreenKind, number>>;
  readonly blindCovered: number;
  readonly blindClosesAt_W_m2: number;
  readonly tariffs: ReadonlyMap<string, TariffText>;
  /** Share of a day's base load by hour, 24 values that sum to 1. */
  readonly baseLoadShape: readonly number[];
  /** Share of the base load that ends as heat in the cooled rooms, 0…1. */
  readonly baseLoadToRoom: number;
  readonly personHeat_W: number;
  /** Share of gains and base load that stays on in months nobody lives there. */
  readonly emptyShare: number;
  readonly doubt: Doubt;
  readonly plants: Readonly<Record<string, PlantPerformance>>;
}
