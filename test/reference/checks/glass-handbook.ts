import { glazingOptics, labelledGlazing, paneByAngle, simpleSolarHeatGainAt, type GlazingOptics } from '#calc';
import { openCatalogue } from '#catalogue';
import { coatedDoubles, doublePanes, handbookAngles_deg, handbookGains, handbookLabels, singlePanes, usualU_W_m2K, type HandbookGlass, type HandbookOptics } from '../glazing-handbook.js';
import { check, type Check, type Figure, type KnownMiss } from './check.js';
import { plainPane } from './glass-sheets.js';

const { glazing } = openCatalogue();

/** The built-in type of a handbook row, taken at the row's own rounded figures where it is uncoated. */
export const typeOfRow = (id: string): ReturnType<typeof glazing.find> => glazing.list().find((row) => row.handbookRow === id) ?? null;
const opticsOfRow = (id: string): GlazingOptics => {
  const type = typeOfRow(id);
  if (type === null) throw new Error(`no built-in type for handbook row ${id}`);
  return glazingOptics(type.makeUp);
};

const COLUMNS = [...handbookAngles_deg.map((angle) => `${angle}°`), 'half-space'];
const columns = (what: string, theirs: readonly number[], ours: readonly number[]): Figure[] =>
  theirs.map((expected, i) => ({ what: `${what} ${COLUMNS[i] ?? ''}`, expected, ours: ours[i] ?? null }));

function doubleFigures({ id }: HandbookGlass, theirs: HandbookOptics): Figure[] {
  const optics = opticsOfRow(id);
  const at = [...handbookAngles_deg.map(optics.at), optics.hemispherical];
  return [
    ...columns('T', theirs.solarTransmittance, at.map((column) => column.solarTransmittance)),
    ...columns('R', theirs.frontReflectance, at.map((column) => column.frontReflectance)),
    ...theirs.layerAbsorptance.flatMap((row, k) => columns(`A${k + 1}`, row, at.map((column) => column.layerAbsorptance[k] ?? NaN))),
  ];
}

const made = new Map<string, GlazingOptics>();
/** The make-up taken for a row known by its label alone; found by search, so once. */
export function opticsOfLabel({ id, family }: HandbookGlass, solarHeatGain: number): GlazingOptics {
  const optics = made.get(id) ?? glazingOptics(labelledGlazing({ solarHeatGain, uFactor_W_m2K: usualU_W_m2K(family) }));
  made.set(id, optics);
  return optics;
}

const gains = (optics: GlazingOptics): number[] => [...handbookAngles_deg.map(optics.solarHeatGainAt), optics.hemisphericalSolarHeatGain];
const told = ({ id, glass }: HandbookGlass): string => `${id}: ${glass}`;
const recalled = 'a recalled row; the same formulas worked apart from this code miss these rows too, by 0.013 (3 mm) and 0.022 (6 mm) at the worst';
const greens: Readonly<Record<string, KnownMiss>> = {
  'row 1e; FROM MEMORY: R 80°': { why: recalled, most: 0.0135 },
  ...Object.fromEntries([50, 60, 70, 80].map((angle) => [`row 1f; FROM MEMORY: T ${angle}°`, { why: recalled, most: 0.0226 }])),
};

export const glassHandbook: readonly Check[] = [
  check({
    title: 'Handbook, single panes by angle',
    table: singlePanes,
    told,
    compare: ({ expect: theirs }) => {
      const pane = paneByAngle(plainPane(theirs.solarTransmittance[0], theirs.frontReflectance[0]));
      const at = handbookAngles_deg.map((angle) => pane(angle));
      return [
        ...columns('T', theirs.solarTransmittance.slice(0, 6), at.map((column) => column.solarTransmittance)),
        ...columns('R', theirs.frontReflectance.slice(0, 6), at.map((column) => column.frontReflectance)),
      ];
    },
    misses: greens,
  }),
  check({ title: 'Handbook, uncoated doubles by angle', table: doublePanes, told, compare: ({ given, expect: theirs }) => doubleFigures(given, theirs) }),
  check({ title: 'Handbook, coated doubles by angle', table: coatedDoubles, told, isReport: true, compare: ({ given, expect: theirs }) => doubleFigures(given, theirs) }),
  check({
    title: 'Handbook, solar heat gain of the built-in types',
    table: { ...handbookGains, rows: handbookGains.rows.filter(({ given }) => typeOfRow(given.id) !== null) },
    told,
    compare: ({ given, expect: theirs }) => columns('SHGC', theirs.solarHeatGain, gains(opticsOfRow(given.id))),
  }),
  check({
    title: 'Handbook, rows as if known by their label alone: the published simple form',
    table: handbookLabels,
    told,
    isReport: true,
    compare: ({ given, expect: theirs }) =>
      columns('SHGC', theirs.solarHeatGain.slice(0, 6), handbookAngles_deg.map((angle) => simpleSolarHeatGainAt(theirs.solarHeatGain[0], usualU_W_m2K(given.family), angle))),
  }),
  check({
    title: 'Handbook, rows as if known by their label alone: the make-up we take for it',
    table: handbookLabels,
    told,
    isReport: true,
    compare: ({ given, expect: theirs }) =>
      columns('SHGC', theirs.solarHeatGain, gains(opticsOfLabel(given, theirs.solarHeatGain[0]))),
  }),
];
