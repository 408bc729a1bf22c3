import type { ReferenceTable } from './reference-table.js';

interface Given { readonly latitude_deg: number; readonly month: number; readonly azimuth_deg: number; readonly tilt_deg: 90; readonly solarTime_h: number }
interface Parts {
  readonly sunAltitude_deg: number; readonly sunAzimuth_deg: number; readonly incidence_deg: number;
  readonly directNormal_Btu_h_ft2: number; readonly beam_Btu_h_ft2: number; readonly diffuse_Btu_h_ft2: number; readonly gain_Btu_h_ft2: number;
}

/** The steps behind a solar heat gain factor of 21 July: A 344 Btu/h·ft², B 0.207, C 0.136, declination 20.6°, ground 0.2. */
export const solarGainParts: ReferenceTable<Given, Parts> = {
  of: 'calc/sky/solar-gain-factor',
  source: 'ASHRAE Handbook of Fundamentals 1985–1993, clear-sky constants and polynomials of double-strength sheet glass, evaluated apart from this code',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.3, why: 'printed to 0.1 Btu/h·ft² and 0.01°; constants of the day are held in W/m² here' },
  rows: [
    { given: { latitude_deg: 40, month: 7, azimuth_deg: 90, tilt_deg: 90, solarTime_h: 8 }, expect: { sunAltitude_deg: 35.78, sunAzimuth_deg: 92.21, incidence_deg: 35.84, directNormal_Btu_h_ft2: 241.4, beam_Btu_h_ft2: 195.7, diffuse_Btu_h_ft2: 53.8, gain_Btu_h_ft2: 215.6 }, place: '40° N, July, E, 8 h' },
    { given: { latitude_deg: 24, month: 7, azimuth_deg: 90, tilt_deg: 90, solarTime_h: 8 }, expect: { sunAltitude_deg: 34.8, sunAzimuth_deg: 80.82, incidence_deg: 35.84, directNormal_Btu_h_ft2: 239.3, beam_Btu_h_ft2: 194.0, diffuse_Btu_h_ft2: 53.0, gain_Btu_h_ft2: 213.5 }, place: '24° N, July, E, 8 h' },
    { given: { latitude_deg: 24, month: 7, azimuth_deg: 270, tilt_deg: 90, solarTime_h: 16 }, expect: { sunAltitude_deg: 34.8, sunAzimuth_deg: 279.18, incidence_deg: 35.84, directNormal_Btu_h_ft2: 239.3, beam_Btu_h_ft2: 194.0, diffuse_Btu_h_ft2: 53.0, gain_Btu_h_ft2: 213.5 }, place: '24° N, July, W, 16 h' },
    { given: { latitude_deg: 40, month: 7, azimuth_deg: 180, tilt_deg: 90, solarTime_h: 12 }, expect: { sunAltitude_deg: 70.6, sunAzimuth_deg: 180.0, incidence_deg: 70.6, directNormal_Btu_h_ft2: 276.2, beam_Btu_h_ft2: 91.7, diffuse_Btu_h_ft2: 57.2, gain_Btu_h_ft2: 109.2 }, place: '40° N, July, S, 12 h' },
    { given: { latitude_deg: 24, month: 7, azimuth_deg: 180, tilt_deg: 90, solarTime_h: 12 }, expect: { sunAltitude_deg: 86.6, sunAzimuth_deg: 180.0, incidence_deg: 86.6, directNormal_Btu_h_ft2: 279.6, beam_Btu_h_ft2: 16.6, diffuse_Btu_h_ft2: 53.7, gain_Btu_h_ft2: 46.3 }, place: '24° N, July, S, 12 h' },
    { given: { latitude_deg: 24, month: 7, azimuth_deg: 135, tilt_deg: 90, solarTime_h: 9 }, expect: { sunAltitude_deg: 48.4, sunAzimuth_deg: 85.49, incidence_deg: 64.46, directNormal_Btu_h_ft2: 260.8, beam_Btu_h_ft2: 112.4, diffuse_Btu_h_ft2: 51.3, gain_Btu_h_ft2: 128.6 }, place: '24° N, July, SE, 9 h' },
  ],
};

type Peaks = Readonly<Record<'N' | 'NE' | 'E' | 'SE' | 'S' | 'SW' | 'W' | 'NW', number>>;
const manual: readonly (readonly [latitude_deg: number, month: number, peaks: Peaks])[] = [
  [40, 6, {N: 17, NE: 133, E: 162, SE: 111, S: 54, SW: 111, W: 162, NW: 133}],
  [40, 7, {N: 15, NE: 127, E: 164, SE: 125, S: 69, SW: 125, W: 164, NW: 127}],
  [40, 9, {N: 9, NE: 58, E: 149, SE: 162, S: 140, SW: 162, W: 149, NW: 58}],
  [30, 6, {N: 20, NE: 139, E: 161, SE: 90, S: 21, SW: 90, W: 161, NW: 139}],
  [30, 7, {N: 16, NE: 131, E: 164, SE: 100, S: 30, SW: 100, W: 164, NW: 131}],
  [30, 9, {N: 9, NE: 90, E: 158, SE: 152, S: 105, SW: 152, W: 158, NW: 90}],
  [20, 6, {N: 26, NE: 154, E: 160, SE: 73, S: 14, SW: 73, W: 160, NW: 154}],
  [20, 7, {N: 19, NE: 138, E: 163, SE: 85, S: 14, SW: 85, W: 163, NW: 138}],
];

/** Highest gains of a month through ordinary glass, Btu/h per square foot of SASH, 0.85 of it glass. */
export const manualPeaks: ReferenceTable<{ readonly latitude_deg: number; readonly month: number }, Peaks> = {
  of: 'calc/sky/solar-gain-factor',
  source: 'a 1960s air-conditioning system design manual, Part 1 Load Estimating, solar heat gain through ordinary glass',
  seen: 'in the source',
  tolerance: { why: 'reported, no pass line: an older and independent table, hazier by up to 15 %; set beside ours over 0.85 of the sash' },
  rows: manual.map(([latitude_deg, month, expect]) => ({ given: { latitude_deg, month }, expect, place: `${latitude_deg}° N, month ${month}` })),
};
