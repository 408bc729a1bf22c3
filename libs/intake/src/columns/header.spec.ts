import { words } from '../cells/cell-text.js';
import { FLAT_LISTS, LISTS, TABLES } from '../gathered.js';
import { canonicalHeader, type Columns } from './column.js';
import { columnOf, matchHeader } from './header.js';

/** Columns that answer to a header, by table or tables side by side. */
const answering = (columns: Columns, header: string): string[] => Object.entries(columns).filter(([key, column]) => columnOf({ [key]: column }, header) !== null).map(([key]) => key);
const headersOf = (columns: Columns): string[] => Object.values(columns).flatMap((column) => [canonicalHeader(column), ...column.also]);

describe('matching headers', () => {
  it.each(LISTS)('no header of %s means two columns', (list) => {
    const { columns } = TABLES[list];
    for (const header of headersOf(columns)) expect([header, answering(columns, header)]).toEqual([header, [expect.any(String)]]);
  });

  it('no header of a flat inventory means two different things', () => {
    for (const header of FLAT_LISTS.flatMap((list) => headersOf(TABLES[list].columns))) {
      const names = FLAT_LISTS.flatMap((list) => answering(TABLES[list].columns, header).map((key) => TABLES[list].columns[key]?.name));
      expect([header, new Set(names).size]).toEqual([header, 1]);
    }
  });

  it.each([
    ['Wdth (in)', 'width', 'in'], ['WIDTH_MM', 'width', 'mm'], ['Glass width [cm]', 'width', 'cm'], ['Height', 'height', 'in'], ['Elev.', 'facade', ''], [' Apt # ', 'dwelling', ''],
    ['SHGC?', 'labelSolarHeatGain', ''], ['U-factor (W/m²K)', 'labelUFactor_W_m2K', 'W_m2K'], ['Overhang depth in', 'overhangDepth_m', 'in'],
  ])('"%s" is %s in "%s"', (header, key, unit) => expect(columnOf(TABLES.windows.columns, header)).toMatchObject({ key, unit }));

  it.each(['Window width above sill', 'height of tree', 'in', 'Blind colour', 'glassy'])('"%s" is not ours: only whole names count', (header) => expect(columnOf(TABLES.windows.columns, header)).toBeNull());

  it('every canonical header comes back as its own column with its own unit', () => {
    for (const list of LISTS) {
      const headers = Object.values(TABLES[list].columns).map(canonicalHeader);
      const matched = matchHeader(TABLES[list].columns, headers);
      expect(matched.unknown).toEqual([]);
      expect(matched.columns.map(({ key }) => key)).toEqual(Object.keys(TABLES[list].columns));
      for (const { key, unit } of matched.columns) expect(unit).toBe(TABLES[list].columns[key]?.unit);
      expect(new Set(headers.map(words)).size).toBe(headers.length);
    }
  });
});
