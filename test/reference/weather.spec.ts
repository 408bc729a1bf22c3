import { openCatalogue } from '#catalogue';
import { readWeatherFile } from '#weather';
import { join } from 'node:path';
import { hold } from './checks/hold.js';
import { weatherYears } from './checks/weather-years.js';
import { facadeYears } from './sky-facade-year.js';
import { weatherFolder } from './weather-files.js';

const folder = weatherFolder('facade totals, closure and clock checks on the real hourly files');
const places = [...new Set(facadeYears.rows.map((row) => row.given.climate))];
weatherYears.forEach(hold);

it('the built-in climates are the fourteen places, eight walls each', () => {
  expect(openCatalogue().climates.list.map((each) => each.key).sort()).toEqual([...places].sort());
  expect(facadeYears.rows).toHaveLength(14 * 8);
});

it.each(places)('nothing is found amiss in the hourly file of %s', async (place) => {
  if (folder === null) return;
  expect((await readWeatherFile(join(folder, `${place}.epw.gz`))).findings).toEqual([]);
});

describe('files with a wrong clock are named', () => {
  it('a file half an hour off in all months', async () => {
    if (folder === null) return;
    const { weather, findings } = await readWeatherFile(join(folder, 'odd-timing-granada-es.epw.gz'));
    expect(weather).not.toBeNull();
    const clock = findings.filter((each) => each.about === 'clock');
    expect(clock.map((each) => each.text.split(' off')[0])).toEqual([
      expect.stringMatching(/^Clock shift of half an hour: in all months .* half an hour later than the time stamps say/),
    ]);
  });

  it('a file that mixes two clocks, one hour apart: nine months named, night sun counted', async () => {
    if (folder === null) return;
    const { findings } = await readWeatherFile(join(folder, 'odd-timing-honolulu-hi.epw.gz'));
    const clock = findings.filter((each) => each.about === 'clock');
    expect(clock).toHaveLength(1);
    expect(clock[0]?.text).toMatch(/^Clock shift of one hour: in January, April, May, June, July, August, October, November, December .* one hour later .*mixes two/);
    expect(findings.find((each) => each.about === 'night-sun')?.text).toMatch(/^22[789] hours/); // 228 by the full sun algorithm, give or take an hour that stands at the limit
  });
});
