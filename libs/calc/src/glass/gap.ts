/** A sealed space between panes by its size and filling. */
export interface GapFilling {
  readonly width_mm: number;
  readonly gas: 'air' | 'argon';
  /** Of the two faces that look at each other. */
  readonly emissivities: readonly [number, number];
}

// At 10 °C: conductivity W/mK, density kg/m³, viscosity kg/ms, specific heat J/kgK. Source: EN 673:2011 table 1.
const GAS = {
  air: { conductivity: 0.02496, density: 1.232, viscosity: 1.761e-5, heat: 1008 },
  argon: { conductivity: 0.01684, density: 1.699, viscosity: 2.164e-5, heat: 519 },
} as const;
const MEAN_K = 283;
const DIFFERENCE_K = 15;

/**
 * Resistance of a sealed vertical gap.
 *
 *   1/R = 4σT³/(1/ε₁+1/ε₂−1) + Nu λ/s     Nu = max(1, 0.035 (Gr Pr)^0.38)
 *
 * @param filling width above 0, gas, emissivities above 0…1
 * @returns m²K/W at a mean of 10 °C and 15 K between the panes
 * @throws RangeError when the width or an emissivity is outside its range
 * @source EN 673:2011, clauses 5 and 7 (constants from memory)
 */
export function gapResistance_m2K_W(filling: GapFilling): number {
  const [one, other] = filling.emissivities;
  if (!(filling.width_mm > 0)) throw new RangeError(`width_mm must be above 0, got ${String(filling.width_mm)}`);
  if (!(one > 0 && one <= 1 && other > 0 && other <= 1)) throw new RangeError(`emissivities must be above 0 and at most 1, got ${String(one)}, ${String(other)}`);
  const gas = GAS[filling.gas];
  const s = filling.width_mm / 1000;
  const grashof = (9.81 * s ** 3 * DIFFERENCE_K * gas.density ** 2) / (MEAN_K * gas.viscosity ** 2);
  const prandtl = (gas.viscosity * gas.heat) / gas.conductivity;
  const nusselt = Math.max(1, 0.035 * (grashof * prandtl) ** 0.38);
  const radiation = (4 * 5.67e-8 * MEAN_K ** 3) / (1 / one + 1 / other - 1);
  return 1 / (radiation + (nusselt * gas.conductivity) / s);
}
