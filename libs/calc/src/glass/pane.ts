/** A sheet of glass as its normal-incidence solar figures state it; front looks outdoors. */
export interface Pane {
  readonly solarTransmittance: number;
  readonly frontReflectance: number;
  readonly backReflectance: number;
  readonly emissivityFront: number;
  readonly emissivityBack: number;
  readonly thickness_mm: number;
  /** A coating or a film is on it, so its angles follow the fitted curves; blank lets the figures decide. */
  readonly coated?: boolean;
}

/** The space between two panes. */
export interface Gap {
  readonly resistance_m2K_W: number;
}

/** What fills an opening: panes outdoors first, one gap fewer than panes. */
export interface GlazingMakeUp {
  readonly key: string;
  readonly panes: readonly Pane[];
  readonly gaps: readonly Gap[];
}

/**
 * A film by its sheet: figures of 3 mm clear glass with the film on its far face, so light meets the glass first.
 * Of an outdoor film whose sheet was measured film first, the two reflectances change places.
 */
export interface FilmOnClear {
  readonly solarTransmittance: number;
  /** Seen through the glass. */
  readonly frontReflectance: number;
  /** Seen from the film's own side. */
  readonly backReflectance: number;
  readonly roomEmissivity: number;
  readonly side: 'room' | 'outdoor';
}

/** A share of unity for each way light may go. */
export interface Optics {
  readonly solarTransmittance: number;
  readonly frontReflectance: number;
  readonly backReflectance: number;
}

/** Emissivity of plain glass faces. Source: handbook practice for uncoated soda-lime glass, 0.84. */
export const PLAIN_EMISSIVITY = 0.84;
/** Resistance of an ordinary air gap of about 12.7 mm between uncoated faces. */
export const PLAIN_GAP: Gap = { resistance_m2K_W: 0.17 };
/** The reference glass of film sheets. */
export const CLEAR_3_MM: Pane = {
  solarTransmittance: 0.834,
  frontReflectance: 0.075,
  backReflectance: 0.075,
  emissivityFront: PLAIN_EMISSIVITY,
  emissivityBack: PLAIN_EMISSIVITY,
  thickness_mm: 3,
};
/** Single 3 mm clear, the glazing every film sheet speaks of. */
export const SINGLE_CLEAR_3_MM: GlazingMakeUp = { key: 'single-clear-3', panes: [CLEAR_3_MM], gaps: [] };

const share = (name: string, value: number): void => {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} must be 0…1, got ${String(value)}`);
};

/**
 * A pane whose figures can be true.
 *
 * @param pane normal-incidence figures
 * @returns the same pane
 * @throws RangeError when a share is not 0…1, transmittance and a reflectance pass 1, or the thickness is not above 0
 */
export function checkedPane(pane: Pane): Pane {
  share('solarTransmittance', pane.solarTransmittance);
  share('frontReflectance', pane.frontReflectance);
  share('backReflectance', pane.backReflectance);
  share('emissivityFront', pane.emissivityFront);
  share('emissivityBack', pane.emissivityBack);
  const highest = pane.solarTransmittance + Math.max(pane.frontReflectance, pane.backReflectance);
  if (highest > 1 + 1e-9) throw new RangeError(`solarTransmittance + reflectance must be at most 1, got ${String(highest)}`);
  if (!(pane.thickness_mm > 0)) throw new RangeError(`thickness_mm must be above 0, got ${String(pane.thickness_mm)}`);
  return pane;
}

/**
 * A make-up that can be built: one pane or more, a gap between each two.
 *
 * @param makeUp panes outdoors first
 * @returns the same make-up
 * @throws RangeError when panes and gaps do not fit, a gap resists nothing, or a pane cannot be true
 */
export function checkedMakeUp(makeUp: GlazingMakeUp): GlazingMakeUp {
  if (makeUp.panes.length === 0) throw new RangeError('panes must be 1 or more, got 0');
  if (makeUp.gaps.length !== makeUp.panes.length - 1) {
    throw new RangeError(`gaps must be one fewer than panes (${String(makeUp.panes.length)}), got ${String(makeUp.gaps.length)}`);
  }
  makeUp.panes.forEach(checkedPane);
  for (const gap of makeUp.gaps) {
    if (!(gap.resistance_m2K_W > 0)) throw new RangeError(`gap resistance_m2K_W must be above 0, got ${String(gap.resistance_m2K_W)}`);
  }
  return makeUp;
}
