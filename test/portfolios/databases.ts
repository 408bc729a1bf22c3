import { spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client } from 'pg';

/** A fresh database for a test, and how to be rid of it. */
export interface FreshDatabase {
  readonly database: string;
  readonly drop: () => Promise<void>;
}

/** A SQLite file in a folder of its own. */
export function freshFile(): Promise<FreshDatabase> {
  const folder = mkdtempSync(join(tmpdir(), 'film-rollout-'));
  return Promise.resolve({
    database: join(folder, 'rollout.sqlite'),
    drop: () => {
      rmSync(folder, { recursive: true, force: true });
      return Promise.resolve();
    },
  });
}

const NAMED = process.env.FILM_ROLLOUT_TEST_POSTGRES;
const SERVER = NAMED ?? 'postgres://postgres@127.0.0.1:5432/postgres';
const ASK = `new (require('pg').Client)({ connectionString: ${JSON.stringify(SERVER)}, connectionTimeoutMillis: 3000 }).connect().then(() => process.exit(0), (e) => { console.error(String(e.errors?.[0] ?? e)); process.exit(1); })`;

/**
 * Asks for the PostgreSQL server of FILM_ROLLOUT_TEST_POSTGRES or of this machine before the tests are laid out.
 *
 * @returns null where it answers, or why there is none; a server that was named and does not answer is an error
 */
export function whyNoPostgres(): string | null {
  const asked = spawnSync(process.execPath, ['--input-type=commonjs', '-e', ASK], { encoding: 'utf8' });
  if (asked.status === 0) return null;
  if (NAMED !== undefined) throw new Error(`FILM_ROLLOUT_TEST_POSTGRES names a server that does not answer: ${asked.stderr.trim()}`);
  return asked.stderr.trim();
}

async function onServer(statement: string): Promise<void> {
  const client = new Client({ connectionString: SERVER });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}

/** A database of its own on the PostgreSQL server. */
export async function freshPostgres(): Promise<FreshDatabase> {
  const name = `film_rollout_test_${randomUUID().replaceAll('-', '')}`;
  await onServer(`CREATE DATABASE ${name}`);
  const place = new URL(SERVER);
  place.pathname = `/${name}`;
  return { database: place.href, drop: () => onServer(`DROP DATABASE ${name}`) };
}
