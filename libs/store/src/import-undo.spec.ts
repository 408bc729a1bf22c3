import type { SiteRecord } from '#calc';
import { freshFile, type FreshDatabase } from '../../../test/portfolios/databases.js';
import { twoDwellings } from '../../../test/portfolios/two-dwellings.js';
import { type FileTakenIn, openStore, type PortfolioStore } from './index.js';

const record = (id: string, personMinutes: number, file = 'a.csv'): SiteRecord => ({
  id, day: '2026-08-04', kind: 'minutes', dwelling: null, window: null, pane: null, film: null, width: null, height: null, personMinutes, rollWidth_mm: null, rollLength_mm: null, defect: null, note: null, inventoryRow: { file, row: 2 },
});
const taken = (id: string, file = 'a.csv'): FileTakenIn => ({ id, file, sha256: id, at: '2026-08-04T10:00:00Z', encoding: null, rowsRead: 1, created: 1, updated: 0, unchanged: 0, rejected: 0 });

describe('an import of site records undone', () => {
  let fresh: FreshDatabase;
  let store: PortfolioStore;
  beforeEach(async () => {
    fresh = await freshFile();
    store = await openStore({ database: fresh.database });
    await store.write({ ...twoDwellings, siteRecords: [] });
  });
  afterEach(async () => {
    await store.close();
    await fresh.drop();
  });
  const minutes = async () => Object.fromEntries((await store.load()).siteRecords.map((r) => [r.id, r.personMinutes]));

  it('removes what it created and restores what it changed', async () => {
    await store.write({ siteRecords: [record('r1', 100)] }, [taken('first')]);
    await store.write({ siteRecords: [record('r1', 120), record('r2', 50)] }, [taken('second')]);
    expect(await store.undoImport('second')).toEqual({ removed: 1, restored: 1, keptAsChanged: 0 });
    expect(await minutes()).toEqual({ r1: 100 });
  });

  it('leaves what was changed again since, and says so', async () => {
    await store.write({ siteRecords: [record('r1', 100)] }, [taken('first')]);
    await store.write({ siteRecords: [record('r1', 120)] }, [taken('second')]);
    expect(await store.undoImport('first')).toEqual({ removed: 0, restored: 0, keptAsChanged: 1 });
    expect(await minutes()).toEqual({ r1: 120 });
  });

  it('touches the records of its own file alone', async () => {
    await store.write({ siteRecords: [record('r1', 100), record('r2', 50, 'b.csv')] }, [taken('a'), taken('b', 'b.csv')]);
    await store.undoImport('b');
    expect(await minutes()).toEqual({ r1: 100 });
  });

  it('can be done once, and only of an import there is', async () => {
    await store.write({ siteRecords: [record('r1', 100)] }, [taken('first')]);
    await store.undoImport('first');
    await expect(store.undoImport('first')).rejects.toThrow('undone already');
    await expect(store.undoImport('none')).rejects.toThrow('There is no import none');
  });
});

describe('a signed plan', () => {
  it('is signed once and keeps its content', async () => {
    const store = await openStore({ database: ':memory:' });
    await store.savePlan({ id: 'p', title: 't', parent: null, made: '2026-07-01T00:00:00Z', programVersion: '1', inputsHash: 'x', signed: false, body: { a: 1 } });
    await store.signPlan('p');
    expect(await store.loadPlan('p')).toMatchObject({ signed: true, body: { a: 1 } });
    await expect(store.signPlan('p')).rejects.toThrow('signed already');
    await expect(store.signPlan('q')).rejects.toThrow('no plan q');
    await store.close();
  });
});
