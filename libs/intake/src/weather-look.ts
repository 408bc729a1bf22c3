import { stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import type { Building } from '#calc';
import { readWeatherFile, type WeatherFinding } from '#weather';
import type { FindingList, Severity } from './finding.js';

const SEVERITY: Readonly<Record<WeatherFinding['severity'], Severity>> = { refused: 'error', doubtful: 'warning', filled: 'note' };

/** The folder a survey came from; null for files that were sent. */
async function folderOf(source: unknown): Promise<string | null> {
  if (typeof source !== 'string') return null;
  return (await stat(source)).isDirectory() ? source : dirname(source);
}

const isFile = (path: string): Promise<boolean> => stat(path).then((found) => found.isFile(), () => false);

/** Looks through the weather files that buildings name, where the survey is a folder: a clock that is off would turn east and west about. */
export async function lookAtWeather(source: unknown, buildings: readonly Building[], findings: FindingList): Promise<void> {
  const folder = await folderOf(source);
  const looked = new Set<string>();
  for (const { weatherFile, inventoryRow } of buildings) {
    if (folder === null || weatherFile === null || looked.has(weatherFile)) continue;
    looked.add(weatherFile);
    const path = resolve(folder, weatherFile);
    if (!(await isFile(path))) {
      findings.add({ ...inventoryRow, column: 'weather_file', value: weatherFile, severity: 'warning', code: 'weather-missing', expected: 'a weather file in the folder of the survey', whatToDo: 'put it there before planning, or leave the cell blank for the nearest built-in climate' });
      continue;
    }
    for (const { severity, about, row, text } of (await readWeatherFile(path)).findings) {
      findings.add({ file: weatherFile, row, column: null, value: null, severity: SEVERITY[severity], code: `weather-${about}`, expected: 'a year of hours whose clock, sun and light agree', whatToDo: text });
    }
  }
}
