import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The program's version, from the package file above this one; built and unbuilt lie at different depths. */
export function programVersion(): string {
  let at = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(at, 'package.json'))) {
    const up = dirname(at);
    if (up === at) throw new Error(`the package file of film-rollout was not found above ${at}`);
    at = up;
  }
  return (JSON.parse(readFileSync(join(at, 'package.json'), 'utf8')) as { version: string }).version;
}
