import { freshFile, type FreshDatabase } from '../../../test/portfolios/databases.js';
import { connect, openStore } from './open-store.js';
import { contentHash, type PlanToKeep } from './plan-shelf.js';
import type { PortfolioStore } from './portfolio-store.js';

const plan: PlanToKeep = {
  id: 'P-1',
  title: 'First plan',
  parent: null,
  made: '2026-06-01T08:00:00Z',
  programVersion: '0.1.0',
  inputsHash: 'abc',
  signed: false,
  body: { lines: [{ dwelling: 'AA/001', option: 'west', phase: 0 }], value: 1234.5 },
};

describe('kept plans', () => {
  let place: FreshDatabase;
  let store: PortfolioStore;
  beforeEach(async () => {
    place = await freshFile();
    store = await openStore(place);
  });
  afterEach(async () => {
    await store.close();
    await place.drop();
  });

  it('come back as they were kept, with revision 1 and the hash of their body', async () => {
    await store.savePlan(plan);
    expect(await store.loadPlan('P-1')).toEqual({ ...plan, revision: 1, hash: contentHash(plan.body) });
    expect(await store.loadPlan('P-9')).toBeNull();
  });

  it('are never edited: the same again changes nothing, another body is refused', async () => {
    await store.savePlan(plan);
    await store.savePlan(plan);
    await expect(store.savePlan({ ...plan, body: { lines: [] } })).rejects.toThrow('Plan P-1 is kept and never edited');
    expect(await store.plans()).toHaveLength(1);
  });

  it('count revisions along their parents, and a parent must be there', async () => {
    await store.savePlan(plan);
    const second = await store.savePlan({ ...plan, id: 'P-2', parent: 'P-1', made: '2026-06-02T08:00:00Z', body: {} });
    expect(second.revision).toBe(2);
    await expect(store.savePlan({ ...plan, id: 'P-3', parent: 'P-0' })).rejects.toThrow('Plan P-0, which this plan names as its parent, is not kept.');
    expect((await store.plans()).map(({ id, revision }) => [id, revision])).toEqual([['P-2', 2], ['P-1', 1]]);
  });

  it('are refused when somebody changed them in the database', async () => {
    await store.savePlan(plan);
    const database = await connect(place);
    await database.query(`UPDATE plans SET body = '{"lines":[]}'`);
    await database.destroy();
    await expect(store.loadPlan('P-1')).rejects.toThrow('no longer fits its hash');
  });

  it('have one hash whatever the order of their fields', () => {
    expect(contentHash({ b: 1, a: [{ d: 2, c: 3 }] })).toBe(contentHash({ a: [{ c: 3, d: 2 }], b: 1 }));
    expect(contentHash({ a: [1, 2] })).not.toBe(contentHash({ a: [2, 1] }));
  });
});

describe('jobs and imports', () => {
  it('are kept as they are now and listed newest first', async () => {
    const store = await openStore({ database: ':memory:' });
    const job = { id: 'J1', kind: 'plan', state: 'waiting', input: null, progress: 0, stage: null, result: null, why: null, made: '2026-06-01T08:00:00Z', started: null, ended: null } as const;
    await store.saveJob(job);
    await store.saveJob({ ...job, state: 'done', progress: 1, result: { plan: 'P-1' } });
    await store.saveJob({ ...job, id: 'J2', made: '2026-06-02T08:00:00Z' });
    expect(await store.loadJob('J1')).toEqual({ ...job, state: 'done', progress: 1, result: { plan: 'P-1' } });
    expect((await store.jobs()).map(({ id }) => id)).toEqual(['J2', 'J1']);

    const file = { id: 'I1', file: 'windows.csv', sha256: 'ff', at: '2026-06-01T08:00:00Z', encoding: 'utf-8', rowsRead: 3, created: 2, updated: 0, unchanged: 0, rejected: 1 };
    await store.write({}, [file]);
    expect(await store.imports()).toEqual([file]);
    await store.close();
  });
});
