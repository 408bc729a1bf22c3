import { cosDeg, extraterrestrialNormal_W_m2, sinDeg, sunPosition } from '#calc';
import { extraterrestrialDays } from './sun-extraterrestrial.js';
import { sunPositions, sunPositionWorkedExample } from './sun-position.js';

/** Angle between two directions, degrees; from the chord, which keeps its digits when they nearly agree. */
function apart_deg(a: { altitude_deg: number; azimuth_deg: number }, b: { altitude_deg: number; azimuth_deg: number }): number {
  const [x, y] = [a, b].map(({ altitude_deg: h, azimuth_deg: z }) => [cosDeg(h) * sinDeg(z), cosDeg(h) * cosDeg(z), sinDeg(h)]);
  const chord = Math.hypot(...(x ?? []).map((each, i) => each - (y?.[i] ?? 0)));
  return (2 * Math.asin(chord / 2) * 180) / Math.PI;
}

describe('the sun stands where the solar position algorithm puts it', () => {
  for (const table of [sunPositionWorkedExample, sunPositions]) {
    it(`${table.rows.length} rows within ${table.tolerance.abs}° of direction`, () => {
      const off = table.rows.map(({ given, expect: want, place }) => {
        const got = sunPosition(Date.parse(given.utc), given.latitude_deg, given.longitude_deg);
        const apparent = want.apparentAltitude_deg === undefined ? 0 : Math.abs(got.apparentAltitude_deg - want.apparentAltitude_deg);
        return { place, direction: apart_deg(got, want), apparent, setting: Math.abs(want.altitude_deg + 0.8333) < 0.02 };
      });
      const limit = table.tolerance.abs ?? 0;
      expect(off.filter((row) => !(row.direction <= limit))).toEqual([]);
      // Where the disc is just setting the refraction switches off: half a degree hangs on the last digit there.
      expect(off.filter((row) => !row.setting && !(row.apparent <= limit))).toEqual([]);
    });
  }

  it('365 days of the sun outside the air', () => {
    expect(extraterrestrialDays.rows).toHaveLength(365);
    for (const { given, expect: want } of extraterrestrialDays.rows) {
      expect(Math.abs(extraterrestrialNormal_W_m2(given) - want)).toBeLessThanOrEqual(extraterrestrialDays.tolerance.abs ?? 0);
    }
  });
});
