import {
  glazingOptics,
  labelledGlazing,
  meterPair,
  NOTHING_KNOWN,
  paneStress,
  paneTemperatures_degC,
  sheetOf,
  shadedGlazingOptics,
  simpleInwardFraction,
  simpleSolarHeatGainAt,
  simpleTransmittance,
  simpleTransmittanceAt,
  SINGLE_CLEAR_3_MM,
  suitability,
  W_m2Of_Btu_h_ft2,
} from '#calc';
import { openCatalogue } from '#catalogue';
import { curtainRegression, oldBlindFactors } from './glazing-blinds.js';
import { handbookAngles_deg, handbookGains } from './glazing-handbook.js';
import { labelTransmittances } from './glazing-labels.js';
import { implausibleReadings, meterExample, meterPairs, meterUncertainties } from './glazing-meter.js';
import { doublePaneTemperatures, screenedPanes, singlePaneStresses } from './glazing-stress.js';

const catalogue = openCatalogue();
const within = (table: { tolerance: { abs?: number } }, ours: number, theirs: number): void => {
  expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(table.tolerance.abs ?? 0);
};

describe('readings of a meter behind the glass', () => {
  it.each(meterPairs.rows)('$place', ({ given, expect: theirs }) => {
    const reflectance = given.reflectanceFilmed;
    const ours = meterPair({
      bare_W_m2: W_m2Of_Btu_h_ft2(given.bare),
      filmed_W_m2: W_m2Of_Btu_h_ft2(given.filmed),
      bareTransmittance: given.tauBare,
      bareSolarHeatGain: given.shgcBare,
      inwardFraction: given.N,
      filmReflectance: { low: reflectance, best: reflectance, high: reflectance },
    });
    within(meterPairs, ours.transmittanceRatio, theirs.ratio);
    within(meterPairs, ours.filmedTransmittance, theirs.tauFilmed);
    within(meterPairs, ours.absorptance, theirs.absorptance);
    within(meterPairs, ours.solarHeatGain.best, theirs.SHGC);
    within(meterPairs, ours.cutInReading, theirs.cutReading);
    within(meterPairs, ours.cutInHeatGain.best, theirs.cutSHGC);
  });

  it.each(implausibleReadings.rows)('$place', ({ given, expect: theirs }) => {
    const ours = meterPair({ bare_W_m2: W_m2Of_Btu_h_ft2(given.bare), filmed_W_m2: 300, bareTransmittance: given.tauBare, bareSolarHeatGain: 0.86 });
    within(implausibleReadings, ours.impliedOutdoors_W_m2, theirs.impliedOutdoor_W_m2);
    within(implausibleReadings, ours.impliedOutdoors_W_m2 / 3.15459, theirs.impliedOutdoor_Btu_h_ft2);
    expect(ours.warnings.some((warning) => warning.includes('implausible in the window plane'))).toBe(true);
  });

  it.each(meterUncertainties.rows)('$place', ({ given, expect: theirs }) => {
    const ours = meterPair({ bare_W_m2: W_m2Of_Btu_h_ft2(given.bare), filmed_W_m2: W_m2Of_Btu_h_ft2(given.filmed), bareTransmittance: 0.834, bareSolarHeatGain: 0.86 });
    within(meterUncertainties, ours.transmittanceRatio, theirs.ratio);
    within(meterUncertainties, ours.transmittanceRatioUncertainty, theirs.uncertainty);
  });

  it.each(meterExample.rows)('$place', ({ given, expect: theirs }) => {
    const ours = meterPair({ bare_W_m2: W_m2Of_Btu_h_ft2(given.bare), filmed_W_m2: W_m2Of_Btu_h_ft2(given.filmed), bareTransmittance: given.tauBare, bareSolarHeatGain: given.shgcBare });
    within(meterExample, ours.solarHeatGain.best, theirs.solarHeatGain);
    within(meterExample, ours.solarHeatGain.standardUncertainty, theirs.standardUncertainty);
    within(meterExample, ours.solarHeatGain.low, theirs.low);
    within(meterExample, ours.solarHeatGain.high, theirs.high);
  });
});

describe('panes in the sun, for screening', () => {
  it.each(singlePaneStresses.rows)('$place', ({ given, expect: theirs }) => {
    const { absorptance, ...weather } = given;
    const ours = paneStress({ layerAbsorptance: [absorptance], gaps_m2K_W: [] }, { name: 'case', ...weather });
    within(singlePaneStresses, ours.pane_degC[0]!, theirs.paneC);
    within(singlePaneStresses, ours.difference_K, theirs.dT);
    within(singlePaneStresses, ours.stress_MPa, theirs.stressMPa);
    expect(Math.abs(ours.stress_MPa * 145.0377 - theirs.stressPsi)).toBeLessThan(1);
  });

  it.each(doublePaneTemperatures.rows)('$place', ({ given, expect: theirs }) => {
    const { layerAbsorptance, gap_m2K_W, ...weather } = given;
    const [outer, inner] = paneTemperatures_degC({ layerAbsorptance, gaps_m2K_W: [gap_m2K_W] }, { name: 'case', edge_degC: 28, ...weather });
    within(doublePaneTemperatures, outer!, theirs.outerC);
    within(doublePaneTemperatures, inner!, theirs.innerC);
  });

  it.each(screenedPanes.rows)('$place', ({ given, expect: theirs }) => {
    const found = suitability({ ...NOTHING_KNOWN, ...given.facts }, catalogue.suitabilityRules);
    expect(found.outcome).toBe(theirs.outcome);
    expect(found.reasons.join(' ')).toMatch(/film-to-glass chart/);
  });
});

describe('windows known by their label alone', () => {
  it.each(labelTransmittances.rows)('$place', ({ given, expect: theirs }) => {
    within(labelTransmittances, simpleTransmittance(given.solarHeatGain, given.uFactor_W_m2K), theirs.Tsol);
    within(labelTransmittances, simpleTransmittanceAt(given.solarHeatGain, given.uFactor_W_m2K, 60), theirs.T60);
    within(labelTransmittances, simpleTransmittanceAt(given.solarHeatGain, given.uFactor_W_m2K, 80), theirs.T80);
  });

  // Labels carry no optics, so rows with SHGC alone have no pass line; both routes are measured over all 56 rows.
  it('builds make-ups that follow the handbook rows closer at their worst than the published simple form does', () => {
    const usualU = (family: string): number => (family.startsWith('single') ? 5.9 : family.startsWith('triple') ? 1.6 : family.includes('low-e') ? 1.9 : 2.8);
    const worst = { simple: 0, makeUp: 0 };
    for (const { given, expect: theirs } of handbookGains.rows) {
      const label = { solarHeatGain: theirs.solarHeatGain[0], uFactor_W_m2K: usualU(given.family) };
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
  const bareTypes = ['single-clear-3', 'single-clear-6', 'single-bronze-6', 'single-grey-6', 'double-clear-3', 'double-bronze-clear-6', 'double-low-e-5', 'triple-clear-3'];

  it.each(curtainRegression.rows)('meets the published regression on single clear, where it was set: $given.kind', ({ given, expect: line }) => {
    const kind = given.kind as 'light' | 'medium' | 'dark';
    const bare = glazingOptics(SINGLE_CLEAR_3_MM).solarHeatGain;
    const factor = shadedGlazingOptics(SINGLE_CLEAR_3_MM, null, catalogue.glazing.blind(kind)!).solarHeatGain / bare;
    expect(Math.abs(factor - (line.c1 - line.c2 * bare))).toBeLessThan(0.002);
  });

  it.each(curtainRegression.rows)('stays on the regression over all other bare glass: $given.kind', ({ given, expect: line }) => {
    const kind = given.kind as 'light' | 'medium' | 'dark';
    for (const key of bareTypes) {
      const { makeUp } = catalogue.glazing.get(key);
      const bare = glazingOptics(makeUp).solarHeatGain;
      const factor = shadedGlazingOptics(makeUp, null, catalogue.glazing.blind(kind)!).solarHeatGain / bare;
      within(curtainRegression, factor, line.c1 - line.c2 * bare);
    }
  });

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
    const factor = (key: string): number => {
      const { makeUp } = catalogue.glazing.get(key);
      return shadedGlazingOptics(makeUp, null, catalogue.glazing.blind('light')!).solarHeatGain / glazingOptics(makeUp).solarHeatGain;
    };
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
