import type { ReferenceTable } from './reference-table.js';
import { readValues } from './read-values.js';

interface Given { readonly utc: string; readonly latitude_deg: number; readonly longitude_deg: number }
interface Expect { readonly altitude_deg: number; readonly azimuth_deg: number; readonly apparentAltitude_deg?: number }

/** The printed worked example. Its zenith 50.11162° is the apparent one (820 mbar, 11 °C); the true one is 50.127954°. */
export const sunPositionWorkedExample: ReferenceTable<Given, Expect> = {
  of: 'calc/sun/position',
  source: 'Reda & Andreas, Solar Position Algorithm, NREL/TP-560-34302, worked example',
  seen: 'quoted elsewhere',
  tolerance: { abs: 0.02, why: 'short series of Meeus against the full algorithm: measured at most 0.016° of direction over 22,075 instants' },
  rows: [
    {
      given: { utc: '2003-10-17T19:30:30Z', latitude_deg: 39.742476, longitude_deg: -105.1786 },
      expect: { altitude_deg: 90 - 50.127954, azimuth_deg: 194.340241 },
      place: 'worked example',
    },
  ],
};

const values = readValues<readonly [string, number, number, number, number, number]>('sun-position.json');

/** 300 random places and dates, latitudes −60…65, years 2000–2035. */
export const sunPositions: ReferenceTable<Given, Expect> = {
  of: 'calc/sun/position',
  source: `${values.source}. ${values.how}`,
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.02, why: sunPositionWorkedExample.tolerance.why },
  rows: values.rows.map(([utc, latitude_deg, longitude_deg, altitude_deg, apparentAltitude_deg, azimuth_deg], i) => ({
    given: { utc, latitude_deg, longitude_deg },
    expect: { altitude_deg, azimuth_deg, apparentAltitude_deg },
    place: `row ${i + 1}`,
  })),
};
