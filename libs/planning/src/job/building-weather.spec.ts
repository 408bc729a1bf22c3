import { join } from 'node:path';
import type { Building } from '#calc';
import { openCatalogue } from '#catalogue';
import { twoDwellings } from '../../../../test/portfolios/two-dwellings.js';
import { weatherFolder } from '../../../../test/reference/weather-files.js';
import { buildingWeather } from './building-weather.js';

const catalogue = openCatalogue();
const folder = weatherFolder('clock findings of a building\'s own weather file');
const building: Building = { ...twoDwellings.buildings[0]!, climate: 'miami-fl', weatherFile: null };
const say = (change: Partial<Building>) => buildingWeather([{ ...building, ...change }], catalogue, (file) => join(folder ?? '', file)).findings;

describe('the weather of a building', () => {
  it('says how far the climate it names is away', () => {
    expect(say({ latitude_deg: 25.82, longitude_deg: -80.3 })).toEqual([]);
    // Orlando, 28.5° N 81.4° W, is about 320 km from Miami's airport.
    expect(say({ latitude_deg: 28.5, longitude_deg: -81.4 })).toMatchObject([{ severity: 'warning', subject: 'AA', text: expect.stringMatching(/3[0-3]\d km away/) as string }]);
  });

  it('says how far the nearest climate is where none is named', () => {
    expect(say({ climate: null, latitude_deg: 25.9, longitude_deg: -80.2 })).toMatchObject([{ severity: 'note', text: expect.stringContaining('km away') as string }]);
  });

  // A published typical year of Honolulu mixes two clocks: nine months are one hour off.
  (folder === null ? it.skip : it)('of its own file brings the file\'s clock to the plan\'s findings', () => {
    const found = say({ weatherFile: 'odd-timing-honolulu-hi.epw.gz', latitude_deg: null, longitude_deg: null });
    expect(found.some((f) => f.severity === 'warning' && f.text.startsWith('Clock shift of one hour') && f.subject.includes('AA'))).toBe(true);
  });
});
