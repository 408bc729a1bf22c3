import { existsSync } from 'node:fs';
import type { DataSource } from 'typeorm';
import { allMigrations } from './migrations/all-migrations.js';
import { StoreFault } from './store-fault.js';

const ourNames = (): string[] => allMigrations.map((migration) => migration.name);

async function namesInDatabase(database: DataSource): Promise<string[]> {
  const runner = database.createQueryRunner();
  try {
    if (await runner.hasTable('migrations')) {
      const rows = (await runner.query('SELECT name FROM migrations ORDER BY timestamp')) as { name: string }[];
      return rows.map((row) => row.name);
    }
    if (await runner.hasTable('buildings')) throw new StoreFault(`${whereIs(database)} holds tables of another program; name another database.`);
    return [];
  } finally {
    await runner.release();
  }
}

/** The database's name for a message, without user and password. */
export function whereIs(database: DataSource): string {
  const { options } = database;
  return options.type === 'sqlite' ? `The database ${options.database}` : 'The PostgreSQL database';
}

/** Copies a SQLite file beside itself, named after the last migration it has; an older copy of the same state is kept. */
async function backUp(database: DataSource, last: string): Promise<void> {
  if (database.options.type !== 'sqlite' || database.options.database === ':memory:') return;
  const copy = `${database.options.database}.before-update-of-${last}.sqlite`;
  if (existsSync(copy)) return;
  // VACUUM INTO writes one whole file, what still lies in the write-ahead log included.
  await database.query('VACUUM INTO ?', [copy]);
}

/**
 * Brings the tables up to this version.
 *
 * @throws StoreFault when the database was written by a newer version
 */
export async function migrate(database: DataSource): Promise<void> {
  const ours = ourNames();
  const there = await namesInDatabase(database);
  const newer = there.find((name) => !ours.includes(name));
  if (newer !== undefined) {
    throw new StoreFault(`${whereIs(database)} was written by a newer version of film-rollout (it has "${newer}"); use that version or name another database.`);
  }
  if (there.length === ours.length) return;
  const last = there.at(-1);
  if (last !== undefined) await backUp(database, last);
  await database.runMigrations({ transaction: 'all' });
}
