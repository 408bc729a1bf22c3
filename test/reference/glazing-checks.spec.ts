import {
  glazingOptics, meterPair, NOTHING_KNOWN, sheetOf, shadedGlazingOptics, SINGLE_CLEAR_3_MM, suitability, W_m2Of_Btu_h_ft2,
} from '#calc';
import { openCatalogue } from '#catalogue';
import { blindFactor, glassFilms } from './checks/glass-films.js';
import { hold } from './checks/hold.js';
import { oldBlindFactors } from './glazing-blinds.js';
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
