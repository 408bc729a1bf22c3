import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The package's own data folder, found from this file upwards, so it is the same built and unbuilt. */
export function ownDataFolder(): string {
  let at = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(at, 'nest-cli.json'))) {
    const up = dirname(at);
    if (up === at) throw new Error('the data folder of film-rollout was not found above ' + at);
    at = up;
  }
  return join(at, 'data');
}

/** Reads one JSON file of the data folder. */
export function readData(folder: string, path: string): unknown {
  return JSON.parse(readFileSync(join(folder, path), 'utf8')) as unknown;
}
