import {
  glazingOptics, labelledGlazing, meterPair, NOTHING_KNOWN, sheetOf, shadedGlazingOptics, simpleInwardFraction, simpleSolarHeatGainAt, SINGLE_CLEAR_3_MM, suitability, W_m2Of_Btu_h_ft2,
} from '#calc';
import { openCatalogue } from '#catalogue';
import { blindFactor, glassFilms } from './checks/glass-films.js';
import { hold } from './checks/hold.js';
import { oldBlindFactors } from './glazing-blinds.js';
import { handbookAngles_deg, handbookGains, usualU_W_m2K } from './glazing-handbook.js';
import { implausibleReadings } from './glazing-meter.js';
import { screenedPanes } from './glazing-stress.js';

const catalogue = openCatalogue();
glassFilms.filter(({ table }) => !['calc/glass/film-on-glass', 'calc/glass/surviving-cut'].includes(table.of)).forEach(hold);

it('says of a reading no window plane gives that it is implausible there', () => {
  for (const { given } of implausibleReadings.rows) {
    const ours = meterPair({ bare_W_m2: W_m2Of_Btu_h_ft2(given.bare), filmed_W_m2: 300, bareTransmittance: given.tauBare, bareSolarHeatGain: 0.86 });
    expect(ours.warnings.some((warning) => warning.includes('implausible in the window plane'))).toBe(true);
  }
});

it('leaves the film maker’s chart the last word on every pane', () => {
  for (const { given } of screenedPanes.rows) expect(suitability({ ...NOTHING_KNOWN, ...given.facts }, catalogue.suitabilityRules).reasons.join(' ')).toMatch(/film-to-glass chart/);
});

describe('windows known by their label alone', () => {
  // Labels carry no optics, so rows with SHGC alone have no pass line; both routes are measured over all 56 rows.
  it('builds make-ups that follow the handbook rows closer at their worst than the published simple form does', () => {
    const worst = { simple: 0, makeUp: 0 };
    for (const { given, expect: theirs } of handbookGains.rows) {
      const label = { solarHeatGain: theirs.solarHeatGain[0], uFactor_W_m2K: usualU_W_m2K(given.family) };
      const made = glazingOptics(labelledGlazing(label));
      expect(made.solarHeatGain).toBeCloseTo(label.solarHeatGain, 3);
      handbookAngles_deg.forEach((angle, i) => {
        const table = theirs.solarHeatGain[i]!;
        worst.simple = Math.max(worst.simple, Math.abs(simpleSolarHeatGainAt(label.solarHeatGain, label.uFactor_W_m2K, angle) - table));
        worst.makeUp = Math.max(worst.makeUp, Math.abs(made.solarHeatGainAt(angle) - table));
      });
    }
    expect(worst.makeUp).toBeLessThan(worst.simple);
  });

  it('finds the inward share of single clear near that of its surface films', () => {
    expect(Math.abs(simpleInwardFraction(0.86, 5.9) - 0.29)).toBeLessThan(0.02);
  });
});

describe('curtains and blinds as the innermost layer', () => {
  it('lets every film on single glass save less behind a light curtain, as the regression does', () => {
    const light = catalogue.glazing.blind('light')!;
    const open = glazingOptics(SINGLE_CLEAR_3_MM).solarHeatGain;
    const behind = shadedGlazingOptics(SINGLE_CLEAR_3_MM, null, light).solarHeatGain;
    for (const film of catalogue.films.list()) {
      const sheet = sheetOf(film);
      const saved = open - glazingOptics(SINGLE_CLEAR_3_MM, sheet).solarHeatGain;
      const savedBehind = behind - shadedGlazingOptics(SINGLE_CLEAR_3_MM, sheet, light).solarHeatGain;
      expect(savedBehind).toBeLessThan(0.6 * saved);
      expect(savedBehind).toBeGreaterThan(0);
    }
  });

  it('rises as the manual’s factors do: the more the glass itself takes up, the less a light blind takes off', () => {
    const factor = (key: string): number => blindFactor(catalogue.glazing.get(key).makeUp, 'light');
    const manual = (glass: string): number => {
      const row = oldBlindFactors.rows.find(({ given }) => given.glass === glass)!.expect;
      return row.lightBlind / row.noShade;
    };
    expect(manual('heat absorbing 48-56 %')).toBeGreaterThan(manual('ordinary'));
    expect(factor('single-bronze-6')).toBeGreaterThan(factor('single-clear-3'));
    expect(manual('double ordinary')).toBeGreaterThan(manual('ordinary'));
    expect(factor('double-clear-3')).toBeGreaterThan(factor('single-clear-3'));
  });
});
