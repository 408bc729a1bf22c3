/** Hours of the year every series here has. */
export const hoursOfYear = 8760;

/** A constant, a day of 24 hours that repeats, or a year of 8760 hours. */
export type HourlyValue = number | ArrayLike<number>;

/** What drives a dwelling through the year. Limits are positive; both 0 let it float free. */
export interface DwellingDrive {
  readonly outdoor_degC: ArrayLike<number>;
  /** Sun through all windows, in W. */
  readonly solar_W: ArrayLike<number>;
  /** Sun on opaque parts less what they lose to the sky, in W; may be negative. */
  readonly opaqueSolar_W?: ArrayLike<number>;
  readonly internal_W: HourlyValue;
  readonly heatingSetPoint_degC: HourlyValue;
  readonly coolingSetPoint_degC: HourlyValue;
  /** Takes the place of the body's own air change. */
  readonly ventilation_W_K?: HourlyValue;
  readonly heatingLimit_W?: HourlyValue;
  readonly coolingLimit_W?: HourlyValue;
  /** Share of the internal gain that warms the air at once; 0.5 in the standard. */
  readonly internalConvectiveShare?: number;
  /** Mass temperature before the first hour. */
  readonly initialMass_degC?: number;
}

/** What a plant can do each hour, and the least of it: below that the loop need not look. */
export interface PlantLimit {
  readonly most_W: Float64Array;
  readonly least_W: number;
}

/** A checked drive with every series written out to 8760 hours; made once and shared by all film options of a dwelling. */
export interface PreparedDrive {
  readonly outdoor_degC: Float64Array;
  readonly solar_W: Float64Array;
  readonly internal_W: Float64Array;
  readonly heatingSetPoint_degC: Float64Array;
  readonly coolingSetPoint_degC: Float64Array;
  /** `null`: the body's own, all year. */
  readonly ventilation_W_K: Float64Array | null;
  readonly heatingLimit: PlantLimit;
  readonly coolingLimit: PlantLimit;
  readonly internalConvectiveShare: number;
  readonly initialMass_degC: number;
}

/**
 * A constant, a day or a year written out to 8760 hours; a year given as Float64Array is handed back as it is.
 *
 *   hour h of a day that repeats = its hour h mod 24
 *
 * @param value number, 24 or 8760 values
 * @param name for the message
 * @returns 8760 values
 * @throws RangeError when the length is neither 24 nor 8760, or a value is not a number
 * @source common practice, no source
 */
export function everyHour(value: HourlyValue, name = 'value'): Float64Array {
  const year = value instanceof Float64Array && value.length === hoursOfYear ? value : spread(value, name);
  for (let h = 0; h < hoursOfYear; h++) {
    if (Number.isNaN(year[h]!)) throw new RangeError(`${name} must be numbers, got NaN in hour ${String(h)}`);
  }
  return year;
}

function spread(value: HourlyValue, name: string): Float64Array {
  const year = new Float64Array(hoursOfYear);
  if (typeof value === 'number') return year.fill(value);
  if (value.length === hoursOfYear) {
    year.set(value);
    return year;
  }
  if (value.length !== 24) throw new RangeError(`${name} must be a number, 24 or 8760 hours, got ${String(value.length)} values`);
  for (let h = 0; h < hoursOfYear; h++) year[h] = value[h % 24]!;
  return year;
}

function atLeastZero(value: HourlyValue, name: string): Float64Array {
  const year = everyHour(value, name);
  for (let h = 0; h < hoursOfYear; h++) {
    if (year[h]! < 0) throw new RangeError(`${name} must be 0 or more, got ${String(year[h])} in hour ${String(h)}`);
  }
  return year;
}

/**
 * A plant's limit written out.
 *
 *   the hourly limits and the least of them
 *
 * @param value number, 24 or 8760 values, ≥ 0, Infinity for none
 * @param name for the message
 * @returns limits of 8760 hours
 * @throws RangeError for a negative limit or a wrong length
 * @source definition
 */
export function plantLimit(value: HourlyValue, name = 'limit_W'): PlantLimit {
  const most_W = atLeastZero(value, name);
  return { most_W, least_W: most_W.reduce((least, W) => Math.min(least, W), Infinity) };
}

function yearOf(series: ArrayLike<number>, name: string): Float64Array {
  if (series.length !== hoursOfYear) throw new RangeError(`${name} must have 8760 hours, got ${String(series.length)}`);
  return everyHour(series, name);
}

/**
 * Checks a drive and writes its schedules out.
 *
 *   solar = sun through windows + sun on opaque parts less sky loss
 *
 * @param drive what drives the dwelling
 * @returns series of 8760 hours
 * @throws RangeError for a wrong length, a negative limit, or a heating set point above the cooling set point
 * @source ISO 13790:2008, 13.2 (set points), 11.3.2 (opaque gain added to the solar gain)
 */
export function prepareDrive(drive: DwellingDrive): PreparedDrive {
  const heating = everyHour(drive.heatingSetPoint_degC, 'heatingSetPoint_degC');
  const cooling = everyHour(drive.coolingSetPoint_degC, 'coolingSetPoint_degC');
  for (let h = 0; h < hoursOfYear; h++) {
    if (heating[h]! > cooling[h]!) throw new RangeError(`heatingSetPoint_degC must be at most coolingSetPoint_degC, got ${String(heating[h])} above ${String(cooling[h])} in hour ${String(h)}`);
  }
  let solar = yearOf(drive.solar_W, 'solar_W');
  if (drive.opaqueSolar_W) {
    const opaque = yearOf(drive.opaqueSolar_W, 'opaqueSolar_W');
    solar = solar.map((sun, h) => sun + opaque[h]!);
  }
  return {
    outdoor_degC: yearOf(drive.outdoor_degC, 'outdoor_degC'),
    solar_W: solar,
    internal_W: everyHour(drive.internal_W, 'internal_W'),
    heatingSetPoint_degC: heating,
    coolingSetPoint_degC: cooling,
    ventilation_W_K: drive.ventilation_W_K === undefined ? null : atLeastZero(drive.ventilation_W_K, 'ventilation_W_K'),
    heatingLimit: plantLimit(drive.heatingLimit_W ?? Infinity, 'heatingLimit_W'),
    coolingLimit: plantLimit(drive.coolingLimit_W ?? Infinity, 'coolingLimit_W'),
    internalConvectiveShare: drive.internalConvectiveShare ?? 0.5,
    initialMass_degC: drive.initialMass_degC ?? 20,
  };
}
