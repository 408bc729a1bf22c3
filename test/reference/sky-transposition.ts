import type { ReferenceTable } from './reference-table.js';
import { readValues } from './read-values.js';

type Row = readonly [number, number, number, number, number, number, number, number, number, number, number, number, number, number, number];
interface Given {
  readonly azimuth_deg: number; readonly tilt_deg: number; readonly sunAltitude_deg: number; readonly sunAzimuth_deg: number;
  readonly directNormal_W_m2: number; readonly diffuseHorizontal_W_m2: number; readonly globalHorizontal_W_m2: number; readonly extraterrestrialNormal_W_m2: number;
}
interface Expect {
  readonly relativeAirMass: number; readonly incidence_deg: number; readonly beam_W_m2: number; readonly ground_W_m2: number;
  readonly isotropic_W_m2: number; readonly hayDavies_W_m2: number; readonly perez_W_m2: number;
}

const values = readValues<Row>('sky-transposition.json');

/** 326 hours on walls: clear, partly cloudy, overcast, low sun, sun behind, and six at the edges. Albedo 0.2. */
export const transposition: ReferenceTable<Given, Expect> = {
  of: 'calc/sky/facade-hour',
  source: `${values.source}. ${values.how}`,
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.05, why: 'inputs printed to 0.001° and 0.1 W/m²; an independent script with the same lines agrees to 0.0005 W/m²' },
  rows: values.rows.map(([azimuth_deg, tilt_deg, zenith, sunAzimuth_deg, dni, dhi, ghi, e0, relativeAirMass, incidence_deg, beam, ground, even, hay, perez], i) => ({
    given: {
      azimuth_deg, tilt_deg, sunAltitude_deg: 90 - zenith, sunAzimuth_deg, directNormal_W_m2: dni, diffuseHorizontal_W_m2: dhi,
      globalHorizontal_W_m2: ghi, extraterrestrialNormal_W_m2: e0,
    },
    expect: { relativeAirMass, incidence_deg, beam_W_m2: beam, ground_W_m2: ground, isotropic_W_m2: even, hayDavies_W_m2: hay, perez_W_m2: perez },
    place: `row ${i + 1}`,
  })),
};

const angles = readValues<readonly [number, number, number, number, number, number]>('sky-incidence.json');

/** 90 angles of incidence on surfaces of any tilt. */
export const incidenceAngles: ReferenceTable<{ sunAltitude_deg: number; sunAzimuth_deg: number; azimuth_deg: number; tilt_deg: number }, { cosIncidence: number; incidence_deg: number }> = {
  of: 'calc/sky/facade-hour',
  source: `${angles.source}. ${angles.how}`,
  seen: 'computed from the stated formula',
  tolerance: { abs: 1e-6, why: 'cosines are printed to 1e-7 from angles printed to 0.001°, which are the inputs' },
  rows: angles.rows.map(([tilt_deg, azimuth_deg, zenith, sunAzimuth_deg, cosIncidence, incidence_deg], i) => ({
    given: { tilt_deg, azimuth_deg, sunAltitude_deg: 90 - zenith, sunAzimuth_deg },
    expect: { cosIncidence, incidence_deg },
    place: `row ${i + 1}`,
  })),
};
