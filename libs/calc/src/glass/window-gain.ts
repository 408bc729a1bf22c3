import type { FacadeShade } from '../shade/index.js';
import type { FacadeSky } from '../sky/index.js';
import { COSINE_STEPS, type GlazingOptics } from './glazing-optics.js';

/** A blind or curtain that is drawn while the sun on the glass is strong; the rule looks at the sun outdoors, so bare and filmed glass close alike. */
export interface DrawnBlind {
  /** The same glazing, bare or filmed, with the device drawn. */
  readonly drawn: GlazingOptics;
  /** Share of the glass behind the device when drawn, 0…1. */
  readonly covered: number;
  /** Sun on the glass, beam, sky and ground together, from which it is drawn. */
  readonly closesAt_W_m2: number;
}

/** What the sun meets on its way into a room, for one kind of window on one facade. */
export interface WindowInSun {
  readonly optics: GlazingOptics;
  readonly sky: Pick<FacadeSky, 'cosIncidence' | 'beam_W_m2' | 'sky_W_m2' | 'ground_W_m2'>;
  readonly shade: FacadeShade;
  /** Share of the glass behind an outside insect or solar screen, 0…1. */
  readonly screenShare?: number;
  /** Share of the sun such a screen lets by, 0…1. */
  readonly screenPasses?: number;
  /** Share of the sun that dirt on the outside lets by, 0…1, alike bare and filmed. */
  readonly cleanliness?: number;
  readonly blind?: DrawnBlind;
}

/** An insect screen lets about two thirds of the sun by. Source: from memory, 0.6 to 0.7. */
export const INSECT_SCREEN_PASSES = 0.65;

function checkedShare(name: string, value: number): number {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} must be 0…1, got ${String(value)}`);
  return value;
}

/**
 * Heat of the sun that comes through a square metre of glass, hour by hour.
 *
 *   screens × dirt × [SHGC(angle) × sunlit × beam + SHGC(half-space) × (sky view × sky + ground)]
 *
 * While a blind is drawn its share of the glass takes the figures of the glazing with the blind. Frame is not in it.
 *
 * @param window optics, light on the facade, shade, and what stands before or behind the glass
 * @param out array of 8760 to write into; a new one when none is given
 * @returns W per m² of glass, mean of each hour, 0 or more
 * @throws RangeError when a share is not 0…1 or the arrays differ in length
 * @source handbook solar heat gain method: beam by angle, diffuse by the half-space value
 */
export function windowGain_W_m2(window: WindowInSun, out: Float64Array = new Float64Array(window.sky.beam_W_m2.length)): Float64Array {
  const { optics, sky, shade, blind } = window;
  const screenShare = checkedShare('screenShare', window.screenShare ?? 0);
  const screenPasses = checkedShare('screenPasses', window.screenPasses ?? INSECT_SCREEN_PASSES);
  const arrives = checkedShare('cleanliness', window.cleanliness ?? 1) * (1 - screenShare * (1 - screenPasses));
  const view = checkedShare('skyView', shade.skyView);
  const hours = sky.beam_W_m2.length;
  if (out.length !== hours || shade.sunlit.length !== hours) {
    throw new RangeError(`out and sunlit must have ${String(hours)} hours, got ${String(out.length)} and ${String(shade.sunlit.length)}`);
  }
  const glass = { table: optics.gainByCosine, diffuse: optics.hemisphericalSolarHeatGain };
  if (blind === undefined) openGlass({ sky, sunlit: shade.sunlit, view, arrives, glass }, out);
  else withBlind({ sky, sunlit: shade.sunlit, view, arrives, glass, blind: { ...blind, covered: checkedShare('covered', blind.covered) } }, out);
  return out;
}

/** Everything an hour needs, looked up once. */
interface Hours {
  readonly sky: WindowInSun['sky'];
  readonly sunlit: Float64Array;
  readonly view: number;
  readonly arrives: number;
  readonly glass: { readonly table: Float64Array; readonly diffuse: number };
}

function openGlass({ sky, sunlit, view, arrives, glass }: Hours, out: Float64Array): void {
  const { cosIncidence, beam_W_m2, sky_W_m2, ground_W_m2 } = sky;
  const { table } = glass;
  const hours = out.length;
  const fromSky = arrives * glass.diffuse * view;
  const fromGround = arrives * glass.diffuse;
  for (let hour = 0; hour < hours; hour++) {
    let gain = fromSky * sky_W_m2[hour]! + fromGround * ground_W_m2[hour]!;
    const beam = beam_W_m2[hour]! * sunlit[hour]!;
    if (beam > 0) {
      const place = cosIncidence[hour]! * COSINE_STEPS;
      const step = place | 0;
      const least = table[step]!;
      gain += arrives * beam * (least + (place - step) * (table[step + 1]! - least));
    }
    out[hour] = gain;
  }
}

function withBlind({ sky, sunlit, view, arrives, glass, blind }: Hours & { readonly blind: DrawnBlind }, out: Float64Array): void {
  const { cosIncidence, beam_W_m2, sky_W_m2, ground_W_m2 } = sky;
  const { covered, closesAt_W_m2: closesAt, drawn } = blind;
  const open = glass.table;
  const shut = drawn.gainByCosine;
  const hours = out.length;
  for (let hour = 0; hour < hours; hour++) {
    const beam = beam_W_m2[hour]! * sunlit[hour]!;
    const diffuse = view * sky_W_m2[hour]! + ground_W_m2[hour]!;
    const share = arrives * (beam + diffuse) >= closesAt ? covered : 0;
    let gain = (glass.diffuse + share * (drawn.hemisphericalSolarHeatGain - glass.diffuse)) * diffuse;
    if (beam > 0) {
      const place = cosIncidence[hour]! * COSINE_STEPS;
      const step = place | 0;
      const rest = place - step;
      const bare = open[step]! + rest * (open[step + 1]! - open[step]!);
      gain += beam * (share === 0 ? bare : bare + share * (shut[step]! + rest * (shut[step + 1]! - shut[step]!) - bare));
    }
    out[hour] = arrives * gain;
  }
}
