import { copyFileSync, existsSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { freshFile, type FreshDatabase } from '../../../test/portfolios/databases.js';
import { twoDwellings } from '../../../test/portfolios/two-dwellings.js';
import { OwnerEntityRow } from './kept/owner-entity.js';
import { connect, openStore } from './open-store.js';
import { StoreFault } from './store-fault.js';

let place: FreshDatabase;
beforeEach(async () => {
  place = await freshFile();
});
afterEach(() => place.drop());

const filled = async (): Promise<void> => {
  const store = await openStore(place);
  await store.write(twoDwellings);
  await store.close();
};
const onFile = async (statement: string): Promise<void> => {
  const database = await connect(place);
  await database.query(statement);
  await database.destroy();
};

describe('opening the store', () => {
  it('finds in a file what another run wrote', async () => {
    await filled();
    const store = await openStore(place);
    expect(await store.load()).toEqual(twoDwellings);
    const priced = { ...twoDwellings, settings: { ...twoDwellings.settings, endRemoval_cents_m2: 1_291.67 } };
    await store.write(priced);
    expect((await store.load()).settings.endRemoval_cents_m2).toBe(1_291.67);
    await store.close();
  });

  it('says that nothing was imported yet', async () => {
    const store = await openStore({ database: ':memory:' });
    expect(await store.find()).toBeNull();
    await expect(store.load()).rejects.toThrow('The database holds no portfolio yet; import one first.');
    await store.close();
  });

  it('refuses a database of a newer version in one sentence and leaves it as it is', async () => {
    await filled();
    await onFile("INSERT INTO migrations (timestamp, name) VALUES (4102444800000, 'Future4102444800000')");
    await expect(openStore(place)).rejects.toThrow(/^The database .*rollout\.sqlite was written by a newer version of film-rollout \(it has "Future4102444800000"\); use that version or name another database\.$/);
    await onFile("DELETE FROM migrations WHERE name = 'Future4102444800000'");
    const store = await openStore(place);
    expect((await store.load()).dwellings).toHaveLength(2);
    await store.close();
  });

  it('copies the file before it brings an older one up to date', async () => {
    await filled();
    const database = await connect(place);
    const FIRST_THREE = 3; // up to the meters and films
    for (let left = database.migrations.length; left > FIRST_THREE; left -= 1) await database.undoLastMigration();
    await database.destroy();
    expect(readdirSync(dirname(place.database)).filter((name) => name.includes('before'))).toEqual([]);

    await (await openStore(place)).close();
    const copy = `${place.database}.before-update-of-MetersAndFilms1767225720000.sqlite`;
    expect(existsSync(copy)).toBe(true);
    copyFileSync(copy, place.database);
    const older = await connect(place);
    expect(await older.query('SELECT count(*) AS n FROM dwellings')).toEqual([{ n: 2 }]);
    expect(await older.query("SELECT count(*) AS n FROM sqlite_master WHERE name = 'locks'")).toEqual([{ n: 0 }]);
    await older.destroy();
  });

  it('says what is wrong with a file that is no database', async () => {
    writeFileSync(place.database, 'building_id,name\nEC,Example Court\n'.repeat(100));
    const opening = openStore(place);
    await expect(opening).rejects.toThrow(StoreFault);
    await expect(opening).rejects.toThrow(/could not be opened: .*not a database/);
  });

  it('leaves the tables of another program alone', async () => {
    await onFile('CREATE TABLE buildings (id INTEGER)');
    await expect(openStore(place)).rejects.toThrow('holds tables of another program');
  });
});

describe('why writes wait their turn', () => {
  it('is that transactions at once on the one SQLite connection refuse each other', async () => {
    await (await openStore(place)).close();
    const database = await connect(place);
    const ends = await Promise.allSettled(
      Array.from({ length: 20 }, (_, i) =>
        database.transaction(async (rows) => {
          await rows.insert(OwnerEntityRow, { id: `O${i}`, name: 'Owner', inventoryFile: null, inventoryRow: null });
          await new Promise((done) => setTimeout(done, 1));
        }),
      ),
    );
    await database.destroy();
    expect(ends.some(({ status }) => status === 'rejected')).toBe(true);
  });

  it('and that two processes on one file wait for each other', async () => {
    await filled();
    const [one, other] = [await openStore(place), await openStore(place)];
    const writes = Array.from({ length: 20 }, (_, i) => (i % 2 === 0 ? one : other).write({ ownerEntities: [{ id: `P${i}`, name: 'Owner', inventoryRow: null }] }));
    expect((await Promise.all(writes)).every(({ created }) => created === 1)).toBe(true);
    expect((await one.contents()).counts.ownerEntities).toBe(21);
    await one.close();
    await other.close();
  });
});
