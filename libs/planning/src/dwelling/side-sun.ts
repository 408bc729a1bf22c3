import type { BodyWindow } from '#calc';
import type { GainBook, OnGlass } from './gain-book.js';
import type { DwellingTask, WindowPanel } from './dwelling-task.js';
import type { Zone } from './zone.js';

/** One side of a dwelling in one dressing: the sun through all its glass, and its windows as paths for warmth. */
export interface DressedSide {
  readonly sun_W: Float64Array;
  readonly windows: readonly BodyWindow[];
}

/**
 * The sides of a dwelling, each summed once per dressing: a set is then a sum over sides and not over windows, and fifteen sets of four
 * sides under two films are made of twelve sums.
 */
export interface SideSun {
  readonly sides: (dressing: (panel: WindowPanel) => OnGlass) => DressedSide[];
}

/** Sums fill the bench's arrays from the first on: they hold until the next dwelling asks. */
export function sideSun(at: { readonly task: DwellingTask; readonly zone: Zone }, bench: { readonly gains: GainBook; readonly sideArrays: Float64Array[] }): SideSun {
  const { task, zone } = at;
  const panelsOf = new Map<number, WindowPanel[]>();
  for (const panel of task.panels) panelsOf.set(panel.azimuth_deg, [...(panelsOf.get(panel.azimuth_deg) ?? []), panel]);
  const kept = new Map<string, DressedSide>();
  const summed = (panels: readonly WindowPanel[], dressed: readonly OnGlass[]): DressedSide => {
    const place = kept.size;
    const sun_W = (bench.sideArrays[place] ??= new Float64Array(8760)).fill(0);
    const windows = panels.map((panel, i): BodyWindow => {
      const { gain_W_m2, uFactor_W_m2K, roomEmissivity } = bench.gains.of(zone.site, panel, dressed[i]!);
      const scale = panel.glass_m2 * task.dwelling.useFactor;
      for (let h = 0; h < 8760; h++) sun_W[h] = sun_W[h]! + scale * gain_W_m2[h]!;
      return { area_m2: panel.glass_m2, uFactor_W_m2K, roomEmissivity };
    });
    return { sun_W, windows };
  };
  return {
    sides: (dressing) =>
      [...panelsOf].map(([azimuth_deg, panels]) => {
        const dressed = panels.map(dressing);
        const key = `${String(azimuth_deg)}|${dressed.join(',')}`;
        let side = kept.get(key);
        if (side === undefined) kept.set(key, (side = summed(panels, dressed)));
        return side;
      }),
  };
}
