import type { ReferenceTable } from './reference-table.js';
import { readValues } from './read-values.js';

type Angles = readonly [number, number, number, number, number, number, number];
type Row = readonly [string, string, string, Angles, Angles | null, Angles | null, readonly Angles[] | null, string | null];

const values = readValues<Row>('glazing-handbook.json');

export interface HandbookGlass {
  readonly id: string;
  readonly family: string;
  readonly glass: string;
}
export interface HandbookOptics {
  /** By angle 0, 40, 50, 60, 70, 80, then light from the half-space. */
  readonly solarTransmittance: Angles;
  readonly frontReflectance: Angles;
  readonly layerAbsorptance: readonly Angles[];
}
export interface HandbookGain {
  readonly solarHeatGain: Angles;
}

/** Angles of the table's columns; the last column is the half-space. */
export const handbookAngles_deg = [0, 40, 50, 60, 70, 80] as const;

const glassOf = ([id, family, glass]: Row): HandbookGlass => ({ id, family, glass });

function opticsRows(wanted: (row: Row) => boolean): ReferenceTable<HandbookGlass, HandbookOptics>['rows'] {
  return values.rows.filter(wanted).flatMap((row) => {
    const [id, , , , solarTransmittance, frontReflectance, layerAbsorptance, status] = row;
    if (solarTransmittance === null || frontReflectance === null || layerAbsorptance === null) return [];
    return [{ given: glassOf(row), expect: { solarTransmittance, frontReflectance, layerAbsorptance }, place: `row ${id}; ${status ?? ''}` }];
  });
}

const source = `${values.source}. ${values.how}`;
const rounded = 'figures are printed to 0.01 and the normal figures they start from likewise';

/** Single uncoated panes that carry their optics. */
export const singlePanes: ReferenceTable<HandbookGlass, HandbookOptics> = {
  of: 'calc/glass/pane-at-angle',
  source,
  seen: 'from memory',
  tolerance: { abs: 0.012, why: `${rounded}; 3 mm and 6 mm green are recalled rows that no route meets closer than 0.014 and 0.023` },
  rows: opticsRows(([, family]) => family === 'single uncoated'),
};

/** Uncoated doubles that carry their optics. */
export const doublePanes: ReferenceTable<HandbookGlass, HandbookOptics> = {
  of: 'calc/glass/glazing-optics',
  source,
  seen: 'from memory',
  tolerance: { abs: 0.015, why: `${rounded}; panes are combined as averages of both polarisations, the table stands between that and combining each apart` },
  rows: opticsRows(([, family]) => family === 'double uncoated'),
};

/** Coated doubles: the coated pane itself was taken out of the row, so this is a report. */
export const coatedDoubles: ReferenceTable<HandbookGlass, HandbookOptics> = {
  of: 'calc/glass/glazing-optics',
  source,
  seen: 'from memory',
  tolerance: { why: 'reported, no pass line: recalled with low confidence, and the coated pane at normal incidence was taken out of the same row' },
  rows: opticsRows(([, family]) => family.startsWith('double low-e')),
};

/** Every row's solar heat gain by angle. */
export const handbookGains: ReferenceTable<HandbookGlass, HandbookGain> = {
  of: 'calc/glass/glazing-optics',
  source,
  seen: 'in the source',
  tolerance: { abs: 0.0145, why: `${rounded}; fixed surface coefficients: on tinted glass the table's hotter pane sheds more outdoors, worth up to 0.013` },
  rows: values.rows.map((row) => ({ given: glassOf(row), expect: { solarHeatGain: row[3] }, place: `row ${row[0]}` })),
};

/** U of a family where the row states none, W/m²K: usual figures of single, double, coated double and triple glass. */
export const usualU_W_m2K = (family: string): number => (family.startsWith('single') ? 5.9 : family.startsWith('triple') ? 1.6 : family.includes('low-e') ? 1.9 : 2.8);

/** Every row taken as if known by a label, by its solar heat gain and a usual U; 43 of the 56 carry no optics of layers. */
export const handbookLabels: ReferenceTable<HandbookGlass, HandbookGain> = {
  of: 'calc/glass/labelled-glazing',
  source,
  seen: 'in the source',
  tolerance: { why: 'reported, no pass line: solar heat gain at normal incidence and a usual U of the family are all that goes in, and they do not settle the optics' },
  rows: handbookGains.rows.map((row) => ({ ...row, place: `${row.place}${values.rows.some(([id, , , , optics]) => id === row.given.id && optics === null) ? ', heat gain alone' : ''}` })),
};
