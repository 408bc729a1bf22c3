import { glazingOptics, uFactorAt_W_m2K } from './glazing-optics.js';
import { SUMMER_FILMS, WINTER_FILMS, indoorFilm_W_m2K } from './inward-heat.js';
import { CLEAR_3_MM, PLAIN_EMISSIVITY, type Gap, type GlazingMakeUp, type Pane } from './pane.js';

/** What a rating label says. */
export interface GlazingLabel {
  readonly solarHeatGain: number;
  readonly uFactor_W_m2K: number;
  /** Share of the rated window that is frame: label figures are of the whole window. Blank or 0 takes them as the glass's own. */
  readonly frameShare?: number;
}

/** A make-up guessed from a label, with how well it meets it. */
export interface LabelledGlazing extends GlazingMakeUp {
  readonly assumed: {
    /** In words, for the assumptions sheet. */
    readonly sentence: string;
    readonly family: string;
    /** Ours less the label's, on the glass. */
    readonly solarHeatGainError: number;
    readonly uFactorError_W_m2K: number;
  };
}

interface Family {
  readonly name: string;
  readonly panes: number;
  /** The outer pane of the family: a tint or a coating of its usual kind. */
  readonly outer: Pane;
}

/** 3 mm bronze, handbook row 1c; the catalogue holds the same figures. */
const TINTED: Pane = { ...CLEAR_3_MM, solarTransmittance: 0.65, frontReflectance: 0.06, backReflectance: 0.06 };
/** Low-e of emissivity 0.05, taken out of handbook row 25a; the catalogue holds the same figures. */
const LOW_E: Pane = { ...CLEAR_3_MM, solarTransmittance: 0.429, frontReflectance: 0.336, backReflectance: 0.44, emissivityBack: 0.05, coated: true };
/** Metal-coated reflective glass of usual kind. Source: common practice, no source. */
const REFLECTIVE: Pane = { ...CLEAR_3_MM, solarTransmittance: 0.12, frontReflectance: 0.36, backReflectance: 0.4, coated: true };
/** Tints in the mass pass no less than this in dwellings; a darker label is that of a reflective coating. Source: common practice, no source. */
const DARKEST_TINT = 0.2;
/** Heat gain of the frame itself, as a share of the sun on it. Source: common practice, no source. */
const FRAME_GAIN = 0.1;
/** No glass throws back less than its own outer face. */
const LEAST_REFLECTANCE = 0.045;
const SINGLE_FROM_U = 4;
const PLAIN_DOUBLE_FROM_U = 2.5;
const TRIPLE_BELOW_U = 1.2;
const WIDEST_GAP: { readonly least: number; readonly most: number } = { least: 0.1, most: 1.2 };

function familyOf(uFactor_W_m2K: number): Family {
  if (uFactor_W_m2K >= SINGLE_FROM_U) return { name: 'single, tinted as the label asks', panes: 1, outer: TINTED };
  if (uFactor_W_m2K >= PLAIN_DOUBLE_FROM_U) return { name: 'double, outer pane tinted as the label asks', panes: 2, outer: TINTED };
  if (uFactor_W_m2K >= TRIPLE_BELOW_U) return { name: 'double, low-e on the second face scaled to the label', panes: 2, outer: LOW_E };
  return { name: 'triple, low-e on the second face scaled to the label', panes: 3, outer: LOW_E };
}

/** The outer pane somewhere on the line from clear glass (0) through the family's own pane (1) to one that passes nothing. */
function scaledPane(outer: Pane, place: number): Pane {
  const along = (clear: number, own: number): number => Math.min(1, Math.max(0, clear + place * (own - clear)));
  const solarTransmittance = along(CLEAR_3_MM.solarTransmittance, outer.solarTransmittance);
  const back = (own: number): number => Math.min(Math.max(LEAST_REFLECTANCE, along(CLEAR_3_MM.frontReflectance, own)), 1 - solarTransmittance);
  return { ...outer, solarTransmittance, frontReflectance: back(outer.frontReflectance), backReflectance: back(outer.backReflectance) };
}

const builtOf = (family: Family, place: number, gap: Gap): GlazingMakeUp => ({
  key: 'from-label',
  panes: [scaledPane(family.outer, place), ...Array.from({ length: family.panes - 1 }, () => CLEAR_3_MM)],
  gaps: Array.from({ length: family.panes - 1 }, () => gap),
});

/** The gap that gives the label's winter U-factor, held to what a sealed gap can be. */
function gapFor(family: Family, uFactor_W_m2K: number): Gap {
  if (family.panes === 1) return { resistance_m2K_W: WIDEST_GAP.least };
  const glass = family.panes * (CLEAR_3_MM.thickness_mm / 1000);
  const faces = 1 / WINTER_FILMS.outdoor_W_m2K + 1 / indoorFilm_W_m2K(WINTER_FILMS, PLAIN_EMISSIVITY);
  const each = (1 / uFactor_W_m2K - faces - glass) / (family.panes - 1);
  return { resistance_m2K_W: Math.min(WIDEST_GAP.most, Math.max(WIDEST_GAP.least, each)) };
}

/** Halves the line until the solar heat gain meets the label; it falls all the way from clear glass to none. */
function placeFor(family: Family, gap: Gap, solarHeatGain: number): number {
  let low = 0;
  let high = CLEAR_3_MM.solarTransmittance / (CLEAR_3_MM.solarTransmittance - family.outer.solarTransmittance);
  const gainAt = (place: number): number => glazingOptics(builtOf(family, place, gap)).solarHeatGain;
  if (solarHeatGain >= gainAt(low)) return low;
  if (solarHeatGain <= gainAt(high)) return high;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (gainAt(middle) > solarHeatGain) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * A make-up for a window known by its label alone, on which a film can be laid: the usual glazing of the same family, its outer
 * pane scaled until the solar heat gain meets the label, its gap until the U-factor does. Always marked assumed.
 *
 * @param label SHGC 0…1, winter U-factor; with `frameShare` the figures are first taken off the frame
 * @returns make-up, the family in words, and what it misses the label by
 * @throws RangeError when a figure is outside its range
 * @source own method; families by U as in LBNL-2804E
 */
export function labelledGlazing(label: GlazingLabel): LabelledGlazing {
  const { solarHeatGain, uFactor_W_m2K, frameShare = 0 } = label;
  if (!(solarHeatGain > 0 && solarHeatGain <= 0.9)) throw new RangeError(`solarHeatGain must be above 0 and at most 0.9, got ${String(solarHeatGain)}`);
  if (!(uFactor_W_m2K > 0 && uFactor_W_m2K <= 8)) throw new RangeError(`uFactor_W_m2K must be above 0 and at most 8, got ${String(uFactor_W_m2K)}`);
  if (!(frameShare >= 0 && frameShare < 0.6)) throw new RangeError(`frameShare must be 0 or more and below 0.6, got ${String(frameShare)}`);
  const wanted = (solarHeatGain - frameShare * FRAME_GAIN) / (1 - frameShare);
  const family = familyOf(uFactor_W_m2K);
  const gap = gapFor(family, uFactor_W_m2K);
  const tintedPlace = placeFor(family, gap, wanted);
  const tooDark = family.outer === TINTED && scaledPane(family.outer, tintedPlace).solarTransmittance < DARKEST_TINT;
  const taken = tooDark ? { ...family, name: family.name.replace('tinted', 'reflective'), outer: REFLECTIVE } : family;
  const makeUp = builtOf(taken, tooDark ? placeFor(taken, gap, wanted) : tintedPlace, gap);
  const solarHeatGainError = glazingOptics(makeUp, null, SUMMER_FILMS).solarHeatGain - wanted;
  const uFactorError_W_m2K = uFactorAt_W_m2K(makeUp, null, WINTER_FILMS) - uFactor_W_m2K;
  const sentence =
    `Make-up assumed from the label (SHGC ${String(solarHeatGain)}, U ${uFactor_W_m2K.toFixed(2)} W/m²K): ${taken.name}; ` +
    `it misses the label by ${solarHeatGainError.toFixed(3)} in SHGC and ${uFactorError_W_m2K.toFixed(2)} W/m²K in U.`;
  return { ...makeUp, assumed: { sentence, family: taken.name, solarHeatGainError, uFactorError_W_m2K } };
}
