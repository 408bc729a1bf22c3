import type { Building } from '#calc';
import { freshFile, freshPostgres, whyNoPostgres, type FreshDatabase } from '../../../test/portfolios/databases.js';
import { dwelling, twoDwellings } from '../../../test/portfolios/two-dwellings.js';
import { connect, openStore } from './open-store.js';
import type { PortfolioStore } from './portfolio-store.js';
import { StoreFault } from './store-fault.js';

const [example] = twoDwellings.buildings as [Building];

function whatEveryDatabaseMustDo(make: () => Promise<FreshDatabase>): void {
  let place: FreshDatabase;
  let store: PortfolioStore;
  beforeEach(async () => {
    place = await make();
    store = await openStore(place);
  });
  afterEach(async () => {
    await store.close();
    await place.drop();
  });

  it('gives back every field of every kind of record as it was written', async () => {
    await store.write(twoDwellings);
    expect(await store.load()).toEqual(twoDwellings);
  });

  it('counts the same portfolio the second time as unchanged and keeps its revision', async () => {
    const records = Object.values(twoDwellings).flat().length;
    expect(await store.write(twoDwellings)).toEqual({ created: records, updated: 0, unchanged: 0 });
    const before = await store.contents();
    expect(await store.write(twoDwellings)).toEqual({ created: 0, updated: 0, unchanged: records });
    expect((await store.contents()).portfolioRevision).toBe(before.portfolioRevision);
  });

  it('updates the record that differs and leaves the others and the unnamed alone', async () => {
    await store.write(twoDwellings);
    const older = { ...dwelling('AA/002', 3), occupants: 3 };
    expect(await store.write({ dwellings: [older, dwelling('AA/001', 2)] })).toEqual({ created: 0, updated: 1, unchanged: 1 });
    expect((await store.load()).dwellings.map((each) => each.occupants)).toEqual([2, 3]);
    expect((await store.load()).windows).toHaveLength(2);
  });

  it('sorts lists by id whatever the order they came in', async () => {
    await store.write({ ...twoDwellings, dwellings: [...twoDwellings.dwellings].reverse(), dwellingMeters: [...twoDwellings.dwellingMeters].reverse() });
    expect(await store.load()).toEqual(twoDwellings);
  });

  it('writes nothing of a change that names a building which is not there', async () => {
    await store.write(twoDwellings);
    const orphan = { ...dwelling('ZZ/001', 9), building: 'ZZ' };
    const write = store.write({ buildings: [{ ...example, id: 'BB' }], dwellings: [orphan] });
    await expect(write).rejects.toThrow('One of the dwellings names a building, dwelling, plan type or meter that is not there; nothing was written.');
    expect((await store.load()).buildings.map(({ id }) => id)).toEqual(['AA']);
  });

  it('names the rule that a value breaks', async () => {
    const write = store.write({ ...twoDwellings, buildings: [{ ...example, turnover_1_yr: 3 }] });
    await expect(write).rejects.toThrow('One of the buildings breaks the rule "buildings_turnover"');
  });

  it('loses nothing that was acknowledged when 50 write at once and every third rolls back', async () => {
    await store.write(twoDwellings);
    const writers = Array.from({ length: 50 }, async (_, i) => {
      const id = `W${String(i).padStart(2, '0')}`;
      const spoiled = i % 3 === 0;
      const of = spoiled ? 'nowhere' : id;
      await store.write({ buildings: [{ ...example, id }], dwellings: [{ ...dwelling(`${id}/001`, i), building: of }] });
      return id;
    });
    const ends = await Promise.allSettled(writers);
    const acknowledged = ends.flatMap((end) => (end.status === 'fulfilled' ? [end.value] : []));
    expect(acknowledged).toHaveLength(33);
    const { buildings, dwellings } = await store.load();
    expect(buildings.map(({ id }) => id).filter((id) => id !== 'AA')).toEqual(acknowledged);
    expect(dwellings.map((each) => each.building).filter((id) => id !== 'AA')).toEqual(acknowledged);
  });

  it('shows a reader nothing of a write that is rolled back in the end', async () => {
    await store.write(twoDwellings);
    const spoiled = store.write({ buildings: [{ ...example, id: 'BB' }], dwellings: [{ ...dwelling('ZZ/001', 9), building: 'ZZ' }] });
    const seen = store.load();
    await expect(spoiled).rejects.toThrow(StoreFault);
    expect((await seen).buildings).toHaveLength(1);
  });

  it('has tables that fit the entities, column for column, and a stray column would show', async () => {
    const database = await connect(place);
    const drift = async (): Promise<string[]> => (await database.driver.createSchemaBuilder().log()).upQueries.map(({ query }) => query);
    const before = await drift();
    await database.query('ALTER TABLE tariffs ADD COLUMN stray varchar');
    const after = await drift();
    await database.destroy();
    expect(before).toEqual([]);
    expect(after).not.toEqual([]);
  });

  it('can take its tables down again', async () => {
    const database = await connect(place);
    for (let left = database.migrations.length; left > 0; left -= 1) await database.undoLastMigration();
    const runner = database.createQueryRunner();
    expect(await runner.hasTable('buildings')).toBe(false);
    await runner.release();
    await database.destroy();
  });
}

describe('the store in a SQLite file', () => {
  whatEveryDatabaseMustDo(freshFile);
});

const noPostgres = whyNoPostgres();
if (noPostgres === null) {
  describe('the store on PostgreSQL', () => {
    whatEveryDatabaseMustDo(freshPostgres);
  });
} else {
  console.warn(`NOT RUN: the store on PostgreSQL, for there is no server (${noPostgres}). Set FILM_ROLLOUT_TEST_POSTGRES to the address of one.`);
}
