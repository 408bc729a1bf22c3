import { type Film, type SolarReading, W_m2Of_Btu_h_ft2 } from '#calc';
import { openCatalogue } from '#catalogue';
import { twoDwellings, window } from '../../../../test/portfolios/two-dwellings.js';
import type { BookedGlazing } from './glazing-book.js';
import { type MeasuredBook, measuredGlass } from './measured-glass.js';
import type { PlacedWindow } from './placed-windows.js';

const catalogue = openCatalogue();
const placed: PlacedWindow = { ...window('AA/001/W01', { dwelling: 'AA/001', planType: null }), dwelling: 'AA/001', azimuth_deg: 270, fromPlanType: null, existingFilm: 'none' };
const { makeUp } = catalogue.glazing.get('single-clear-3');
const glazings = new Map<string, BookedGlazing>([['single-clear-3', { key: 'single-clear-3', name: 'Single clear', makeUp, tinted: false, lowE: false, unknown: false, note: null }]]);
/** Reflects 0.20 on 3 mm clear glass, as the film of the worked pair does. */
const film: Film = { ...twoDwellings.films[0]!, id: 'B', solarTransmittance: 0.35, frontReflectance: 0.2, backReflectance: 0.2 };
const sheet = { solarTransmittance: 0.35, frontReflectance: 0.2, backReflectance: 0.2, roomEmissivity: 0.84, side: 'room' as const };
const pair = (change: Partial<SolarReading> = {}): SolarReading => ({
  building: 'AA', azimuth_deg: 265, glazing: 'single-clear-3', film: 'B', taken: '2026-07-21', repeat: 1, outdoors_W_m2: null,
  bare_W_m2: W_m2Of_Btu_h_ft2(210), filmed_W_m2: W_m2Of_Btu_h_ft2(70), inventoryRow: { file: 'readings.csv', row: 2 }, ...change,
});
const weather = new Map([['AA', catalogue.climates.year('miami-fl')]]);
const book = (...readings: SolarReading[]): MeasuredBook => measuredGlass({ readings, windows: [placed], films: [{ film, sheet }], glazings, weather });
const only = (of: MeasuredBook) => of.glass.get(of.keyOf(placed) ?? '')?.films.get(0);
const shown = (of: MeasuredBook, field: string) => Number(of.assumed.find((a) => a.field === field)?.value);

describe('readings behind the glass', () => {
  // The worked pair of 210 and 70 Btu/h·ft² behind 3 mm clear (τ 0.834, SHGC 0.86), film reflecting 0.20: SHGC 0.430, cut 50 %, by the pane's heat balance.
  it('give the heat gain of the worked pair, marked measured', () => {
    const found = book(pair());
    expect(shown(found, 'solar heat gain with film')).toBeCloseTo(0.43, 2);
    expect(shown(found, 'cut in heat gain by the film')).toBeCloseTo(0.5, 2);
    expect(found.assumed.every((a) => a.basis === 'measured' && a.source.includes('readings.csv row'))).toBe(true);
    expect(found.findings).toEqual([]);
  });

  it('are surer of the cut when several are pooled', () => {
    const one = only(book(pair()))?.cutDoubt ?? 0;
    const four = only(book(...[2, 3, 4, 5].map((row) => pair({ repeat: row - 1, inventoryRow: { file: 'readings.csv', row } }))))?.cutDoubt ?? 0;
    expect(four).toBeGreaterThan(0);
    expect(four).toBeLessThan(one);
  });

  it('are less sure when they scatter', () => {
    const steady = only(book(pair(), pair({ repeat: 2 })))?.cutDoubt ?? 0;
    const scattered = only(book(pair(), pair({ repeat: 2, filmed_W_m2: W_m2Of_Btu_h_ft2(110) })))?.cutDoubt ?? 0;
    expect(scattered).toBeGreaterThan(1.5 * steady);
  });

  // 340 Btu/h·ft² behind clear glass asks for 408 outdoors; a west window gets at most about 216 behind clear glass in July.
  it('are refused where a window plane there cannot read so much, and say why', () => {
    const found = book(pair({ bare_W_m2: W_m2Of_Btu_h_ft2(340), filmed_W_m2: W_m2Of_Btu_h_ft2(120) }));
    expect(only(found)).toBeUndefined();
    expect(found.findings).toMatchObject([{ severity: 'warning', text: expect.stringMatching(/not used.*implausible in the window plane.*1286 W\/m² outdoors/) as string }]);
  });

  it('stand for windows of their glass on their side alone', () => {
    const found = book(pair());
    expect(found.keyOf({ ...placed, azimuth_deg: 90 })).toBeNull();
    expect(found.keyOf({ ...placed, dwelling: 'BB/001' })).toBeNull();
    expect(found.keyOf({ ...placed, glazing: 'single-clear-6' })).toBeNull();
  });

  it('with an outdoor one give the bare glass, when the time of day says how the sun stood', () => {
    // Miami, 21 July, 16:30 standard time: the sun stands 31° from straight on the wall of 265°.
    const found = book(pair({ taken: '2026-07-21T16:30', bare_W_m2: 450, filmed_W_m2: null, outdoors_W_m2: 600, film: null }));
    expect(found.glass.get(found.keyOf(placed) ?? '')?.makeUp).toBeTruthy();
    expect(found.assumed).toMatchObject([{ field: 'solar heat gain of the bare glass' }]);
    expect(book(pair({ bare_W_m2: 450, filmed_W_m2: null, outdoors_W_m2: 600, film: null })).findings).toMatchObject([{ text: expect.stringContaining('time of day') as string }]);
  });
});
