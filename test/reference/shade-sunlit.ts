import type { ReferenceTable } from './reference-table.js';

interface Given {
  readonly sunAltitude_deg: number; readonly sunAzimuth_deg: number; readonly azimuth_deg: number;
  readonly width_m: number; readonly height_m: number;
  readonly overhangDepth_m: number; readonly overhangGap_m: number; readonly finDepth_m: number; readonly finGap_m: number;
}
type Row = readonly [place: string, altitude: number, sunFromSouth: number, wallFromSouth: number, width: number, height: number, overhang: number, gap: number, fin: number, finGap: number, profile: number | null, sunlit: number];

// Azimuths in the source are from south, west positive; ours are that plus 180.
const rows: readonly Row[] = [
  ['shade-01', 70.6, 0, 0, 1.2, 1.5, 0.6, 0.2, 0, 0, 70.6, 0],
  ['shade-02', 50, 0, 0, 1.2, 1.5, 0.6, 0.2, 0, 0, 50, 0.6566],
  ['shade-04', 57.904, 61.743, 45, 1.2, 1.5, 0.9, 0.3, 0.4, 0.1, 59.01, 0.1976],
  ['shade-05', 34.797, 99.184, 90, 1.2, 1.5, 1.2, 0.2, 0, 0, 35.144, 0.5702],
  ['shade-06', 48.398, -94.51, -90, 1, 1.2, 0.5, 0, 0.3, 0, 48.486, 0.5167],
  ['shade-08', 57.904, -61.743, -45, 1.8, 1.2, 0.75, 0.25, 0.5, 0.2, 59.01, 0.1677],
  ['shade-09', 43.664, 73.239, 60, 1.5, 1.5, 0.6, 0.1, 0.6, 0.05, 44.436, 0.6335],
  ['shade-10', 24.315, 97.174, 90, 1.2, 1.5, 1.5, 0, 0, 0, 24.484, 0.5446],
  ['shade-12', 35.7812, -87.7876, 90, 1.2, 1.5, 0.6, 0.2, 0, 0, null, 0],
];

/** Windows with long overhangs and fins, worked from the geometry and confirmed by casting rays. */
export const sunlitShares: ReferenceTable<Given, { readonly profile_deg: number | null; readonly sunlit: number }> = {
  of: 'calc/shade/sunlit',
  source: 'profile-angle construction of the ASHRAE Handbook of Fundamentals, Fenestration, evaluated apart from this code and confirmed by ray casting within 0.0006',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.001, why: 'ray casting with a finite number of rays; sun angles printed to 0.001°' },
  rows: rows.map(([place, altitude, sunFromSouth, wallFromSouth, width_m, height_m, overhangDepth_m, overhangGap_m, finDepth_m, finGap_m, profile_deg, sunlit]) => ({
    given: {
      sunAltitude_deg: altitude, sunAzimuth_deg: sunFromSouth + 180, azimuth_deg: wallFromSouth + 180,
      width_m, height_m, overhangDepth_m, overhangGap_m, finDepth_m, finGap_m,
    },
    expect: { profile_deg, sunlit },
    place,
  })),
};
