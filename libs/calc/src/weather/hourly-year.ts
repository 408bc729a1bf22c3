import type { Site } from '../sun/index.js';

export type { Site };

/** A year of weather: arrays of 8760 means of the hour, hour 0 = 00:00–01:00 on 1 January, local standard time, no 29 February. */
export interface HourlyYear {
  readonly site: Site;
  /** What it is, for people: station or file name. */
  readonly label: string;
  readonly source: string;
  readonly elevation_m: number;
  readonly outdoor_degC: Float64Array;
  readonly wetBulb_degC: Float64Array;
  readonly directNormal_W_m2: Float64Array;
  readonly diffuseHorizontal_W_m2: Float64Array;
  readonly globalHorizontal_W_m2: Float64Array;
  readonly wind_m_s: Float64Array;
}
