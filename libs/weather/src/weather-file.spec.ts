import { MONTH_DAYS, clearSky, sunYear } from '#calc';
import { openCatalogue } from '#catalogue';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { readWeatherFile, readWeatherText, weatherOf, type WeatherReading } from './index.js';

const site = { latitude_deg: 28.567, longitude_deg: 77.103, timeZone_h: 5.5 };
const sun = sunYear(site);
const HEAD = ['LOCATION,Made Up,DL,IND,TEST,000000,28.567,77.103,5.5,236.8', ...Array.from({ length: 6 }, (_, i) => `COMMENTS ${i},`), 'DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31'];

const RECORDS: readonly (readonly (string | number)[])[] = MONTH_DAYS.flatMap((days, month) => {
  const before = MONTH_DAYS.slice(0, month).reduce((a, b) => a + b, 0);
  return Array.from({ length: days * 24 }, (_, i) => {
    const hour = before * 24 + i;
    const sunAltitude_deg = sun.altitude_deg[hour] ?? NaN;
    const clear = clearSky({ sunAltitude_deg, extraterrestrialNormal_W_m2: sun.extraterrestrialNormal_W_m2[hour] ?? NaN, beamDepth: 0.4, diffuseDepth: 2.1, edition: 2013 });
    const light = [clear.globalHorizontal_W_m2, clear.directNormal_W_m2, clear.diffuseHorizontal_W_m2].map((x) => x.toFixed(2));
    return [2001, month + 1, Math.floor(i / 24) + 1, (i % 24) + 1, 60, 'flags', 20 + (((i % 24) + 1) % 12), 10, 50, 98_000, 0, 0, 300, ...light, 0, 0, 0, 0, 180, 2.5, 0, 0];
  });
});

/** Hours of a made-up clear year in columns of the open format; `change` may spoil a record or drop it. */
function epw(change: (fields: readonly (string | number)[], hour: number) => readonly (string | number)[] | null = (fields) => fields): string {
  const hours = RECORDS.flatMap((fields, hour) => change(fields, hour)?.join(',') ?? []);
  return [...HEAD, ...hours].join('\r\n');
}
const abouts = (reading: WeatherReading) => reading.findings.map(({ severity, about }) => `${severity} ${about}`);
const set = (at: number, value: string | number) => (fields: readonly (string | number)[]) => fields.map((field, i) => (i === at ? value : field));

describe('a weather file without trouble', () => {
  const reading = readWeatherText(epw(), 'clean.epw');

  it('gives a year with its place and no finding, half-hour zone and all', () => {
    expect(reading.findings).toEqual([]);
    expect(reading.weather).toMatchObject({ site, label: 'Made Up, DL', source: 'clean.epw (TEST)', elevation_m: 236.8 });
    expect(reading.weather?.outdoor_degC[0]).toBe(21);
    expect(reading.weather?.wind_m_s[8759]).toBe(2.5);
  });
});

describe('findings of a whole file', () => {
  it('a missing hour refuses the file and names the moment', () => {
    const reading = readWeatherText(epw((fields, hour) => (hour === 1000 ? null : fields)), 'a');
    expect(reading.weather).toBeNull();
    expect(abouts(reading)).toEqual(['refused hours']);
    expect(reading.findings[0]?.text).toContain('8759 of the 8760 hours');
    expect(reading.findings[0]?.text).toContain('11 February, 16–17 h');
  });

  it('an hour that stands twice refuses the file with its line', () => {
    const lines = epw().split('\r\n');
    const reading = readWeatherText([...lines, lines[50]].join('\n'), 'a');
    expect(reading.findings).toEqual([expect.objectContaining({ severity: 'refused', about: 'hours', row: lines.length + 1 })]);
  });

  it('29 February is left out and said', () => {
    const leap = Array.from({ length: 24 }, (_, h) => set(2, 29)(set(1, 2)(`2000,2,29,${h + 1},60,f,1,1,50,98000,0,0,300,0,0,0,0,0,0,0,0,1`.split(','))).join(','));
    const lines = epw().split('\r\n');
    const reading = readWeatherText([...lines.slice(0, 8 + 59 * 24), ...leap, ...lines.slice(8 + 59 * 24)].join('\n'), 'a');
    expect(abouts(reading)).toEqual(['filled leap-day']);
    expect(reading.weather?.outdoor_degC).toEqual(readWeatherText(epw(), 'a').weather?.outdoor_degC);
  });

  it('short gaps of temperature are bridged by a straight line, long ones refuse the file', () => {
    const short = readWeatherText(epw((fields, hour) => (hour >= 10 && hour < 13 ? set(6, 99.9)(fields) : fields)), 'a');
    expect(abouts(short)).toEqual(['filled missing']);
    const at = (hour: number) => short.weather?.outdoor_degC[hour] ?? NaN;
    expect(at(11) - at(10)).toBeCloseTo(at(12) - at(11), 9);
    expect(at(10)).toBeCloseTo(at(9) + (at(13) - at(9)) / 4, 9);
    const long = readWeatherText(epw((fields, hour) => (hour >= 10 && hour < 20 ? set(6, 99.9)(fields) : fields)), 'a');
    expect(long.weather).toBeNull();
    expect(abouts(long)).toEqual(['refused missing']);
  });

  it('a gap across New Year is bridged from December into January', () => {
    const reading = readWeatherText(epw((fields, hour) => (hour === 0 || hour === 8759 ? set(6, 99.9)(fields) : fields)), 'a');
    expect(abouts(reading)).toEqual(['filled missing']);
    expect(reading.weather?.outdoor_degC[0]).toBeGreaterThan(15);
  });

  it('a dew point may come from the relative humidity; wind may be missing altogether', () => {
    const reading = readWeatherText(epw((fields) => set(21, 999)(set(7, 99.9)(fields))), 'a');
    expect(abouts(reading)).toEqual(['filled missing', 'doubtful missing']);
    expect(Number.isFinite(reading.weather?.wetBulb_degC[100] ?? NaN)).toBe(true);
    expect(reading.weather?.wind_m_s[5]).toBe(0);
  });

  it('without a diffuse column the light is completed from the other two; with global light alone it is split', () => {
    const clean = readWeatherText(epw(), 'a').weather;
    const third = readWeatherText(epw(set(15, 9999)), 'a');
    expect(abouts(third)).toEqual(['filled missing']);
    const off = third.weather?.diffuseHorizontal_W_m2.map((value, i) => Math.abs(value - (clean?.diffuseHorizontal_W_m2[i] ?? NaN))) ?? [];
    expect(Math.max(...off)).toBeLessThan(0.05);
    const split = readWeatherText(epw((fields) => set(14, 9999)(set(15, 9999)(fields))), 'a');
    expect(abouts(split)).toContain('doubtful missing');
    expect(split.weather?.diffuseHorizontal_W_m2.every((value) => value >= 0)).toBe(true);
  });

  it('no light at all refuses the file', () => {
    expect(abouts(readWeatherText(epw((fields) => set(13, 9999)(set(14, 9999)(fields))), 'a'))).toEqual(['refused missing']);
  });

  it('values that cannot be are named and count as missing', () => {
    const reading = readWeatherText(epw((fields, hour) => (hour === 5 ? set(6, 75)(fields) : fields)), 'a');
    expect(abouts(reading)).toEqual(['doubtful range', 'filled missing']);
    expect(reading.findings[0]).toMatchObject({ row: 14, text: expect.stringContaining('75') as string });
  });

  it.each([[-1, 'one hour', 'one hour earlier'], [-0.5, 'half an hour', 'half an hour earlier'], [0.5, 'half an hour', 'half an hour later'], [1, 'one hour', 'one hour later']])(
    'a clock %p h off is named', (offset_h, size, words) => {
      const zone = site.timeZone_h + offset_h; // the same light under another clock in the head
      const reading = readWeatherText(epw().replace(',5.5,236.8', `,${zone},236.8`), 'a');
      const clock = reading.findings.filter((each) => each.about === 'clock');
      expect(clock).toHaveLength(1);
      expect(clock[0]?.text).toContain(`Clock shift of ${size}: in all months`);
      expect(clock[0]?.text).toContain(words);
    },
  );

  it('light that does not close is named', () => {
    const reading = readWeatherText(epw((fields) => set(14, Number(fields[14]) * 0.6)(fields)), 'a');
    expect(abouts(reading)).toEqual(['doubtful closure']);
  });

  it('files that are no year of hours say so', () => {
    expect(abouts(readWeatherText('', 'a'))).toEqual(['refused header', 'refused hours']);
    expect(abouts(readWeatherText('LOCATION,Nowhere,,,,,nothing,,,\n', 'a'))).toContain('refused header');
    expect(abouts(readWeatherText(epw().replace('DATA PERIODS,1,1', 'DATA PERIODS,1,4'), 'a'))).toContain('refused steps');
    expect(abouts(readWeatherText(HEAD.slice(0, 1).join('\n'), 'a'))).toEqual(['refused header', 'refused hours']);
  });
});

describe('files on disk', () => {
  const folder = mkdtempSync(join(tmpdir(), 'film-rollout-weather-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  const catalogue = openCatalogue();

  it('plain and packed read alike, as a stream and at once', async () => {
    writeFileSync(join(folder, 'a.epw'), epw());
    writeFileSync(join(folder, 'a.epw.gz'), gzipSync(epw()));
    const plain = await readWeatherFile(join(folder, 'a.epw'));
    const packed = await readWeatherFile(join(folder, 'a.epw.gz'));
    expect(packed).toEqual(plain);
    expect(weatherOf({ epw: join(folder, 'a.epw.gz') }, catalogue)).toEqual(plain.weather);
    expect(weatherOf({ epw: join(folder, 'a.epw') }, catalogue)).toEqual(plain.weather);
  });

  it('what cannot be read or used says why', async () => {
    writeFileSync(join(folder, 'b.epw'), 'not weather');
    expect(() => weatherOf({ epw: join(folder, 'b.epw') }, catalogue)).toThrow(/epw must be a year of hourly weather.*0 of the 8760 hours/);
    expect(() => weatherOf({ epw: join(folder, 'none.epw') }, catalogue)).toThrow('epw must be a file that can be read');
    expect(() => weatherOf({ climate: 'atlantis' }, catalogue)).toThrow(/climate must be one of atlanta-ga.*got atlantis/);
    await expect(readWeatherFile(join(folder, 'none.epw.gz'))).rejects.toThrow('ENOENT');
    writeFileSync(join(folder, 'c.epw.gz'), 'not packed');
    await expect(readWeatherFile(join(folder, 'c.epw.gz'))).rejects.toThrow();
    expect(weatherOf({ climate: 'phoenix-az' }, catalogue).label).toBe('Phoenix AZ');
  });
});

describe('TMY3 text', () => {
  it('reads columns by their names, hours by their end', () => {
    const lines = ['421810,"MADE UP, INTL",DL,5.5,28.567,77.103,237', 'Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),DNI (W/m^2),DHI (W/m^2),Dry-bulb (C),Dew-point (C),RHum (%),Pressure (mbar),Wspd (m/s)'];
    for (const line of epw().split('\r\n').slice(8)) {
      const f = line.split(',');
      lines.push(`${f[1] ?? ''}/${f[2] ?? ''}/1999,${f[3] ?? ''}:00,${f[13] ?? ''},${f[14] ?? ''},${f[15] ?? ''},${f[6] ?? ''},${f[7] ?? ''},50,980,2.5`);
    }
    const reading = readWeatherText(lines.join('\n'), 'made-up.csv');
    expect(reading.findings).toEqual([]);
    expect(reading.weather).toMatchObject({ site, label: 'MADE UP, INTL, DL', elevation_m: 237 });
    const same = readWeatherText(epw(), 'a').weather;
    expect(reading.weather?.directNormal_W_m2).toEqual(same?.directNormal_W_m2);
    expect(Math.abs((reading.weather?.wetBulb_degC[40] ?? NaN) - (same?.wetBulb_degC[40] ?? NaN))).toBeLessThan(0.01);
    const bare = readWeatherText(lines.map((each, i) => (i === 1 ? each.replace('Wspd', 'Wind') : each)).join('\n'), 'b');
    expect(abouts(bare)).toEqual(['doubtful header', 'doubtful missing']);
  });
});
