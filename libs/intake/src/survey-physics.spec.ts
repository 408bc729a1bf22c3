import type { InventoryFile } from './files/inventory-file.js';
import { Readable } from 'node:stream';
import { momentCell } from './cells/date-cell.js';
import { hoursCell } from './cells/hours-cell.js';
import type { CellContext } from './cells/reading.js';
import { readInventory } from './read-inventory.js';

const context: CellContext = { unit: '', decimal: '.', dateOrder: null, glazingWords: { keyOf: () => null, examples: [] }, facadeWords: {} };
const file = (name: string, lines: readonly string[]): InventoryFile => ({ name, open: () => Readable.from([Buffer.from(lines.join('\n'))]) });
const house = (buildings: readonly string[], others: readonly InventoryFile[] = []) =>
  readInventory([
    file('buildings.csv', buildings),
    file('dwellings.csv', ['building,dwelling,floor_area_m2,cooling_set_point_degC,cooling_set_point_away_degC,away_hours,duct_efficiency', 'QA,1,60,24,29,8-17,0.8']),
    file('windows.csv', ['building,dwelling,mark,facade,width_mm,height_mm,glazing,insect_screen_share,screen_kind', 'QA,1,W1,W,900,1200,single clear 1/8 in,1,solar']),
    ...others,
  ]);

describe('what a survey says of heat and sun', () => {
  it.each([['8-17', [8, 9, 10, 11, 12, 13, 14, 15, 16]], ['22-6', [0, 1, 2, 3, 4, 5, 22, 23]], ['8-9;13-14', [8, 13]]])('the hours "%s" of a day are %j', (text, hours) =>
    expect(hoursCell(text, context).value).toEqual(hours));

  it.each(['8', '25-3', 'morning', '9-9'])('"%s" are no hours', (text) => expect(hoursCell(text, context).remark?.code).toBe('not-hours'));

  it.each([['2026-05-12 15:10', '2026-05-12T15:10'], ['2026-05-12T09:05:00', '2026-05-12T09:05'], ['2026-05-12 3:10 pm', '2026-05-12T15:10'], ['2026-05-12', '2026-05-12']])('the moment "%s" is %s', (text, moment) =>
    expect(momentCell(text, context).value).toBe(moment));

  it('reaches the records: compass, air, panes, set points by hour, ducts, screens', async () => {
    const { records } = await house(['building,compass_declination_deg,airtightness,pane_replacement', 'QA,-6.5,drafty,280']);
    expect(records.buildings).toMatchObject([{ declination_deg: -6.5, airtightness: 'leaky', paneReplacement_cents: 28_000 }]);
    expect(records.dwellings).toMatchObject([{ setbacks: { cooling: { setPoint_degC: 29, hours: [8, 9, 10, 11, 12, 13, 14, 15, 16] }, heating: null }, plant: { ductEfficiency: 0.8 } }]);
    expect(records.windows).toMatchObject([{ screenKind: 'solar' }]);
  });

  it('keeps a tree that lets more sun by when it is bare', async () => {
    const { records } = await house(['building', 'QA'], [file('horizons.csv', ['building,facade,azimuth_deg,altitude_deg,passes,passes_bare', 'QA,W,270,35,0.2,0.65'])]);
    expect(records.buildings[0]?.horizons).toEqual([{ azimuth_deg: 270, points: [{ azimuth_deg: 270, altitude_deg: 35, passes: 0.2, passesBare: 0.65 }] }]);
  });

  it('takes repeats of one reading as several, and the same row twice as one', async () => {
    const rows = ['building,facade,glazing,bare_W_m2,filmed_W_m2,film,taken', 'QA,W,single clear 1/8 in,600,210,B,2026-05-12', 'QA,W,single clear 1/8 in,610,215,B,2026-05-12', 'QA,W,single clear 1/8 in,600,210,B,2026-05-12'];
    const films = file('films.csv', ['film,solar_transmittance,solar_reflectance_outside,solar_reflectance_inside', 'B,0.24,0.38,0.36']);
    const { records, findings } = await house(['building', 'QA'], [file('readings.csv', rows), films]);
    expect(records.readings.map((r) => [r.bare_W_m2, r.repeat])).toEqual([[600, 1], [610, 2]]);
    expect(findings.filter((f) => f.file === 'readings.csv' && f.severity !== 'note').map((f) => f.code)).toEqual(['exact-duplicate']);
  });
});
