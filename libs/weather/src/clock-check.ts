import { sunYear, type HourlyYear } from '#calc';
import { MONTH_NAMES, MONTH_OF_HOUR } from './calendar.js';
import type { WeatherFinding } from './finding.js';

/** Places of the sun tried against the file, hours later than half past. */
export const OFFSETS_H = [-1, -0.5, 0, 0.5, 1] as const;
const RIGHT = OFFSETS_H.indexOf(0);

/** How well global, direct and diffuse light close with the sun at each of `OFFSETS_H`. */
export interface Closure {
  /** Root mean square of G − D − N cos z over hours with cos z above 0.17, W/m²: 12 months of 5 offsets, and the year. */
  readonly months_W_m2: readonly (readonly number[])[];
  readonly year_W_m2: readonly number[];
  /** Hours with light while the sun is more than 8° below the horizon. */
  readonly nightSunHours: number;
}

/**
 * Closure of the three radiations with the sun at half past and up to an hour before and after.
 * A later sun is the same place further east by 15° an hour.
 */
export function closureOf(weather: HourlyYear): Closure {
  const sums = OFFSETS_H.map(() => ({ squares: new Float64Array(13), hours: new Float64Array(13) }));
  let nightSunHours = 0;
  OFFSETS_H.forEach((offset_h, at) => {
    const longitude_deg = ((weather.site.longitude_deg + 15 * offset_h + 540) % 360) - 180;
    const sun = sunYear({ ...weather.site, longitude_deg });
    const { squares, hours } = sums[at]!;
    for (let i = 0; i < 8760; i++) {
      const cosZenith = Math.sin((sun.altitude_deg[i]! * Math.PI) / 180);
      if (at === RIGHT && cosZenith < -0.1392 && weather.globalHorizontal_W_m2[i]! > 0) nightSunHours++;
      if (cosZenith <= 0.17) continue;
      const off = weather.globalHorizontal_W_m2[i]! - weather.diffuseHorizontal_W_m2[i]! - weather.directNormal_W_m2[i]! * cosZenith;
      const month = MONTH_OF_HOUR[i]!;
      squares[month]! += off * off;
      squares[12]! += off * off;
      hours[month]! += 1;
      hours[12]! += 1;
    }
  });
  const rms = (month: number) => sums.map(({ squares, hours }) => (hours[month]! > 0 ? Math.sqrt(squares[month]! / hours[month]!) : 0));
  return { months_W_m2: MONTH_NAMES.map((_, month) => rms(month)), year_W_m2: rms(12), nightSunHours };
}

/** Offset at which a month closes, when that is not half past and clearly better; 0 otherwise. */
function shiftOf(rms: readonly number[]): number {
  const best = rms.indexOf(Math.min(...rms));
  const now = rms[RIGHT] ?? 0;
  return now > 10 && (rms[best] ?? 0) < 0.5 * now ? (OFFSETS_H[best] ?? 0) : 0;
}

const SHIFT_WORDS: Readonly<Record<string, string>> = {
  '-1': 'one hour earlier', '-0.5': 'half an hour earlier', '0.5': 'half an hour later', '1': 'one hour later',
};

/** Findings on the clock of a file and on whether its radiations close at all. */
export function clockFindings(closure: Closure): WeatherFinding[] {
  const findings: WeatherFinding[] = [];
  const shifts = closure.months_W_m2.map(shiftOf);
  for (const offset_h of OFFSETS_H) {
    const months = shifts.flatMap((shift, month) => (shift === offset_h && offset_h !== 0 ? [MONTH_NAMES[month] ?? ''] : []));
    if (months.length === 0) continue;
    const which = months.length === 12 ? 'all months' : months.join(', ');
    const size = Math.abs(offset_h) === 1 ? 'one hour' : 'half an hour';
    const mixed = months.length < 12 ? ' The other months keep another clock: the file mixes two.' : '';
    findings.push({
      severity: 'doubtful', about: 'clock', row: null,
      text: `Clock shift of ${size}: in ${which} global, direct and diffuse light fit together only with the sun ${SHIFT_WORDS[String(offset_h)] ?? ''} than the time stamps say.${mixed} East and west facades would be off by about ${Math.abs(offset_h) === 1 ? '20' : '10'} % in opposite directions. Use another file, or one with corrected time stamps.`,
    });
  }
  const left = Math.min(...closure.year_W_m2);
  if (findings.length === 0 && left > 20) {
    findings.push({
      severity: 'doubtful', about: 'closure', row: null,
      text: `Global, direct and diffuse light do not fit together: they differ by ${left.toFixed(0)} W/m² in the mean of the sunlit hours (1 to 5 is usual). One of the three columns is not what it says.`,
    });
  }
  if (closure.nightSunHours > 0) {
    findings.push({
      severity: 'doubtful', about: 'night-sun', row: null,
      text: `${closure.nightSunHours} hours have sunlight while the sun is more than 8° below the horizon: the clock, the time zone or the place of the file is wrong.`,
    });
  }
  return findings;
}
