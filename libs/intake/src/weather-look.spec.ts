import { copyFileSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { weatherFolder } from '../../../test/reference/weather-files.js';
import { readInventory } from './read-inventory.js';

const weather = weatherFolder('findings of a survey on its weather file');

/** A survey folder of one building that names a weather file. */
function surveyOf(weatherFile: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'rollout-survey-'));
  writeFileSync(join(folder, 'buildings.csv'), `building,weather_file\nQA,${weatherFile}\n`);
  writeFileSync(join(folder, 'dwellings.csv'), 'building,dwelling,floor_area_m2\nQA,1,60\n');
  writeFileSync(join(folder, 'windows.csv'), 'building,dwelling,mark,facade,width_mm,height_mm\nQA,1,W1,W,900,1200\n');
  return folder;
}
const ofWeather = async (folder: string) => (await readInventory(folder)).findings.filter((f) => f.code.startsWith('weather'));

describe('a weather file that a survey names', () => {
  it('is missed where it is not in the folder', async () => {
    expect(await ofWeather(surveyOf('here.epw'))).toMatchObject([{ file: 'buildings.csv', row: 2, severity: 'warning', code: 'weather-missing' }]);
  });

  it('that is none is an error before anything is planned', async () => {
    const folder = surveyOf('here.epw');
    writeFileSync(join(folder, 'here.epw'), 'not weather\n');
    expect((await ofWeather(folder)).some((f) => f.severity === 'error')).toBe(true);
  });

  // A synthetic Spanish file is half an hour off; nothing in its header says so.
  (weather === null ? it.skip : it)('with a clock half an hour off is said at the check', async () => {
    const folder = surveyOf('granada.epw.gz');
    copyFileSync(join(weather ?? '', 'odd-timing-granada-es.epw.gz'), join(folder, 'granada.epw.gz'));
    expect(await ofWeather(folder)).toContainEqual(expect.objectContaining({ code: 'weather-clock', severity: 'warning', file: 'granada.epw.gz' }));
  });
});
