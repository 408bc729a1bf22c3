import { twoDwellings, window } from '../../../../test/portfolios/two-dwellings.js';
import { trueBearings } from './true-bearings.js';

describe('bearings read off a compass', () => {
  // The needle stands 6.5° west of true north: magnetic 270° is 263.5° true.
  const { portfolio, findings } = trueBearings({ ...twoDwellings, buildings: twoDwellings.buildings.map((b) => ({ ...b, declination_deg: -6.5 })), windows: [...twoDwellings.windows, window('AA/001/W09', { dwelling: 'AA/001', planType: null })] });

  it('are turned by the declination wherever the survey gives one', () => {
    expect(portfolio.windows.find((w) => w.id === 'AA/001/W09')?.azimuth_deg).toBe(263.5);
    expect(portfolio.dwellings[0]?.frontAzimuth_deg).toBe(173.5);
    expect(portfolio.buildings[0]?.horizons[0]).toMatchObject({ azimuth_deg: 263.5, points: [{ azimuth_deg: 243.5 }, { azimuth_deg: 283.5 }] });
    expect(portfolio.readings[0]?.azimuth_deg).toBe(263.5);
  });

  it('of a plan type are measured from its front and stay', () => {
    expect(portfolio.windows.find((w) => w.planType !== null)?.azimuth_deg).toBe(270);
  });

  it('are said with both figures', () => {
    expect(findings).toMatchObject([{ subject: 'AA', text: expect.stringMatching(/−6\.5° .*270° is 263\.5°/) as string }]);
  });

  it('without a declination stay as they are', () => {
    expect(trueBearings(twoDwellings)).toEqual({ portfolio: twoDwellings, findings: [] });
  });
});
