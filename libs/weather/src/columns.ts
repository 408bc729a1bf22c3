import type { Site } from '#calc';

/** What is kept of every hour, in our units. */
export const COLUMNS = ['dryBulb_degC', 'dewPoint_degC', 'relativeHumidity', 'pressure_Pa', 'global_W_m2', 'direct_W_m2', 'diffuse_W_m2', 'wind_m_s'] as const;
export type Column = (typeof COLUMNS)[number];
/** One hour of a file; NaN where the file has no value. */
export type HourRecord = Record<Column, number>;
export type YearColumns = Record<Column, Float64Array>;

/** What the head of a weather file says. */
export interface StationHead {
  readonly site: Site;
  readonly label: string;
  readonly source: string;
  readonly elevation_m: number;
}
