import type { BodyWindow } from '#calc';
import type { Dressing, DwellingBench, OptionBench } from '../dwelling/dwelling-run.js';
import { asFound } from '../dwelling/dwelling-run.js';

/** Sun through the glass of one glazing as found, and what a film takes off it; whole dwelling, each hour. */
export interface GlassPart {
  readonly glazing: string;
  readonly found_W: Float64Array;
  /** By place of the film in the room's films: filmed less found, at or below zero but for odd glass. */
  readonly films: readonly { readonly film: number; readonly change_W: Float64Array }[];
}

/** The glass of a dwelling in one state, split so that a draw only has to weigh the parts. */
export interface DrawnGlass {
  readonly opaque_W: Float64Array;
  readonly parts: readonly GlassPart[];
  readonly windows: readonly BodyWindow[];
}

/** Splits the sun of a state of the glass by glazing and film. */
export function drawnGlass(at: DwellingBench, bench: OptionBench, dressing: Dressing): DrawnGlass {
  const windows: BodyWindow[] = [];
  const parts = new Map<string, { found_W: Float64Array; films: Map<number, Float64Array> }>();
  for (const panel of at.task.panels) {
    const on = dressing(panel);
    const found = bench.gains.of(at.zone.site, panel, asFound(panel));
    const stands = bench.gains.of(at.zone.site, panel, on);
    windows.push({ area_m2: panel.glass_m2, uFactor_W_m2K: stands.uFactor_W_m2K, roomEmissivity: stands.roomEmissivity });
    const scale = panel.glass_m2 * at.task.dwelling.useFactor;
    let part = parts.get(panel.glazing);
    if (part === undefined) parts.set(panel.glazing, (part = { found_W: new Float64Array(8760), films: new Map() }));
    for (let h = 0; h < 8760; h++) part.found_W[h] = part.found_W[h]! + scale * found.gain_W_m2[h]!;
    if (typeof on !== 'number') continue;
    let change = part.films.get(on);
    if (change === undefined) part.films.set(on, (change = new Float64Array(8760)));
    for (let h = 0; h < 8760; h++) change[h] = change[h]! + scale * (stands.gain_W_m2[h]! - found.gain_W_m2[h]!);
  }
  return {
    opaque_W: at.zone.opaque_W,
    windows,
    parts: [...parts].map(([glazing, part]) => ({ glazing, found_W: part.found_W, films: [...part.films].map(([film, change_W]) => ({ film, change_W })) })),
  };
}

/**
 * Sun of a draw: walls as they are, glass by its drawn gain, film by its drawn cut.
 *
 * @param weights share of the sun that arrives through each glazing, and 1 + drawn departure of each film's cut
 */
export function drawnSun_W(glass: DrawnGlass, weights: { readonly sun: (glazing: string) => number; readonly cut: (film: number) => number }, out: Float64Array): Float64Array {
  out.set(glass.opaque_W);
  for (const part of glass.parts) {
    const sun = weights.sun(part.glazing);
    const { found_W } = part;
    if (part.films.length === 0) {
      for (let h = 0; h < 8760; h++) out[h] = out[h]! + sun * found_W[h]!;
      continue;
    }
    const [first, ...others] = part.films;
    const { change_W } = first!;
    const cut = weights.cut(first!.film);
    if (others.length === 0) {
      for (let h = 0; h < 8760; h++) out[h] = out[h]! + sun * Math.max(0, found_W[h]! + cut * change_W[h]!);
      continue;
    }
    for (let h = 0; h < 8760; h++) {
      let through = found_W[h]! + cut * change_W[h]!;
      for (const other of others) through += weights.cut(other.film) * other.change_W[h]!;
      out[h] = out[h]! + sun * Math.max(0, through);
    }
  }
  return out;
}
