import { readFileSync } from 'node:fs';
import { openStore } from '#store';
import { fileOfBytes, fileOfText } from './files/inventory-file.js';
import { IntakeService } from './intake.service.js';

const folder = 'test/inventories/ok/two-buildings';

describe('taking an inventory in', () => {
  it('a dry run says what would be created and changes nothing', async () => {
    const store = await openStore({ database: ':memory:' });
    const report = await new IntakeService(store).check(folder);
    expect(report.changes.find(({ list }) => list === 'windows')?.created).toHaveLength(12);
    expect(report).toMatchObject({ rejected: 0, updated: 0, written: false });
    expect(await store.find()).toBeNull();
    await store.close();
  });

  it('the same files twice change nothing', async () => {
    const store = await openStore({ database: ':memory:' });
    const intake = new IntakeService(store);
    const first = await intake.import(folder, '2026-07-01T08:00:00Z');
    const { portfolioRevision } = await store.contents();
    const second = await intake.import(folder, '2026-08-01T08:00:00Z');
    expect(second).toMatchObject({ created: 0, updated: 0, unchanged: first.created, written: false });
    expect((await store.contents()).portfolioRevision).toBe(portfolioRevision);
    await store.close();
  });

  it('one changed cell is one field of one record', async () => {
    const store = await openStore({ database: ':memory:' });
    const intake = new IntakeService(store);
    await intake.import(folder);
    const { changes, unchanged } = await intake.check([fileOfText('windows.csv', 'building,dwelling,mark,room,facade,width_in,height_in,glazing,existing_film\nQA,101,W01,living room,W,46 1/8,46,single clear 1/8 in,none\n')]);
    const windows = changes.find(({ list }) => list === 'windows');
    expect(windows?.updated).toEqual([{ id: 'QA/101/W01', fields: [
      { field: 'width.entered', before: '"46"', after: '"46 1/8"' },
      { field: 'width.mm', before: '1168.4', after: '1171.575' },
    ] }]);
    expect(windows?.missing).toHaveLength(11);
    expect(unchanged).toBe(1);
    await store.close();
  });

  it('a later survey without marks keeps the marks there are, and proposes where it is not sure', async () => {
    const store = await openStore({ database: ':memory:' });
    const intake = new IntakeService(store);
    await intake.import(folder);
    const header = 'building,dwelling,mark,room,facade,width_in,height_in,glazing,existing_film';
    const again = await intake.check([fileOfText('windows.csv', [header,
      'QA,102,,bedroom,S,46 1/2,46,single clear 1/8 in,none', // half an inch wider: the same window?
      'QA,101,,bedroom,N,46,46,single clear 1/8 in,none', // the one window there, same size
      'QA,101,,hall,N,20,20,single clear 1/8 in,none', // new
    ].join('\n'))]);
    const windows = again.changes.find(({ list }) => list === 'windows');
    expect(again.findings.filter(({ code }) => code === 'window-match-proposed')).toMatchObject([{ row: 2, severity: 'error' }]);
    expect(windows).toMatchObject({ created: ['QA/101/hall-N-20x20-1'], updated: [], unchanged: 1 });
    expect(again.rejected).toBe(1);
    await store.close();
  });

  it('bad rows stay out, good rows of the same file are written', async () => {
    const store = await openStore({ database: ':memory:' });
    const report = await new IntakeService(store).import('test/inventories/not-ok/D11-sizes');
    expect(report).toMatchObject({ rejected: 4, written: true });
    expect((await store.load()).windows).toHaveLength(2);
    expect(await store.imports()).toEqual(expect.arrayContaining([expect.objectContaining({ file: 'windows.csv', rowsRead: 6, created: 2, rejected: 4 })]));
    await store.close();
  });

  it('the Example Portfolio comes back from the store as it was read', async () => {
    const store = await openStore({ database: ':memory:' });
    const intake = new IntakeService(store);
    await intake.import('data/demo');
    expect(await intake.check('data/demo')).toMatchObject({ created: 0, updated: 0, rejected: 0 });
    await store.close();
  });

  it.each(['windows.csv', 'buildings.csv', 'dwellings.csv'])('%s sent again alone writes over neither floor plans nor names of owners', async (name) => {
    const store = await openStore({ database: ':memory:' });
    const intake = new IntakeService(store);
    await intake.import('data/demo');
    const before = await store.load();
    const report = await intake.import([fileOfBytes(name, readFileSync(`data/demo/${name}`))]);
    expect(report).toMatchObject({ created: 0, updated: 0 });
    const { planTypes, ownerEntities } = await store.load();
    expect({ planTypes, ownerEntities }).toEqual({ planTypes: before.planTypes, ownerEntities: before.ownerEntities });
    await store.close();
  });

  it('what was found in a file is kept with it, until the file is sent again', async () => {
    const store = await openStore({ database: ':memory:' });
    const intake = new IntakeService(store);
    await intake.import(folder, '2026-07-01T08:00:00Z');
    const before = await store.findings();
    const header = 'building,dwelling,mark,room,facade,width_in,height_in,glazing,existing_film\n';
    await intake.import([fileOfText('windows.csv', `${header}QA,101,W01,living room,W,46 1/8,46,single clear 1/8 in,none\nQA,101,W77,hall,W,nonsense,46,single clear 1/8 in,none\n`)], '2026-08-01T08:00:00Z');
    expect((await store.findings()).filter((f) => f.severity === 'error')).toMatchObject([{ file: 'windows.csv', row: 3, column: 'width_in', value: 'nonsense', times: 1 }]);
    await intake.import([fileOfText('windows.csv', `${header}QA,101,W01,living room,W,46 1/4,46,single clear 1/8 in,none\n`)], '2026-09-01T08:00:00Z');
    const after = await store.findings();
    expect(after.filter((f) => f.severity === 'error')).toEqual([]);
    const ofOthers = (all: typeof after) => all.filter((f) => f.file !== 'windows.csv');
    expect(ofOthers(after)).toEqual(expect.arrayContaining(ofOthers(before).filter((f) => ['buildings.csv', 'dwellings.csv'].includes(f.file))));
    await store.close();
  });
});
