import type { GlazingOptics } from './glazing-optics.js';
import type { MeterReadings, Spread } from './meter-pair.js';

/** What a pair of readings needs to know of the glass: figures of the bare glazing, and of the heat that other panes hold. */
export type PairGlass = Pick<MeterReadings, 'bareTransmittance' | 'bareSolarHeatGain' | 'inwardFraction' | 'outerAbsorptance' | 'outerInwardHeat' | 'filmReflectance'>;

/** A sheet's reflectance and the one on site differ by this much either way: angle, dirt, lot. Source: own judgement. */
const REFLECTANCE_DOUBT = 0.05;

/**
 * The glass behind which a pair was read.
 *
 *   bare figures from the bare glazing; inward share of the pane that carries the film; what the other panes take up, and what of it comes in
 *
 * @param bare the glazing without film
 * @param filmed the same with the film's sheet on it; its reflectance is then known within 0.05. Without it the bare panes stand in
 * @param side the film is on; the room side by default
 * @returns fields for `meterPair`
 * @source heat balance of the panes, as `glazingOptics`
 */
export function pairGlass(bare: GlazingOptics, filmed: GlazingOptics | null = null, side: 'room' | 'outdoor' = 'room'): PairGlass {
  const on = filmed ?? bare;
  const at = side === 'room' ? on.inwardFractions.length - 1 : 0;
  const others = on.layerAbsorptance.map((absorptance, k) => (k === at ? { absorptance: 0, inward: 0 } : { absorptance, inward: absorptance * (on.inwardFractions[k] ?? 0) }));
  const inwardFraction = on.inwardFractions[at];
  const spread: Spread | null = filmed === null ? null : { low: Math.max(0, filmed.frontReflectance - REFLECTANCE_DOUBT), best: filmed.frontReflectance, high: Math.min(1, filmed.frontReflectance + REFLECTANCE_DOUBT) };
  return {
    bareTransmittance: bare.solarTransmittance,
    bareSolarHeatGain: bare.solarHeatGain,
    ...(inwardFraction === undefined ? {} : { inwardFraction }),
    outerAbsorptance: others.reduce((sum, each) => sum + each.absorptance, 0),
    outerInwardHeat: others.reduce((sum, each) => sum + each.inward, 0),
    ...(spread === null ? {} : { filmReflectance: spread }),
  };
}
