/** A low, a best and a high value of one figure. */
export interface Spread {
  readonly low: number;
  readonly best: number;
  readonly high: number;
}

/** Readings of a meter held behind the glass, once bare, once filmed, in the same sun; and what is known beside them. */
export interface MeterReadings {
  readonly bare_W_m2: number;
  readonly filmed_W_m2: number;
  /** In the same plane outdoors, when taken. */
  readonly outdoors_W_m2?: number;
  /** Solar transmittance and heat gain of the bare glazing at normal incidence. */
  readonly bareTransmittance: number;
  readonly bareSolarHeatGain: number;
  /** Share of the heat taken up by the filmed pane that flows inward. */
  readonly inwardFraction?: number;
  /** Outdoor-side reflectance of the filmed glass: no reading tells it. */
  readonly filmReflectance?: Spread;
  readonly meterAccuracy?: { readonly relative: number; readonly absolute_W_m2: number };
  /** Panes in front of the filmed one: what they take up of the sun, and what of that comes inward; 0 for single glass. */
  readonly outerAbsorptance?: number;
  readonly outerInwardHeat?: number;
  /** Highest value behind reference glass for the place, day and facade. */
  readonly highestBehindClear_W_m2?: number;
}

/** What two readings say of a film, with how sure it is, and what they do not say. */
export interface MeterPair {
  readonly transmittanceRatio: number;
  readonly transmittanceRatioUncertainty: number;
  readonly filmedTransmittance: number;
  readonly absorptance: number;
  readonly solarHeatGain: Spread & { readonly standardUncertainty: number };
  /** Sunlight the meter no longer sees: not the cut in heat. */
  readonly cutInReading: number;
  readonly cutInHeatGain: Spread;
  readonly impliedOutdoors_W_m2: number;
  /** The bare reading is no more than a window plane there can get. */
  readonly isPlausible: boolean;
  readonly warnings: readonly string[];
}

/** Single glass in summer, hi/(hi+ho) at 8.3 and 20.3 W/m²K. */
const SINGLE_INWARD = 0.2908;
const USUAL_REFLECTANCE: Spread = { low: 0.06, best: 0.2, high: 0.55 };
const USUAL_ACCURACY = { relative: 0.05, absolute_W_m2: 10 };
/** Standard uncertainty of the usual reflectance and of the inward fraction. Source: own judgement over film classes and wind. */
const USUAL_REFLECTANCE_UNCERTAINTY = 0.1;
const INWARD_UNCERTAINTY = 0.03;
const REFERENCE_TRANSMITTANCE = 0.834;
/** Most that a vertical window plane gives behind clear glass at 24 to 40° N, winter south: 255 Btu/h·ft². */
const HIGHEST_BEHIND_CLEAR_W_m2 = 804;
const WEAK_SUN_W_m2 = 200;

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;

function checkedReadings(of: MeterReadings): void {
  const above = (name: string, value: number): void => {
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name} must be above 0, got ${String(value)}`);
  };
  const share = (name: string, value: number): void => {
    if (!(value > 0 && value <= 1)) throw new RangeError(`${name} must be above 0 and at most 1, got ${String(value)}`);
  };
  above('bare', of.bare_W_m2);
  if (!(of.filmed_W_m2 >= 0 && Number.isFinite(of.filmed_W_m2))) throw new RangeError(`filmed must be 0 or more, got ${String(of.filmed_W_m2)}`);
  if (of.outdoors_W_m2 !== undefined) above('outdoors', of.outdoors_W_m2);
  share('bareTransmittance', of.bareTransmittance);
  share('bareSolarHeatGain', of.bareSolarHeatGain);
  const spread = of.filmReflectance;
  if (spread !== undefined && !(spread.low >= 0 && spread.low <= spread.best && spread.best <= spread.high && spread.high <= 1)) {
    throw new RangeError(`filmReflectance must be low ≤ best ≤ high within 0…1, got ${String(spread.low)}, ${String(spread.best)}, ${String(spread.high)}`);
  }
}

/** Of a triangular spread, the standard uncertainty. */
function triangular({ low, best, high }: Spread): number {
  return Math.sqrt((low ** 2 + best ** 2 + high ** 2 - low * best - low * high - best * high) / 18);
}

function ratioUncertainty(of: MeterReadings): number {
  const { relative, absolute_W_m2 } = of.meterAccuracy ?? USUAL_ACCURACY;
  const u = (reading: number): number => Math.max(relative * reading, absolute_W_m2);
  const onBare = u(of.bare_W_m2) / of.bare_W_m2;
  const onFilmed = u(of.filmed_W_m2) / of.bare_W_m2;
  return Math.hypot(onFilmed, (of.filmed_W_m2 / of.bare_W_m2) * onBare);
}

function warningsOf(of: MeterReadings, found: Omit<MeterPair, 'warnings'>): string[] {
  const warnings = [
    `The meter sees sunlight, not heat: behind the glass it does not feel what the glass takes up and passes inward. ` +
      `It reads ${percent(found.cutInReading)} less sunlight; the cut in heat gain is about ${percent(found.cutInHeatGain.best)} ` +
      `(${percent(found.cutInHeatGain.low)} to ${percent(found.cutInHeatGain.high)} by how much the film reflects).`,
  ];
  if (!found.isPlausible) {
    const highest = of.highestBehindClear_W_m2 ?? HIGHEST_BEHIND_CLEAR_W_m2;
    const where = of.highestBehindClear_W_m2 === undefined ? 'a vertical window plane' : `this facade about this day (at most ${highest.toFixed(0)} W/m² behind clear glass)`;
    warnings.push(
      `The bare reading is implausible in the window plane: ${of.bare_W_m2.toFixed(0)} W/m² behind this glass asks for ${found.impliedOutdoors_W_m2.toFixed(0)} W/m² outdoors, ` +
        `more than ${where} gets. The meter was aimed at the sun, or is wrong.`,
    );
  }
  if (of.bare_W_m2 < WEAK_SUN_W_m2) warnings.push(`The sun was weak (${of.bare_W_m2.toFixed(0)} W/m² bare): take the pair again in full sun.`);
  if (of.filmed_W_m2 >= of.bare_W_m2) warnings.push('The filmed reading is not below the bare one: the pair was not taken in the same sun.');
  if (of.outdoors_W_m2 !== undefined) {
    const seen = of.bare_W_m2 / of.outdoors_W_m2;
    if (Math.abs(seen - of.bareTransmittance) > 0.1) {
      warnings.push(`The bare glass passes ${seen.toFixed(2)} by the outdoor reading, ${of.bareTransmittance.toFixed(2)} by its figures: other glass, slanting sun, or the sun moved.`);
    }
  }
  return warnings;
}

/**
 * A film judged by two readings behind the glass.
 *
 *   r = filmed/bare     τf = r τb     A = 1 − τf − Rf     SHGC = τf + N A     cut = 1 − SHGC/SHGC bare
 *   u² = ((1−N) u τ)² + (N u R)² + (A u N)²
 *
 * The reflectance of the filmed glass cannot be told by the pair, so the heat gain is a range: low where it reflects most.
 *
 * @param of readings above 0 in the same plane and sun, figures of the bare glazing, 0…1
 * @returns ratio, filmed heat gain with range and uncertainty, cuts in sunlight and in heat, warnings
 * @throws RangeError when a reading or a figure is outside its range
 * @source heat balance of the pane; uncertainty by the usual law of propagation
 */
export function meterPair(of: MeterReadings): MeterPair {
  checkedReadings(of);
  const inward = of.inwardFraction ?? SINGLE_INWARD;
  const transmittanceRatio = of.filmed_W_m2 / of.bare_W_m2;
  const filmedTransmittance = transmittanceRatio * of.bareTransmittance;
  const room = Math.max(0, 1 - filmedTransmittance);
  const reflectance = of.filmReflectance ?? USUAL_REFLECTANCE;
  const takenUp = (reflects: number): number => room - Math.min(room, reflects);
  const outer = of.outerAbsorptance ?? 0;
  const gain = (reflects: number): number => filmedTransmittance + inward * Math.max(0, takenUp(reflects) - outer) + (of.outerInwardHeat ?? 0);
  const absorptance = takenUp(reflectance.best);
  const transmittanceRatioUncertainty = ratioUncertainty(of);
  const standardUncertainty = Math.hypot(
    (1 - inward) * transmittanceRatioUncertainty * of.bareTransmittance,
    inward * (of.filmReflectance === undefined ? USUAL_REFLECTANCE_UNCERTAINTY : triangular(reflectance)),
    absorptance * INWARD_UNCERTAINTY,
  );
  const solarHeatGain = { low: gain(reflectance.high), best: gain(reflectance.best), high: gain(reflectance.low), standardUncertainty };
  const cut = (filmedGain: number): number => 1 - filmedGain / of.bareSolarHeatGain;
  const found = {
    transmittanceRatio,
    transmittanceRatioUncertainty,
    filmedTransmittance,
    absorptance,
    solarHeatGain,
    cutInReading: 1 - transmittanceRatio,
    cutInHeatGain: { low: cut(solarHeatGain.high), best: cut(solarHeatGain.best), high: cut(solarHeatGain.low) },
    impliedOutdoors_W_m2: of.bare_W_m2 / of.bareTransmittance,
    isPlausible: (of.bare_W_m2 * REFERENCE_TRANSMITTANCE) / of.bareTransmittance <= (of.highestBehindClear_W_m2 ?? HIGHEST_BEHIND_CLEAR_W_m2),
  };
  return { ...found, warnings: warningsOf(of, found) };
}
