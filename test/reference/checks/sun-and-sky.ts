import {
  clearDayGain, clearSky, cosIncidence, diffuseShare, extraterrestrialNormal_W_m2, irradianceOnFacade, largestClearDayGain, relativeAirMass, sunlitShare, sunPosition, W_m2Of_Btu_h_ft2,
} from '#calc';
import type { ReferenceTable } from '../reference-table.js';
import { sunlitShares } from '../shade-sunlit.js';
import { clearSkies, phoenixNoons } from '../sky-clear.js';
import { erbsHours } from '../sky-diffuse-share.js';
import { solarGainFactors } from '../sky-solar-gain-factor.js';
import { incidenceAngles, transposition } from '../sky-transposition.js';
import { denverHours } from '../sky-denver-hours.js';
import { manualPeaks, solarGainParts } from '../sky-solar-gain-parts.js';
import { extraterrestrialDays, extraterrestrialPrinted } from '../sun-extraterrestrial.js';
import { sunPositions, sunPositionWorkedExample } from '../sun-position.js';
import { byName, check, type Check } from './check.js';

const sinDeg = (angle_deg: number): number => Math.sin((angle_deg * Math.PI) / 180);
const cosDeg = (angle_deg: number): number => Math.cos((angle_deg * Math.PI) / 180);

/** The angle between two directions, by the chord: exact where they nearly agree. */
function apart_deg(a: { altitude_deg: number; azimuth_deg: number }, b: { altitude_deg: number; azimuth_deg: number }): number {
  const [x, y] = [a, b].map(({ altitude_deg: h, azimuth_deg: z }) => [cosDeg(h) * sinDeg(z), cosDeg(h) * cosDeg(z), sinDeg(h)]);
  const chord = Math.hypot(...(x ?? []).map((each, i) => each - (y?.[i] ?? 0)));
  return (2 * Math.asin(chord / 2) * 180) / Math.PI;
}

const positions = (title: string, table: typeof sunPositions): Check =>
  check({
    title,
    table,
    compare: ({ given, expect: want }) => {
      const got = sunPosition(Date.parse(given.utc), given.latitude_deg, given.longitude_deg);
      const direction = { what: 'angle between the two directions, °', expected: 0, ours: apart_deg(got, want) };
      // Where the disc is just setting the refraction switches off: half a degree hangs on the last digit there.
      const isSetting = Math.abs(want.altitude_deg + 0.8333) < 0.02;
      if (want.apparentAltitude_deg === undefined || isSetting) return [direction];
      return [direction, { what: 'altitude as seen, °', expected: want.apparentAltitude_deg, ours: got.apparentAltitude_deg }];
    },
  });

type SkyTable = ReferenceTable<Parameters<typeof clearSky>[0], { readonly directNormal_W_m2: number; readonly diffuseHorizontal_W_m2: number }>;
const clear = (title: string, table: SkyTable): Check =>
  check({
    title,
    table,
    compare: ({ given, expect: want }) => {
      const got = clearSky(given);
      return [
        { what: 'direct, W/m²', expected: want.directNormal_W_m2, ours: got.directNormal_W_m2 },
        { what: 'diffuse, W/m²', expected: want.diffuseHorizontal_W_m2, ours: got.diffuseHorizontal_W_m2 },
      ];
    },
  });

export const sunAndSky: readonly Check[] = [
  positions('Sun position, printed worked example', sunPositionWorkedExample),
  positions('Sun position, 300 places and dates', sunPositions),
  check({
    title: 'Sun outside the air, each day of the year',
    table: extraterrestrialDays,
    compare: ({ given, expect: want }) => [{ what: 'W/m²', expected: want, ours: extraterrestrialNormal_W_m2(given) }],
  }),
  check({
    title: 'Sun outside the air, as printed for the 21st of each month',
    table: extraterrestrialPrinted,
    compare: ({ given, expect: want }) => [{ what: 'W/m²', expected: want, ours: extraterrestrialNormal_W_m2(given) }],
  }),
  check({
    title: 'Light on a facade in one hour, three skies',
    table: transposition,
    compare: ({ given, expect: want }) => {
      const skies = { perez: want.perez_W_m2, isotropic: want.isotropic_W_m2, 'hay-davies': want.hayDavies_W_m2 } as const;
      const of = (sky: keyof typeof skies) => irradianceOnFacade({ ...given, albedo: 0.2, sky });
      const any = of('perez');
      return [
        { what: 'beam, W/m²', expected: want.beam_W_m2, ours: any.beam_W_m2 },
        { what: 'ground, W/m²', expected: want.ground_W_m2, ours: any.ground_W_m2 },
        { what: 'angle of incidence, °', expected: want.incidence_deg, ours: any.incidence_deg, limit: 0.001 },
        { what: 'air mass', expected: want.relativeAirMass, ours: relativeAirMass(90 - given.sunAltitude_deg), limit: 2e-5 },
        ...(Object.keys(skies) as (keyof typeof skies)[]).flatMap((sky) => [
          { what: `sky by ${sky}, W/m²`, expected: skies[sky], ours: of(sky).sky_W_m2 },
          { what: `whole by ${sky}, W/m²`, expected: want.beam_W_m2 + skies[sky] + want.ground_W_m2, ours: of(sky).total_W_m2 },
        ]),
      ];
    },
  }),
  check({
    title: 'Light on eight walls, hours of a Denver year',
    table: denverHours,
    compare: ({ given: { hour, ...light }, expect: walls }) =>
      walls.flatMap(([beam_W_m2, sky_W_m2, ground_W_m2], eighth) => {
        const extraterrestrial = extraterrestrialNormal_W_m2(Math.floor(hour / 24) + 1);
        const ours = irradianceOnFacade({ ...light, azimuth_deg: eighth * 45, tilt_deg: 90, albedo: 0.2, sky: 'perez', extraterrestrialNormal_W_m2: extraterrestrial });
        return byName({ beam_W_m2, sky_W_m2, ground_W_m2 }, ours).map((figure) => ({ ...figure, what: `${eighth * 45}° ${figure.what}` }));
      }),
  }),
  check({
    title: 'Angle of incidence, any tilt',
    table: incidenceAngles,
    compare: ({ given, expect: want }) => [{ what: 'cosine', expected: want.cosIncidence, ours: cosIncidence(given) }],
  }),
  clear('Clear sky by optical depths, both editions', clearSkies),
  clear('Clear sky, noons of Phoenix as printed', phoenixNoons),
  check({
    title: 'Global light split by Erbs',
    table: erbsHours,
    compare: ({ given, expect: want }) => [{ what: 'diffuse, W/m²', expected: want, ours: given.globalHorizontal_W_m2 * diffuseShare(given.clearness) }],
  }),
  check({
    title: 'Solar heat gain factors of the handbook',
    table: solarGainFactors,
    compare: ({ given: { solarTime_h, ...window }, expect: want }) => [
      { what: 'gain, W/m²', expected: want, ours: (solarTime_h === null ? largestClearDayGain(window) : clearDayGain(window, solarTime_h)).gain_W_m2 },
    ],
  }),
  check({
    title: 'Steps behind a solar heat gain factor',
    table: solarGainParts,
    compare: ({ given: { solarTime_h, ...window }, expect: want }) => {
      const ours = clearDayGain(window, solarTime_h);
      const inFeet = (W_m2: number): number => W_m2 / W_m2Of_Btu_h_ft2(1);
      return byName(want, {
        ...ours, directNormal_Btu_h_ft2: inFeet(ours.directNormal_W_m2), beam_Btu_h_ft2: inFeet(ours.beam_W_m2), diffuse_Btu_h_ft2: inFeet(ours.diffuse_W_m2), gain_Btu_h_ft2: inFeet(ours.gain_W_m2),
      });
    },
  }),
  check({
    title: 'Highest gains of an old design manual',
    table: manualPeaks,
    isReport: true,
    compare: ({ given, expect: peaks }) =>
      (Object.keys(peaks) as (keyof typeof peaks)[]).map((side) => {
        const ours_W_m2 = largestClearDayGain({ ...given, azimuth_deg: 45 * ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'].indexOf(side), tilt_deg: 90 }).gain_W_m2;
        return { what: `${side}, Btu/h·ft² of glass`, expected: peaks[side] / 0.85, ours: ours_W_m2 / W_m2Of_Btu_h_ft2(1) };
      }),
  }),
  check({
    title: 'Sunlit share under overhangs and between fins',
    table: sunlitShares,
    compare: ({ given, expect: want }) => {
      const { sunAltitude_deg, sunAzimuth_deg, azimuth_deg, ...lengths } = given;
      const got = sunlitShare({ sunAltitude_deg, sunAzimuth_deg, azimuth_deg, tilt_deg: 90, leaf: 1, geometry: { ...lengths, reveal_m: 0, horizon: [] } });
      return [
        { what: 'sunlit share', expected: want.sunlit, ours: got.sunlit },
        { what: 'profile angle, °', expected: want.profile_deg, ours: got.profile_deg, limit: 0.002 },
      ];
    },
  }),
];
