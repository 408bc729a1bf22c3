import { cosIncidence, glazingOptics, type SolarReading, sunPosition } from '#calc';
import type { PlanFinding } from '../plan/plan-finding.js';
import type { ReadingPlaceKnown } from './reading-pairs.js';

/** Beyond this angle a reading says too little of the glass. */
const MOST_SLANTING_deg = 60;

/** Angle of the sun on a facade at the time of a reading; null without a time of day, or with the sun behind. */
function incidence_deg(reading: SolarReading, at: ReadingPlaceKnown): number | null {
  const time = /T(\d{2}):(\d{2})/.exec(reading.taken);
  if (time === null) return null;
  const utc_ms = Date.parse(`${reading.taken.slice(0, 10)}T00:00:00Z`) + (Number(time[1]) - at.site.timeZone_h) * 3_600_000 + Number(time[2]) * 60_000;
  const sun = sunPosition(utc_ms, at.site.latitude_deg, at.site.longitude_deg);
  const cos = cosIncidence({ sunAltitude_deg: sun.altitude_deg, sunAzimuth_deg: sun.azimuth_deg, azimuth_deg: reading.azimuth_deg, tilt_deg: 90 });
  return sun.altitude_deg <= 0 || cos <= 0 ? 90 : (Math.acos(Math.min(1, cos)) * 180) / Math.PI;
}

/**
 * Transmittance of the bare glass at normal incidence from readings behind it and outdoors in the same plane.
 *
 *   mean of (inside / outdoors) × catalogue's τ(0)/τ(angle)
 *
 * @returns null where no row has both readings, the time of day, and the sun within 60° of the glass
 */
export function outdoorShare(readings: readonly SolarReading[], at: ReadingPlaceKnown): { readonly transmittance: number | null; readonly findings: readonly PlanFinding[] } {
  const findings: PlanFinding[] = [];
  const shares: number[] = [];
  const optics = glazingOptics(at.makeUp);
  for (const row of readings) {
    if (row.outdoors_W_m2 === null || row.outdoors_W_m2 <= 0 || row.bare_W_m2 === null) continue;
    const angle = incidence_deg(row, at);
    const skip = angle === null ? 'the time of day was not noted, so the angle of the sun is not known' : angle > MOST_SLANTING_deg ? `the sun stood ${angle.toFixed(0)}° from straight on, beyond ${String(MOST_SLANTING_deg)}°` : null;
    if (angle === null || skip !== null) {
      findings.push({ severity: 'note', subject: at.place, text: `outdoor reading of ${row.taken.replace('T', ' ')} not used for the bare glass: ${skip ?? ''}`, whatToDo: 'note day and time (standard time) and read with the sun on the glass' });
      continue;
    }
    shares.push((row.bare_W_m2 / row.outdoors_W_m2) * (optics.solarTransmittance / optics.transmittanceAt(angle)));
  }
  return { transmittance: shares.length === 0 ? null : shares.reduce((a, b) => a + b, 0) / shares.length, findings };
}
