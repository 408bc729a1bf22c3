import { readdirSync, readFileSync } from 'node:fs';
import { Readable } from 'node:stream';
import fc from 'fast-check';
import { fileOfText, type InventoryFile } from './files/inventory-file.js';
import { readInventory, type Intake } from './read-inventory.js';

const FOLDER = 'test/inventories/ok/two-buildings';
const NAMES = readdirSync(FOLDER);
const textOf = (name: string): string => readFileSync(`${FOLDER}/${name}`, 'utf8');
const filesWith = (over: Readonly<Record<string, string>>): InventoryFile[] => NAMES.map((name) => fileOfText(name, over[name] ?? textOf(name)));

/** Records without the lines they came from. */
const content = (intake: Intake): string => JSON.stringify(intake.records, (name, value: unknown) => (name === 'inventoryRow' ? undefined : value));
const shuffled = (text: string, order: readonly number[]): string => {
  const [header = '', ...rows] = text.trimEnd().split('\n');
  const keyed = rows.map((row, i) => ({ row, key: order[i % order.length] ?? 0, i }));
  return [header, ...keyed.sort((a, b) => a.key - b.key || a.i - b.i).map(({ row }) => row)].join('\n');
};
const withoutMarks = (text: string): string => text.replace(/^([^,]*,[^,]*),W\d\d,/gm, '$1,,');

const FLAT = `Building,Unit,Floor area (sq ft),Cooling system,Room,Elevation,Width (in),Height (in),Glass type
QA,101,740,split,living room,W,46,46,single clear
QA,101,,,bedroom,N,35 1/2,47 3/8,single clear
QA,102,740,split,living room,E,46,46,single clear
QB,1,620,window unit,living room,SW,58,34,single clear
`;

describe('reading an inventory', () => {
  it('the order of the rows changes no record, with marks and without', async () => {
    for (const windows of [textOf('windows.csv'), withoutMarks(textOf('windows.csv'))]) {
      const first = content(await readInventory(filesWith({ 'windows.csv': windows })));
      await fc.assert(fc.asyncProperty(fc.array(fc.integer(), { minLength: 12, maxLength: 12 }), async (order) => {
        const files = filesWith({ 'windows.csv': shuffled(windows, order), 'dwellings.csv': shuffled(textOf('dwellings.csv'), order), 'meters.csv': shuffled(textOf('meters.csv'), order) });
        expect(content(await readInventory(files))).toBe(first);
      }), { numRuns: 10 });
    }
  });

  it('a mark made of room, side and size stays when a window is added elsewhere in the dwelling', async () => {
    const windows = withoutMarks(textOf('windows.csv'));
    const marks = async (text: string): Promise<string[]> => (await readInventory(filesWith({ 'windows.csv': text }))).records.windows.map(({ id }) => id);
    const before = await marks(windows);
    const after = await marks(windows.replace('\n', '\nQA,101,,hall,W,20,20,single clear,,,none\n'));
    expect(after).toEqual(expect.arrayContaining(before));
    expect(before).toContain('QA/101/living-room-W-46x46-1');
    expect(after).toHaveLength(13);
  });

  it('a flat inventory gives the same kind of records as three tables', async () => {
    const { records, findings } = await readInventory([fileOfText('survey of june.csv', FLAT)]);
    expect(records.buildings.map(({ id }) => id)).toEqual(['QA', 'QB']);
    expect(records.dwellings.map(({ id, floorArea_m2, plant }) => [id, Math.round(floorArea_m2 ?? 0), plant.kind])).toEqual([['QA/101', 69, 'single-speed'], ['QA/102', 69, 'single-speed'], ['QB/1', 58, 'room-unit']]);
    expect(records.windows).toHaveLength(4);
    expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });

  it('a flat inventory that says two things of one dwelling takes the first and says so', async () => {
    const { records, findings } = await readInventory([fileOfText('flat.csv', FLAT.replace('QA,101,,,', 'QA,101,900,,'))]);
    expect(findings.filter(({ severity }) => severity !== 'note')).toMatchObject([{ row: 3, code: 'flat-conflict', column: 'floorArea_m2' }]);
    expect(Math.round(records.dwellings[0]?.floorArea_m2 ?? 0)).toBe(69);
  });

  it('a blank cell is not known: neither zero nor a default', async () => {
    const { records } = await readInventory([fileOfText('buildings.csv', 'building\nQA\n'), fileOfText('dwellings.csv', 'building,dwelling,storey\nQA,1,\n'), fileOfText('windows.csv', 'building,dwelling,width_in,height_in\nQA,1,46,46\n')]);
    expect(records.dwellings[0]).toMatchObject({ storey: null, floorArea_m2: null, heating: { kind: null }, plant: { efficiency: null }, cooledRooms: null });
    expect(records.windows[0]).toMatchObject({ azimuth_deg: null, glazing: null, shade: null, liteRows: null, existingFilm: null });
    expect(records.settings).toBeNull();
  });

  it('a reject file holds the rows not taken, with reasons, and reads back once corrected', async () => {
    const bad = textOf('windows.csv').replace('35 1/2', 'approx 36').replace('bedroom,S,46', 'bedroom,S,0');
    const { rejects, records } = await readInventory(filesWith({ 'windows.csv': bad }));
    const [reject] = rejects;
    expect(records.windows).toHaveLength(10);
    expect(reject).toMatchObject({ name: 'windows.rejected.csv', rows: 2 });
    expect(reject?.text).toContain('reject_line,reject_reason');
    const corrected = (reject?.text ?? '').replace('approx 36', '35 1/2').replace('bedroom,S,0', 'bedroom,S,46');
    const again = await readInventory([...filesWith({}).filter(({ name }) => name !== 'windows.csv'), fileOfText('windows.rejected.csv', corrected)]);
    expect(again.records.windows.map(({ id }) => id)).toEqual(['QA/101/W02', 'QA/102/W02']);
    expect(again.findings.filter(({ code }) => code === 'column-unknown')).toEqual([]);
  });

  it('text that a spreadsheet would run is guarded in a reject file; a negative number stays a number', async () => {
    const { rejects } = await readInventory('test/inventories/not-ok/D26-formula-text');
    const cells = (rejects[0]?.text ?? '').split('\r\n')[1]?.split(',') ?? [];
    expect(cells).toContain("'@x");
    expect(cells).toContain('-3.5');
  });

  it('personal columns are in neither reject file nor kept cells', async () => {
    const { rejects, extras } = await readInventory('test/inventories/not-ok/D34-personal-data');
    expect(JSON.stringify([rejects, extras])).not.toMatch(/555|example\.invalid|phone|mail/i);
  });

  it('cells of unknown columns are kept with their row', async () => {
    const { extras } = await readInventory('test/inventories/not-ok/D08-extra-columns');
    expect(extras).toEqual([{ row: { file: 'windows.csv', row: 2 }, cells: { 'Blind colour': 'beige', 'Tenant mood': 'cheerful' } }]);
  });

  it('a quoted note with line breaks does not move the line numbers below it', async () => {
    const { findings } = await readInventory('test/inventories/not-ok/D26-formula-text');
    expect(findings.find(({ code }) => code === 'not-a-length')?.row).toBe(5);
  });

  it('the bytes decide the encoding', async () => {
    const { records } = await readInventory('test/inventories/not-ok/D01-encodings');
    expect(records.windows.map(({ room }) => room)).toEqual(['señora’s room', 'café']);
    expect(records.buildings[0]?.id).toBe('QA');
  });

  it('decimal commas and grouped thousands are read as such', async () => {
    const { records } = await readInventory('test/inventories/not-ok/D02-decimal-commas');
    expect(records.windows.map(({ width, height, labelSolarHeatGain }) => [width.mm, height.mm, labelSolarHeatGain])).toEqual([[902.5, 1203.3, 0.76].map((x, i) => (i === 1 ? Math.round(x * 320) / 320 : x)), [902.5, Math.round(1203.3 * 320) / 320, 0.76]]);
  });

  it('a file of 6,000 rows is read as a stream: pieces are let go before the end', async () => {
    const rows = 6000;
    let opened = 0;
    const long: InventoryFile = {
      name: 'windows.csv',
      open: () => {
        opened += 1;
        let i = -1;
        return new Readable({ highWaterMark: 4096, read() {
          i += 1;
          if (i > rows) this.push(null);
          else this.push(i === 0 ? 'building,dwelling,mark,room,facade,width_in,height_in,glazing\n' : `QA,101,X${i},living room,W,46,35 1/2,single clear\n`);
        } });
      },
    };
    const before = process.memoryUsage().heapUsed;
    const { records, findings } = await readInventory([...filesWith({}).filter(({ name }) => name !== 'windows.csv'), long]);
    expect(records.windows).toHaveLength(rows);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(opened).toBe(2);
    // A window record is about 1 kB; the text, the parser and the findings must not add a multiple of that.
    expect((process.memoryUsage().heapUsed - before) / rows).toBeLessThan(20_000);
  });
});
