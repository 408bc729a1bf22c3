import { asInTheProgram, plainMethod, Standard140 } from '../dwelling-standard-140-cases.js';
import { freeFloatCases, incidentSun, stepCases, thermalCases, transmittedSun, type Range } from '../dwelling-standard-140.js';
import { check, type Check, type CheckOf, type Figure, type KnownMiss } from './check.js';
import { hourlyFilesAreHere, hourlyYear } from './hourly-files.js';

type Run = ReturnType<Standard140['run']>;
type Method = 'as in the program' | 'before the repair';
const variants = { 'as in the program': asInTheProgram, 'before the repair': plainMethod } as const;

let building: Standard140 | null = null;
const house = (): Standard140 => (building ??= new Standard140(hourlyYear('denver-co')));
const runs = new Map<string, Run>();
function run(id: string, method: Method): Run {
  const key = `${id} ${method}`;
  const known = runs.get(key) ?? house().run(id, variants[method]);
  runs.set(key, known);
  return known;
}

/** Where the method falls outside the programs' own range, inside the acceptance limits all the same where there are any: decision 0010. */
const ONE_MASS = 'one mass takes up the afternoon that a heavy floor and light walls share out between them';
const known: Readonly<Record<string, KnownMiss>> = {
  '640 Case 600 with Htg Temp. Setback: heating, MWh, programs’ range': { why: '3 % high, inside acceptance: the one mass cools less in the night set back', most: 0.08 },
  '910 S. Windows + Overhang: peak cooling, kW, programs’ range': { why: `4 % low: ${ONE_MASS}`, most: 0.1 },
  '660 Low-E Windows: heating, MWh, programs’ range': { why: '1 % high, inside acceptance: sky loss and window films are one figure for the year', most: 0.06 },
  '950FF - Case 900FF with Night Ventilation: max_degC': { why: `0.5 K low: ${ONE_MASS}`, most: 0.6 },
  '650 − 600: cooling, MWh': { why: 'night air cools the one mass too little', most: 0.1 },
  '670 − 600: heating, MWh': { why: '4 % under the least: the pane’s films are one figure for the year', most: 0.06 },
  '900 − 600: heating, MWh': { why: 'light and heavy house differ a little more with one mass than with layers', most: 0.06 },
};

const inside = (what: string, expected: Range, ours: number): Figure => ({ what, expected, ours, limit: 1e-9 });
/** In the programs' own range or, where that is the wider, in the limits set for acceptance: either counts. */
const accepted = (what: string, [programs, limits]: readonly [Range, Range], ours: number): Figure =>
  ours >= programs[0] && ours <= programs[1] ? inside(what, programs, ours) : inside(what, limits, ours);

function caseFigures({ case: id }: { readonly case: string }, wanted: (typeof thermalCases)['rows'][number]['expect'], method: Method): Figure[] {
  const year = run(id, method);
  const [cooling, heating] = [year.cooling_kWh / 1000, year.heating_kWh / 1000];
  return [
    accepted('cooling, MWh, acceptance', [wanted.cooling_MWh, wanted.coolingAcceptance_MWh], cooling),
    accepted('heating, MWh, acceptance', [wanted.heating_MWh, wanted.heatingAcceptance_MWh], heating),
    inside('cooling, MWh, programs’ range', wanted.cooling_MWh, cooling),
    inside('heating, MWh, programs’ range', wanted.heating_MWh, heating),
    inside('peak cooling, kW, programs’ range', wanted.peakCooling_kW, year.peakCooling_W / 1000),
    inside('peak heating, kW, programs’ range', wanted.peakHeating_kW, year.peakHeating_W / 1000),
  ];
}

function stepFigures({ case: to, from }: { readonly case: string; readonly from: string }, wanted: (typeof stepCases)['rows'][number]['expect'], method: Method): Figure[] {
  const [after, before] = [run(to, method), run(from, method)];
  const cooling = inside('cooling, MWh', wanted.cooling_MWh, (after.cooling_kWh - before.cooling_kWh) / 1000);
  return wanted.heating_MWh ? [cooling, inside('heating, MWh', wanted.heating_MWh, (after.heating_kWh - before.heating_kWh) / 1000)] : [cooling];
}

function freeFigures({ case: id }: { readonly case: string }, wanted: (typeof freeFloatCases)['rows'][number]['expect'], method: Method): Figure[] {
  const { freeFloat } = run(id, method);
  return (['max_degC', 'min_degC', 'mean_degC'] as const).map((what) => inside(what, wanted[what], freeFloat[what]));
}

const isHere = hourlyFilesAreHere;
const both = (method: Method): readonly Check[] => {
  const told = ({ case: id }: { readonly case: string }): string => `case ${id}`;
  // Those of a table, by its rows.
  const more = (rows: readonly { readonly place: string }[]): Pick<CheckOf<unknown, unknown>, 'isHere' | 'isWhole' | 'isReport' | 'misses'> => {
    const misses = Object.fromEntries(Object.entries(known).filter(([key]) => rows.some(({ place }) => key.startsWith(`${place}: `))));
    return method === 'as in the program' ? { isHere, isWhole: true, misses } : { isHere, isWhole: true, isReport: true };
  };
  return [
    check({ title: `Standard 140, cases with plant, ${method}`, table: thermalCases, told, ...more(thermalCases.rows), compare: ({ given, expect: wanted }) => caseFigures(given, wanted, method) }),
    check({ title: `Standard 140, steps between cases, ${method}`, table: stepCases, ...more(stepCases.rows), compare: ({ given, expect: wanted }) => stepFigures(given, wanted, method) }),
    check({ title: `Standard 140, cases without plant, ${method}`, table: freeFloatCases, told, ...more(freeFloatCases.rows), compare: ({ given, expect: wanted }) => freeFigures(given, wanted, method) }),
  ];
};

export const standard140Suite: readonly Check[] = [
  ...both('as in the program'),
  ...both('before the repair'),
  check({
    title: 'Standard 140, sun on the faces',
    table: incidentSun,
    isHere,
    compare: ({ given, expect: { total_kWh_m2: programs } }) => {
      const sky = house().sky(given.azimuth_deg, given.tilt_deg);
      const total = [sky.beam_W_m2, sky.sky_W_m2, sky.ground_W_m2].reduce((sum, part) => sum + part.reduce((a, b) => a + b, 0), 0) / 1000;
      return [{ what: 'kWh/m² a year', expected: programs, ours: total, limit: 0.5 + 0.001 * programs[1] }];
    },
  }),
  check({
    title: 'Standard 140, sun through the windows',
    table: transmittedSun,
    isHere,
    compare: ({ given, expect: { total_kWh_m2: programs } }) => [{ what: 'kWh/m² of glass a year', expected: programs, ours: house().transmitted_kWh_m2(given.case, given.azimuth_deg) }],
  }),
];
