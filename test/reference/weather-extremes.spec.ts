import { join } from 'node:path';
import { yearExtremes } from '#calc';
import { openCatalogue } from '#catalogue';
import { readWeatherFile } from '#weather';
import { weatherFolder } from './weather-files.js';

const folder = weatherFolder('extremes of a whole hourly file against those kept with the built-in climates');
const { climates } = openCatalogue();

describe('the extremes of a year', () => {
  // ASHRAE's 0.4 % cooling dry bulb of Miami Intl is 33.2 °C (91.8 °F) in the handbook's design table, from memory; a typical year comes within a degree.
  it('give a 0.4 % dry bulb near that of the design tables', () => {
    expect(Math.abs(climates.byKey('miami-fl').extremes.exceeded_0_4.outdoor_degC - 33.2)).toBeLessThan(1);
  });

  (folder === null ? it.skip : it)('of a user\'s own file are found by the rule the built-in climates were made with', async () => {
    const { weather } = await readWeatherFile(join(folder ?? '', 'denver-co.epw.gz'));
    const found = yearExtremes(weather!);
    const { extremes } = climates.byKey('denver-co');
    expect(found.coldClearMorning).toMatchObject({ day: extremes.coldClearMorning.day, hour: extremes.coldClearMorning.hour });
    expect(found.exceeded_0_4.outdoor_degC).toBeCloseTo(extremes.exceeded_0_4.outdoor_degC, 1);
    expect(found.hottestClearDay.day).toBe(extremes.hottestClearDay.day);
  });
});
