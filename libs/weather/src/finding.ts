import type { HourlyYear } from '#calc';

/** Something a person must know about a weather file. */
export interface WeatherFinding {
  /** refused: the file cannot be used; doubtful: used as it is, results may be off; filled: values worked out from others. */
  readonly severity: 'refused' | 'doubtful' | 'filled';
  /** What kind of finding, for programs: `hours`, `missing`, `leap-day`, `clock`, `closure`, `night-sun`, `range`, `header`, `steps`. */
  readonly about: string;
  /** First line of the file it was seen in, counted from 1; `null` for the file as a whole. */
  readonly row: number | null;
  /** What was seen, what is expected and what to do, in words. */
  readonly text: string;
}

/** A weather file as read: the year when it can be used, and all findings at once. */
export interface WeatherReading {
  readonly weather: HourlyYear | null;
  /** Dew point beside the year's wet bulb; empty without a year. */
  readonly dewPoint_degC: Float64Array;
  readonly findings: readonly WeatherFinding[];
}
