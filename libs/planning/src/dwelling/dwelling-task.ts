import type { ScreenKind, ShadeGeometry } from '#calc';
import type { KnownDwelling } from '../known/known-dwelling.js';

/** A window as the heat balance sees it. */
export interface WindowPanel {
  readonly window: string;
  readonly azimuth_deg: number;
  readonly tilt_deg: number;
  readonly glass_m2: number;
  /** KEY in the room's glazings. */
  readonly glazing: string;
  /** Key in the room's measured glass; null: figures of the catalogue. */
  readonly measuredAt: string | null;
  readonly shade: ShadeGeometry;
  /** Equal texts are equal shades. */
  readonly shadeKey: string;
  readonly screenShare: number;
  readonly screenKind: ScreenKind;
  readonly blind: 'none' | 'light' | 'medium' | 'dark';
  readonly oldFilm: boolean;
  /** Place in the room's films of the film that work already done has put on; absent where none was. */
  readonly filmDone?: number;
  /** Calendar year in which the window is replaced; film on it is gone from then. */
  readonly replacementYear: number | null;
  /** By film of the room, in its order: whether its panes may carry it, may once a letter is there, or may not. */
  readonly filmable: readonly ('ready' | 'waiting' | 'no')[];
}

/** A set of facades with a film for each; the same one for all unless films may be mixed in a dwelling. */
export interface FacadeSet {
  readonly facades: readonly number[];
  /** By facade, in the same order: place of its film in the room's films. */
  readonly films: readonly number[];
  /** Leaves out panes that still wait for a letter. */
  readonly readyOnly: boolean;
}

/** Years with one plant and the same windows standing. */
export interface YearSpan {
  readonly firstYear: number;
  readonly plant: 'present' | 'after replacement';
}

/** All that one distinct dwelling's computation needs beside the room; plain data. */
export interface DwellingTask {
  /** Equal keys give equal results: everything but the ids. */
  readonly key: string;
  readonly dwelling: KnownDwelling;
  readonly site: string;
  readonly panels: readonly WindowPanel[];
  readonly sets: readonly FacadeSet[];
  readonly spans: readonly YearSpan[];
  /** Hourly use of the other dwellings on the meter; null on a meter of its own. */
  readonly others_kWh: Float64Array | null;
}

/** Result of one set: numbers only; joined with ids and cost afterwards. */
export interface SetResult {
  readonly set: FacadeSet;
  readonly spans: readonly SpanSaving[];
  /** One standard deviation of the yearly cooling-cost reduction over its value, from what is specific to the dwelling. */
  readonly spreadShare: number;
  readonly peak_kW: number;
  readonly runHours_h: number;
  readonly coolingElectricity_kWh: number;
}

/** Film of a set on a side, as its place in the room's films; undefined where the set leaves the side out. */
export function filmOnSide(set: FacadeSet, azimuth_deg: number): number | undefined {
  return set.films[set.facades.indexOf(azimuth_deg)];
}

export interface SpanSaving {
  readonly coolingElectricity_kWh: number;
  readonly cooling_cents: number;
  readonly addedHeating_cents: number;
  readonly addedHeating_kWh: number;
}

export interface DwellingResult {
  readonly key: string;
  readonly sets: readonly SetResult[];
  readonly asFound: { readonly coolingElectricity_kWh: number; readonly peak_kW: number; readonly runHours_h: number; readonly hoursOverSetPoint: number; readonly coolingLoad_kWh: number };
}

/** Spans of the study: a new one at the plant's replacement and at each replacement of a window. */
export function yearSpans(of: { readonly firstYear: number; readonly lastYear: number; readonly plantReplacementYear: number | null; readonly windowYears: readonly number[] }): YearSpan[] {
  const { firstYear, lastYear, plantReplacementYear } = of;
  const changes = [...of.windowYears, ...(plantReplacementYear === null ? [] : [plantReplacementYear])].filter((y) => y > firstYear && y <= lastYear);
  const starts = [...new Set([firstYear, ...changes])].sort((a, b) => a - b);
  return starts.map((year) => ({ firstYear: year, plant: plantReplacementYear !== null && plantReplacementYear <= year ? 'after replacement' : 'present' }));
}
