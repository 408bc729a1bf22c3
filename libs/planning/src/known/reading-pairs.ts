import { type GlazingMakeUp, glazingOptics, highestBehindClear_W_m2, meterPair, type MeterPair, pairGlass, type Site, type SolarReading } from '#calc';
import type { PlanFinding } from '../plan/plan-finding.js';

/** A bare and a filmed reading of the same glass in the same sun. */
export interface ReadingPair {
  readonly bare_W_m2: number;
  readonly filmed_W_m2: number;
  readonly film: string;
  /** The row the filmed reading stands in. */
  readonly filmed: SolarReading;
}

/** Where some readings were taken, and behind what. */
export interface ReadingPlaceKnown {
  readonly site: Site;
  readonly makeUp: GlazingMakeUp;
  /** In words. */
  readonly place: string;
}

export interface PairedReadings {
  readonly pairs: readonly ReadingPair[];
  /** Rows with a bare reading a window plane there can have. */
  readonly used: readonly SolarReading[];
  readonly findings: readonly PlanFinding[];
}

/** A bare reading judged against the most a window plane there can get. */
function judged(reading: SolarReading, bare_W_m2: number, at: ReadingPlaceKnown): MeterPair {
  return meterPair({
    bare_W_m2,
    filmed_W_m2: reading.filmed_W_m2 ?? 0,
    ...pairGlass(glazingOptics(at.makeUp)),
    highestBehindClear_W_m2: highestBehindClear_W_m2({ latitude_deg: at.site.latitude_deg, date: reading.taken.slice(0, 10), azimuth_deg: reading.azimuth_deg }),
  });
}

const when = (r: SolarReading): string => `${r.taken.replace('T', ' ')} (${r.inventoryRow.file} row ${String(r.inventoryRow.row)})`;

/** The bare reading a row goes with: its own, or that of a row without a filmed one taken at the same time. */
const bareOf = (row: SolarReading, all: readonly SolarReading[]): SolarReading | undefined =>
  row.bare_W_m2 !== null ? row : all.find((other) => other.taken === row.taken && other.bare_W_m2 !== null && other.filmed_W_m2 === null);

/** Puts bare and filmed readings together and leaves out what a window plane cannot read, saying so. */
export function pairedReadings(readings: readonly SolarReading[], at: ReadingPlaceKnown): PairedReadings {
  const findings: PlanFinding[] = [];
  const pairs: ReadingPair[] = [];
  const say = (text: string, whatToDo: string): void => void findings.push({ severity: 'warning', subject: at.place, text, whatToDo });
  const used = readings.filter((row) => {
    if (row.bare_W_m2 === null || row.bare_W_m2 <= 0) return false;
    const found = judged(row, row.bare_W_m2, at);
    if (found.isPlausible) return true;
    say(`reading of ${when(row)} not used: ${found.warnings.find((w) => w.includes('implausible')) ?? 'implausible in the window plane'}`, 'hold the meter flat to the glass, not at the sun, and read again');
    return false;
  });
  for (const row of readings) {
    if (row.filmed_W_m2 === null) continue;
    const bare = bareOf(row, readings);
    if (bare?.bare_W_m2 == null) say(`filmed reading of ${when(row)} not used: no bare reading was taken with it`, 'read bare and filmed glass within two minutes of one another');
    else if (row.film === null) say(`filmed reading of ${when(row)} not used: it names no film`, 'name the film');
    else if (used.includes(bare)) {
      if (row.filmed_W_m2 >= bare.bare_W_m2) say(`pair of ${when(row)} not used: the filmed reading is not below the bare one`, 'read both again in the same sun');
      else pairs.push({ bare_W_m2: bare.bare_W_m2, filmed_W_m2: row.filmed_W_m2, film: row.film, filmed: row });
    }
  }
  return { pairs, used, findings };
}
