import type { SolarReading } from '#calc';
import type { Placed } from './gathered.js';

/** What makes a reading one of several: place, glass, film and time. */
export const readingKey = (of: SolarReading): string => [of.building, of.azimuth_deg, of.glazing, of.film ?? '', of.taken].join(' ');

/** Numbers readings that were repeated: a pair is taken three times in the same sun, and all three count. Rows that say exactly the same are one. */
export function withRepeats(readings: readonly Placed<SolarReading>[]): readonly Placed<SolarReading>[] {
  const taken = new Map<string, string[]>();
  return readings.map(({ record, row }) => {
    const key = readingKey(record);
    const values = [record.bare_W_m2, record.filmed_W_m2, record.outdoors_W_m2].join(' ');
    const seen = taken.get(key) ?? [];
    taken.set(key, seen);
    if (!seen.includes(values)) seen.push(values);
    return { row, record: { ...record, repeat: seen.indexOf(values) + 1 } };
  });
}
