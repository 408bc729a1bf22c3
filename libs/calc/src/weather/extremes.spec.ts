import { yearExtremes, type HourlyYear } from './index.js';

const blank = () => new Float64Array(8760);
/** A year that warms evenly by 1/128 K an hour, so that every rank and every half degree is a whole number of hours; dull and windy. */
function warmingYear(): HourlyYear {
  return {
    site: { latitude_deg: 40, longitude_deg: 0, timeZone_h: 0 }, label: 'made up', source: 'made up', elevation_m: 0, outdoor_degC: Float64Array.from({ length: 8760 }, (_, i) => i / 128),
    wetBulb_degC: Float64Array.from({ length: 8760 }, (_, i) => i), directNormal_W_m2: blank(), diffuseHorizontal_W_m2: blank(), globalHorizontal_W_m2: blank(), wind_m_s: blank().fill(5),
  };
}
const hourOf = (dayOfYear: number, hour: number) => (dayOfYear - 1) * 24 + hour;

describe('temperatures few hours exceed', () => {
  it('stand at rank 0.4 % and 99.6 %, with the mean wet bulb of the hours within half a degree', () => {
    // Rank 35 from the top is hour 8724; within 64 hours either side, the year's end apart, lie 8660 … 8759. Day 364 is 30 December.
    expect(yearExtremes(warmingYear()).exceeded_0_4).toEqual({ outdoor_degC: 8724 / 128, wetBulb_degC: (8660 + 8759) / 2, hours: 100, day: '30 December' });
    // Rank 8725 is hour 34, on the second day; within 64 hours lie 0 … 98.
    expect(yearExtremes(warmingYear()).exceeded_99_6).toEqual({ outdoor_degC: 34 / 128, wetBulb_degC: 49, hours: 99, day: '2 January' });
  });
});

describe('the coldest clear calm morning', () => {
  const bright = (year: HourlyYear, i: number, [direct, wind]: [number, number]) => {
    year.directNormal_W_m2[i] = direct;
    year.wind_m_s[i] = wind;
  };

  it('is none where it is never clear and calm at once', () => {
    const year = warmingYear();
    bright(year, hourOf(41, 9), [399, 3]);
    bright(year, hourOf(42, 9), [400, 3.1]);
    bright(year, hourOf(43, 12), [800, 0]);
    bright(year, hourOf(44, 13), [800, 0]);
    // In mid-December the sun is below 5° at half past seven; in June it stands higher at half past four, which is too early.
    bright(year, hourOf(350, 7), [800, 0]);
    bright(year, hourOf(172, 4), [800, 0]);
    expect(yearExtremes(year).coldClearMorning).toBeNull();
  });

  it('has 400 W/m² of sun or more, 3 m/s of wind or less, and is the coldest of them', () => {
    const year = warmingYear();
    bright(year, hourOf(20, 9), [399, 2]);
    bright(year, hourOf(60, 9), [900, 1]);
    const at = hourOf(41, 9);
    bright(year, at, [400, 3]);
    year.diffuseHorizontal_W_m2[at] = 60;
    year.globalHorizontal_W_m2[at] = 200;
    const cold = yearExtremes(year).coldClearMorning!;
    expect(cold).toMatchObject({ day: '10 February', hour: 9, outdoor_degC: at / 128, wind_m_s: 3, directNormal_W_m2: 400, diffuseHorizontal_W_m2: 60, globalHorizontal_W_m2: 200 });
    // Half past nine in 40° N in early February: the sun in the south-east, some 25° up.
    expect(cold.sunAltitude_deg).toBeGreaterThan(20);
    expect(cold.sunAltitude_deg).toBeLessThan(30);
    expect(cold.sunAzimuth_deg).toBeGreaterThan(125);
    expect(cold.sunAzimuth_deg).toBeLessThan(155);
  });

  it('may be at five in June and at eleven', () => {
    for (const [dayOfYear, hour, day] of [[172, 5, '21 June'], [213, 11, '1 August'], [90, 11, '31 March'], [121, 11, '1 May'], [258, 11, '15 September'], [288, 11, '15 October'], [319, 11, '15 November'], [105, 11, '15 April']] as const) {
      const year = warmingYear();
      bright(year, hourOf(dayOfYear, hour), [500, 1]);
      expect(yearExtremes(year).coldClearMorning).toMatchObject({ day, hour });
    }
  });
});

describe('the hottest clear day', () => {
  it('is the one with the highest hour among the brightest third of each month', () => {
    const year = warmingYear();
    year.outdoor_degC.fill(10);
    // Hottest of all, but dull; less hot and the brightest of July; hot and bright enough to be tenth of its 31 days, then eleventh.
    year.outdoor_degC[hourOf(191, 15)] = 45;
    const [brightest, tenth, eleventh] = [196, 200, 201] as const;
    for (let day = 183; day <= 190; day++) year.directNormal_W_m2[hourOf(day, 12)] = 500;
    year.directNormal_W_m2[hourOf(brightest, 12)] = 900;
    year.directNormal_W_m2[hourOf(tenth, 12)] = 400;
    year.directNormal_W_m2[hourOf(eleventh, 12)] = 300;
    year.outdoor_degC[hourOf(brightest, 15)] = 38;
    year.outdoor_degC[hourOf(tenth, 16)] = 40;
    year.outdoor_degC[hourOf(eleventh, 15)] = 42;
    const hottest = yearExtremes(year).hottestClearDay;
    expect(hottest).toMatchObject({ day: '19 July', dayOfYear: 200 });
    expect(hottest.outdoor_degC).toEqual(Array.from({ length: 24 }, (_, h) => (h === 16 ? 40 : 10)));
    expect(hottest.directNormal_W_m2).toEqual(Array.from({ length: 24 }, (_, h) => (h === 12 ? 400 : 0)));
    expect(hottest.wetBulb_degC).toEqual(Array.from({ length: 24 }, (_, h) => hourOf(200, h)));
    expect(hottest.wind_m_s).toEqual(Array(24).fill(5));
    expect([hottest.diffuseHorizontal_W_m2, hottest.globalHorizontal_W_m2].map((each) => each.length)).toEqual([24, 24]);
  });

  it('of equally bright days the later are the bright third', () => {
    const year = warmingYear();
    year.outdoor_degC.fill(10);
    // January has 31 days: the last ten are bright, from the 22nd.
    year.outdoor_degC[hourOf(21, 12)] = 30;
    year.outdoor_degC[hourOf(22, 12)] = 20;
    expect(yearExtremes(year).hottestClearDay.day).toBe('22 January');
  });
});
