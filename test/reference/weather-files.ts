import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Folder of the hourly files that stay outside the project; null, said loudly, where there is none. */
export function weatherFolder(whatIsSkipped: string): string | null {
  const folder = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..', 'shared', 'weather');
  if (existsSync(folder)) return folder;
  console.warn(`SKIPPED: ${whatIsSkipped}. The hourly weather files are not in ../shared/weather.`);
  return null;
}
