import type { Optics } from './pane.js';

/** A layer that may pass light differently each way; plain panes pass it alike. */
export interface Layer extends Optics {
  /** From the back; blank means as from the front. */
  readonly backTransmittance?: number;
}

/** A stack of layers seen from outdoors, with what each layer takes up of light from outdoors. */
export interface Stack {
  readonly solarTransmittance: number;
  readonly backTransmittance: number;
  readonly frontReflectance: number;
  readonly backReflectance: number;
  readonly layerAbsorptance: readonly number[];
}

interface Pile {
  readonly forth: number;
  readonly home: number;
  readonly front: number;
  readonly back: number;
}

const NOTHING: Pile = { forth: 1, home: 1, front: 0, back: 0 };

const asPile = (layer: Layer): Pile => ({
  forth: layer.solarTransmittance,
  home: layer.backTransmittance ?? layer.solarTransmittance,
  front: layer.frontReflectance,
  back: layer.backReflectance,
});

/** What is left of the to and fro between two parts; at grazing light both may mirror all, and then nothing has come in. */
function opening(outer: Pile, inner: Pile): number {
  const d = 1 - outer.back * inner.front;
  if (d > 1e-12) return d;
  if (outer.forth > 0 && inner.home > 0) throw new RangeError('frontReflectance and backReflectance of facing layers must not both be 1');
  return 1;
}

function joined(outer: Pile, inner: Pile): Pile {
  const d = opening(outer, inner);
  return {
    forth: (outer.forth * inner.forth) / d,
    home: (inner.home * outer.home) / d,
    front: outer.front + (outer.forth * inner.front * outer.home) / d,
    back: inner.back + (inner.home * outer.back * inner.forth) / d,
  };
}

/**
 * Panes one behind the other, with all the light thrown to and fro between them.
 *
 *   D = 1 − Rb₁Rf₂     T = T₁T₂/D     Rf = Rf₁ + T₁²Rf₂/D     layer k takes up F(1−T−Rf) of what comes and B(1−T−Rb) of what returns
 *
 * @param layers outdoors first; one or more; two facing mirrors that lose nothing are refused
 * @returns shares of the light from outdoors; transmittance, front reflectance and absorptances sum to 1
 * @throws RangeError when there is no layer, or light would be trapped for ever
 * @source layer recursion of the public engineering reference of a whole-building program, window module
 */
export function stacked(layers: readonly Layer[]): Stack {
  if (layers.length === 0) throw new RangeError('layers must be 1 or more, got 0');
  const piles = layers.map(asPile);
  const rest: Pile[] = [NOTHING];
  for (let k = piles.length - 1; k >= 0; k--) rest.unshift(joined(piles[k]!, rest[0]!));
  const all = rest[0]!;
  let before = NOTHING;
  const layerAbsorptance = piles.map((layer, k) => {
    const coming = before.forth / opening(before, rest[k]!);
    before = joined(before, layer);
    const beyond = rest[k + 1]!;
    const returning = (before.forth / opening(before, beyond)) * beyond.front;
    return coming * (1 - layer.forth - layer.front) + returning * (1 - layer.home - layer.back);
  });
  return {
    solarTransmittance: all.forth,
    backTransmittance: all.home,
    frontReflectance: all.front,
    backReflectance: all.back,
    layerAbsorptance,
  };
}
