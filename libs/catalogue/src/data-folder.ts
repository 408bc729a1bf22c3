import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The package's own folder, found from this file upwards, so it is the same built and unbuilt. */
function packageFolder(): string {
  let at = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(at, 'nest-cli.json'))) {
    const up = dirname(at);
    if (up === at) throw new Error('the folder of film-rollout was not found above ' + at);
    at = up;
  }
  return at;
}

/** The built-in data of the package. */
export function ownDataFolder(): string {
  return join(packageFolder(), 'data');
}

/** The program's version, as its package states it; it stands on every plan beside the data it was made from. */
export function programVersion(): string {
  return (readData(packageFolder(), 'package.json') as { readonly version: string }).version;
}

/** Reads one JSON file of a folder. */
export function readData(folder: string, path: string): unknown {
  return JSON.parse(readFileSync(join(folder, path), 'utf8')) as unknown;
}
