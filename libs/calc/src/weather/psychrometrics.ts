// Moist air after the ASHRAE Handbook of Fundamentals, psychrometrics chapter (2009, ch. 1); equation numbers from memory.

/**
 * Pressure of water vapour that saturates air, over ice below 0 °C and over water above.
 *
 *   ln p = C1/T + C2 + C3 T + C4 T² + C5 T³ + C6 T⁴ + C7 ln T          T in kelvin
 *
 * @param temperature_degC −100…200
 * @returns Pa
 * @throws RangeError when temperature_degC is not −100…200
 * @source Hyland & Wexler 1983, as in the ASHRAE Handbook of Fundamentals 2009, ch. 1, eq. 5 and 6
 */
export function saturationPressure_Pa(temperature_degC: number): number {
  if (!(temperature_degC >= -100 && temperature_degC <= 200)) throw new RangeError(`temperature_degC must be −100…200, got ${temperature_degC}`);
  const t = temperature_degC + 273.15;
  if (temperature_degC < 0) {
    const ice = -5674.5359 / t + 6.3925247 - 9.677843e-3 * t + 6.2215701e-7 * t ** 2 + 2.0747825e-9 * t ** 3 - 9.484024e-13 * t ** 4;
    return Math.exp(ice + 4.1635019 * Math.log(t));
  }
  const water = -5800.2206 / t + 1.3914993 - 4.8640239e-2 * t + 4.1764768e-5 * t ** 2 - 1.4452093e-8 * t ** 3;
  return Math.exp(water + 6.5459673 * Math.log(t));
}

/**
 * Air pressure of the standard atmosphere at a height.
 *
 *   101325 (1 − 2.25577e-5 z)^5.2559
 *
 * @param elevation_m −500…11,000
 * @returns Pa
 * @throws RangeError when elevation_m is out of range
 * @source ASHRAE Handbook of Fundamentals 2009, ch. 1, eq. 3
 */
export function standardPressure_Pa(elevation_m: number): number {
  if (!(elevation_m >= -500 && elevation_m <= 11_000)) throw new RangeError(`elevation_m must be −500…11000, got ${elevation_m}`);
  return 101_325 * (1 - 2.25577e-5 * elevation_m) ** 5.2559;
}

/**
 * Relative humidity of air from its dew point.
 *
 *   p_s(dew point) / p_s(dry bulb), not above 1
 *
 * @param dryBulb_degC −100…200
 * @param dewPoint_degC −100…200; one above the dry bulb counts as saturated
 * @returns 0…1
 * @throws RangeError when a temperature is out of range
 * @source ASHRAE Handbook of Fundamentals 2009, ch. 1, eq. 24 and 38
 */
export function relativeHumidityOf(dryBulb_degC: number, dewPoint_degC: number): number {
  return Math.min(1, saturationPressure_Pa(dewPoint_degC) / saturationPressure_Pa(dryBulb_degC));
}

/** Water per dry air of saturated air, kg/kg. */
const saturatedRatio = (temperature_degC: number, pressure_Pa: number): number => {
  const vapour = saturationPressure_Pa(temperature_degC);
  return (0.621945 * vapour) / (pressure_Pa - vapour);
};

/** Water per dry air of air whose wet bulb is known, kg/kg. */
function ratioAtWetBulb(dryBulb_degC: number, wetBulb_degC: number, pressure_Pa: number): number {
  const saturated = saturatedRatio(wetBulb_degC, pressure_Pa);
  const gap = dryBulb_degC - wetBulb_degC;
  return wetBulb_degC >= 0
    ? ((2501 - 2.326 * wetBulb_degC) * saturated - 1.006 * gap) / (2501 + 1.86 * dryBulb_degC - 4.186 * wetBulb_degC)
    : ((2830 - 0.24 * wetBulb_degC) * saturated - 1.006 * gap) / (2830 + 1.86 * dryBulb_degC - 2.1 * wetBulb_degC);
}

/**
 * Thermodynamic wet bulb of air.
 *
 *   the temperature t* at which W = ((2501 − 2.326 t*) W_s(t*) − 1.006 (t − t*)) / (2501 + 1.86 t − 4.186 t*), over ice below 0 °C;
 *   found by chords between the dry bulb and 60 K below it, at least −100 °C
 *
 * @param dryBulb_degC −60…70
 * @param relativeHumidity 0…1
 * @param pressure_Pa 60,000…110,000
 * @returns °C, not above dryBulb_degC, within 0.001 K
 * @throws RangeError when a value is out of range
 * @source ASHRAE Handbook of Fundamentals 2009, ch. 1, eq. 22, 23, 35 and 37
 */
export function wetBulb_degC(dryBulb_degC: number, relativeHumidity: number, pressure_Pa: number): number {
  if (!(dryBulb_degC >= -60 && dryBulb_degC <= 70)) throw new RangeError(`dryBulb_degC must be −60…70, got ${dryBulb_degC}`);
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1)) throw new RangeError(`relativeHumidity must be 0…1, got ${relativeHumidity}`);
  if (!(pressure_Pa >= 60_000 && pressure_Pa <= 110_000)) throw new RangeError(`pressure_Pa must be 60000…110000, got ${pressure_Pa}`);
  const vapour = relativeHumidity * saturationPressure_Pa(dryBulb_degC);
  const ratio = (0.621945 * vapour) / (pressure_Pa - vapour);
  // Humidity rises with the wet bulb almost in a straight line, so the crossing chord finds it in a few turns; the side that stays is
  // given half its weight (Illinois rule), or it would creep.
  // Ice and water meet with a step at 0 °C: water is taken where it gives a wet bulb at all.
  const wet = dryBulb_degC >= 0 && ratioAtWetBulb(dryBulb_degC, 0, pressure_Pa) <= ratio;
  let low = wet ? 0 : Math.max(-100, dryBulb_degC - 60);
  let high = wet ? dryBulb_degC : Math.min(dryBulb_degC, -1e-9);
  let [below, above] = [ratioAtWetBulb(dryBulb_degC, low, pressure_Pa) - ratio, ratioAtWetBulb(dryBulb_degC, high, pressure_Pa) - ratio];
  if (above <= 0) return high;
  let before = high;
  for (let turn = 0; turn < 60; turn++) {
    const next = high - (above * (high - low)) / (above - below);
    const off = ratioAtWetBulb(dryBulb_degC, next, pressure_Pa) - ratio;
    if (Math.abs(next - before) < 1e-4 || off === 0) return next;
    before = next;
    if (off > 0) {
      [high, above] = [next, off];
      below /= 2;
    } else {
      [low, below] = [next, off];
      above /= 2;
    }
  }
  return before;
}

/**
 * Dew point of air.
 *
 *   the temperature at which saturated vapour has the pressure of the air's own; found by halving
 *
 * @param dryBulb_degC −60…70
 * @param relativeHumidity above 0…1
 * @returns °C, −100…dryBulb_degC, within 0.0005 K
 * @throws RangeError when a value is out of range
 * @source ASHRAE Handbook of Fundamentals 2009, ch. 1, eq. 5, 6 and 38
 */
export function dewPointOf_degC(dryBulb_degC: number, relativeHumidity: number): number {
  if (!(relativeHumidity > 0 && relativeHumidity <= 1)) throw new RangeError(`relativeHumidity must be above 0 and at most 1, got ${relativeHumidity}`);
  if (relativeHumidity === 1) return dryBulb_degC;
  const vapour = relativeHumidity * saturationPressure_Pa(dryBulb_degC);
  let low = -100;
  let high = dryBulb_degC;
  while (high - low > 0.0005) {
    const middle = (low + high) / 2;
    if (saturationPressure_Pa(middle) < vapour) low = middle;
    else high = middle;
  }
  return high;
}
