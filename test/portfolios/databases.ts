import { spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

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
const RUN = `const { Client } = require('pg');
const [connectionString, statement] = process.argv.slice(1);
const client = new Client({ connectionString, connectionTimeoutMillis: 3000 });
client.connect().then(() => client.query(statement)).then(() => process.exit(0), (fault) => { console.error(String(fault.errors?.[0] ?? fault)); process.exit(1); });`;

/** Runs one statement on the server, in a process of its own: whether there is a server must be known before the tests are laid out. */
function onServer(statement: string): { readonly why: string | null } {
  const run = spawnSync(process.execPath, ['--input-type=commonjs', '-e', RUN, SERVER, statement], { encoding: 'utf8' });
  return { why: run.status === 0 ? null : run.stderr.trim() };
}

/**
 * Asks for the PostgreSQL server of FILM_ROLLOUT_TEST_POSTGRES or of this machine.
 *
 * @returns null where it answers, or why there is none; a server that was named and does not answer is an error
 */
export function whyNoPostgres(): string | null {
  const { why } = onServer('SELECT 1');
  if (why !== null && NAMED !== undefined) throw new Error(`FILM_ROLLOUT_TEST_POSTGRES names a server that does not answer: ${why}`);
  return why;
}

/** A database of its own on the PostgreSQL server. */
export function freshPostgres(): Promise<FreshDatabase> {
  const must = (statement: string): Promise<void> => {
    const { why } = onServer(statement);
    return why === null ? Promise.resolve() : Promise.reject(new Error(why));
  };
  const name = `film_rollout_test_${randomUUID().replaceAll('-', '')}`;
  const place = new URL(SERVER);
  place.pathname = `/${name}`;
  return must(`CREATE DATABASE ${name}`).then(() => ({ database: place.href, drop: () => must(`DROP DATABASE ${name}`) }));
}
