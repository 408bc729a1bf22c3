import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import type { HourlyYear } from '#calc';
import { readWeatherText } from '#weather';

/** Folder of the hourly files that stay outside the project. */
export const hourlyFiles = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..', '..', 'shared', 'weather');
export const hourlyFilesAreHere = (): boolean => existsSync(hourlyFiles);
export const textOf = (name: string): string => gunzipSync(readFileSync(join(hourlyFiles, name))).toString('latin1');

const years = new Map<string, HourlyYear>();

/** One hourly file as a year, read once. */
export function hourlyYear(place: string): HourlyYear {
  const known = years.get(place);
  if (known !== undefined) return known;
  const { weather } = readWeatherText(textOf(`${place}.epw.gz`), `${place}.epw`);
  if (weather === null) throw new Error(`${place}: the hourly file holds no year`);
  years.set(place, weather);
  return weather;
}
