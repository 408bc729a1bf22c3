import 'reflect-metadata';
import { DataSource, type DataSourceOptions } from 'typeorm';
import { allEntities } from './all-kept.js';
import { ColumnNames } from './column-name.js';
import { migrate } from './migrate.js';
import { allMigrations } from './migrations/all-migrations.js';
import { PortfolioStore } from './portfolio-store.js';
import { StoreFault } from './store-fault.js';

/** Where the portfolio is kept: the path of a SQLite file, `:memory:`, or `postgres://user@host/name`. */
export interface StorePlace {
  readonly database: string;
}

const BUSY_TIMEOUT_MS = 10_000;

function optionsOf({ database }: StorePlace): DataSourceOptions {
  const shared = {
    entities: [...allEntities],
    migrations: [...allMigrations],
    namingStrategy: new ColumnNames(),
    synchronize: false,
    migrationsRun: false,
  };
  if (/^postgres(ql)?:\/\//.test(database)) return { ...shared, type: 'postgres', url: database };
  return { ...shared, type: 'sqlite', database, enableWAL: true, busyTimeout: BUSY_TIMEOUT_MS };
}

const saying = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault));

/** Connects without touching the tables; `openStore` is the way in for everybody else. */
export async function connect(place: StorePlace): Promise<DataSource> {
  const database = new DataSource(optionsOf(place));
  try {
    return await database.initialize();
  } catch (fault) {
    const what = database.options.type === 'sqlite' ? `file ${place.database}` : 'PostgreSQL database';
    throw new StoreFault(`The ${what} could not be opened: ${saying(fault)}.`, { cause: fault });
  }
}

/**
 * Opens the store and brings its tables up to date; a SQLite file is copied first.
 *
 * @throws StoreFault when it cannot be opened or belongs to a newer version
 */
export async function openStore(place: StorePlace): Promise<PortfolioStore> {
  const database = await connect(place);
  try {
    await migrate(database);
  } catch (fault) {
    await database.destroy();
    if (fault instanceof StoreFault) throw fault;
    throw new StoreFault(`The tables of ${place.database} could not be brought up to date: ${saying(fault)}.`, { cause: fault });
  }
  return new PortfolioStore(database);
}
