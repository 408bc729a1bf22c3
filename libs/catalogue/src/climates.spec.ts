import { openCatalogue } from './catalogue.js';
import { nearestClimate } from './nearest-climate.js';

const { climates } = openCatalogue();

describe('the nearest climate', () => {
  it('a place in town is served without a warning', () => {
    const near = climates.nearest(25.77, -80.2); // 11.5 km from the airport by the haversine formula
    expect(near.climate.key).toBe('miami-fl');
    expect(near.distance_km).toBeGreaterThan(10);
    expect(near.distance_km).toBeLessThan(13);
    expect(near.warning).toBeNull();
  });

  it('a far place says how far, and names a climate of another kind that is nearly as near', () => {
    const far = climates.nearest(34.5, -116.5); // between the coast and the desert
    expect(far.warning).toMatch(/^The nearest built-in climate, (Los Angeles CA|Las Vegas NV) \([a-z-]+\), is \d{3} km away, more than 100 km/);
    expect(far.warning).toContain('of another kind: compare both');
  });

  it('crosses the date line the short way', () => {
    const list = [{ key: 'a', label: 'A', group: 'g', site: { latitude_deg: 0, longitude_deg: 179.9, timeZone_h: 12 } }];
    expect(nearestClimate(list, 0, -179.9).distance_km).toBeCloseTo(22.2, 1);
  });

  it('refuses a place that is not on the earth', () => {
    expect(() => climates.nearest(95, 0)).toThrow('latitude_deg');
    expect(() => climates.nearest(0, 200)).toThrow('longitude_deg');
  });
});

describe('the extremes of a climate', () => {
  it.each(climates.list.map((each) => [each.key, each] as const))('%s: hang together', (_key, { extremes, hourlyFile, site }) => {
    const { coldClearMorning: cold, exceeded_0_4: hot, exceeded_99_6: winter, hottestClearDay: day } = extremes;
    expect(winter.outdoor_degC).toBeLessThan(hourlyFile.outdoor_degC);
    expect(hot.outdoor_degC).toBeGreaterThan(hourlyFile.outdoor_degC);
    expect(hot.wetBulb_degC).toBeLessThanOrEqual(hot.outdoor_degC);
    expect(Math.max(...day.outdoor_degC)).toBeGreaterThanOrEqual(hot.outdoor_degC - 0.5);
    expect(cold.directNormal_W_m2).toBeGreaterThanOrEqual(400);
    expect(cold.wind_m_s).toBeLessThanOrEqual(3);
    expect(cold.sunAzimuth_deg).toBeLessThan(180); // a morning, on either side of the equator
    const winterMonths = site.latitude_deg > 0 ? /November|December|January|February|March/ : /May|June|July|August|September/;
    expect(cold.day).toMatch(winterMonths);
  });
});

it('a year is made once and shared', () => {
  expect(climates.year('denver-co')).toBe(climates.year('denver-co'));
  expect(() => climates.year('nowhere')).toThrow('climate must be one of');
});
