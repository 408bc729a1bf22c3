import fc from 'fast-check';
import { coatedCurve, coatedPaneAt } from './coated-angle.js';
import { filmedPane, filmFault } from './film-on-glass.js';
import { COSINE_STEPS, glazingOptics } from './glazing-optics.js';
import { labelledGlazing } from './labelled-glazing.js';
import { stacked } from './layers.js';
import { CLEAR_3_MM, SINGLE_CLEAR_3_MM, type FilmOnClear, type GlazingMakeUp, type Pane } from './pane.js';

const gap = { resistance_m2K_W: 0.17 };
const double = (outer: Pane, inner: Pane = CLEAR_3_MM): GlazingMakeUp => ({ key: 'double', panes: [outer, inner], gaps: [gap] });

/** Sheets that light could pass: transmittance, reflectances and the rest taken up. */
const film = fc
  .record({
    solarTransmittance: fc.double({ min: 0.05, max: 0.6, noNaN: true }),
    frontReflectance: fc.double({ min: 0.05, max: 0.6, noNaN: true }),
    backReflectance: fc.double({ min: 0.05, max: 0.6, noNaN: true }),
    roomEmissivity: fc.double({ min: 0.05, max: 0.9, noNaN: true }),
    side: fc.constantFrom<FilmOnClear['side']>('room', 'outdoor'),
  })
  .filter((sheet) => filmFault(sheet) === null);
const glass = fc.constantFrom<Pane>(
  CLEAR_3_MM,
  { ...CLEAR_3_MM, solarTransmittance: 0.49, frontReflectance: 0.05, backReflectance: 0.05, thickness_mm: 6 },
  { ...CLEAR_3_MM, solarTransmittance: 0.429, frontReflectance: 0.336, backReflectance: 0.44, emissivityBack: 0.05, coated: true },
);
const angle = fc.double({ min: 0, max: 90, noNaN: true });

describe('glazing', () => {
  it('accounts for all light at every angle: transmitted, thrown back, taken up', () => {
    fc.assert(
      fc.property(film, glass, angle, (sheet, pane, incidence_deg) => {
        for (const makeUp of [SINGLE_CLEAR_3_MM, double(pane), { key: 'triple', panes: [pane, CLEAR_3_MM, pane], gaps: [gap, gap] }]) {
          const at = glazingOptics(makeUp, sheet).at(incidence_deg);
          const sum = at.layerAbsorptance.reduce((total, a) => total + a, at.solarTransmittance + at.frontReflectance);
          expect(sum).toBeCloseTo(1, 9);
          for (const a of at.layerAbsorptance) expect(a).toBeGreaterThan(-1e-9);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('returns the sheet when a film is laid on the glass of its sheet', () => {
    fc.assert(
      fc.property(film, (sheet) => {
        const on = filmedPane({ ...sheet, side: 'room' }, CLEAR_3_MM);
        expect(on.solarTransmittance).toBeCloseTo(sheet.solarTransmittance, 9);
        expect(on.frontReflectance).toBeCloseTo(sheet.frontReflectance, 2);
        expect(on.backReflectance).toBeCloseTo(sheet.backReflectance, 2);
      }),
    );
  });

  it('turns the same filmed sheet round for an outdoor film and leaves the faces their emissivity', () => {
    const sheet: FilmOnClear = { solarTransmittance: 0.25, frontReflectance: 0.2, backReflectance: 0.3, roomEmissivity: 0.1, side: 'outdoor' };
    const on = filmedPane(sheet, CLEAR_3_MM);
    expect(on.frontReflectance).toBeCloseTo(0.3, 9);
    expect(on.backReflectance).toBeCloseTo(0.2, 9);
    expect([on.emissivityFront, on.emissivityBack]).toEqual([0.84, 0.84]);
  });

  it('refuses sheets that break a physical limit, and says which', () => {
    const sheet: FilmOnClear = { solarTransmittance: 0.5, frontReflectance: 0.5, backReflectance: 0.2, roomEmissivity: 0.8, side: 'room' };
    expect(filmFault(sheet)?.why).toMatch(/solarTransmittance \+ frontReflectance/);
    expect(filmFault({ ...sheet, frontReflectance: 0.01 })?.why).toMatch(/frontReflectance must be at least/);
    expect(filmFault({ ...sheet, frontReflectance: 0.3, backReflectance: 0 })?.why).toMatch(/backReflectance must be at least/);
    expect(filmFault({ ...sheet, roomEmissivity: 1.2 })?.why).toMatch(/roomEmissivity/);
    expect(filmFault({ ...sheet, frontReflectance: 0.3 })).toBeNull();
  });

  it('gives a coated pane its own figures back at normal incidence though the fits do not', () => {
    expect(coatedCurve('bronze', 0).through).toBeCloseTo(1.01175, 5);
    const pane = { solarTransmittance: 0.24, frontReflectance: 0.38, backReflectance: 0.36 };
    expect(coatedPaneAt(pane, 0)).toEqual(pane);
    expect(coatedPaneAt(pane, 90).solarTransmittance).toBe(0);
  });

  it('reads the hour loop’s table within 0.0005 of the angle itself', () => {
    const optics = glazingOptics(double(CLEAR_3_MM));
    for (let a = 0; a < 88; a += 1.7) {
      const place = Math.cos((a * Math.PI) / 180) * COSINE_STEPS;
      const step = Math.floor(place);
      const read = optics.gainByCosine[step]! + (place - step) * (optics.gainByCosine[step + 1]! - optics.gainByCosine[step]!);
      expect(Math.abs(read - optics.solarHeatGainAt(a))).toBeLessThan(0.0005);
    }
  });

  it('refuses panes and gaps that do not fit', () => {
    expect(() => glazingOptics({ key: 'x', panes: [CLEAR_3_MM], gaps: [gap] })).toThrow(RangeError);
    expect(() => glazingOptics({ key: 'x', panes: [], gaps: [] })).toThrow(RangeError);
    expect(() => glazingOptics({ key: 'x', panes: [{ ...CLEAR_3_MM, frontReflectance: 0.3 }], gaps: [] })).toThrow(/at most 1/);
    expect(() => stacked([])).toThrow(RangeError);
  });
});

describe('a film', () => {
  // Beyond 80° filmed glass follows fitted curves and bare glass a formula, and the two may cross; the beam there is under a fifth of the sun's.
  it('never lets in more sun: filmed gain at or under bare gain at every angle to 80° and over the half-space, for films that cut single clear', () => {
    fc.assert(
      fc.property(film, glass, fc.double({ min: 0, max: 80, noNaN: true }), (sheet, pane, incidence_deg) => {
        fc.pre(glazingOptics(SINGLE_CLEAR_3_MM, sheet).solarHeatGain < 0.8);
        for (const makeUp of [{ key: 'single', panes: [pane], gaps: [] }, double(pane), double(CLEAR_3_MM, pane)]) {
          const [bareGlass, filmedGlass] = [glazingOptics(makeUp), glazingOptics(makeUp, sheet)];
          const [bare, filmed] = [bareGlass.at(incidence_deg), filmedGlass.at(incidence_deg)];
          expect(filmedGlass.hemisphericalSolarHeatGain).toBeLessThanOrEqual(bareGlass.hemisphericalSolarHeatGain);
          expect(filmed.solarTransmittance).toBeLessThanOrEqual(bare.solarTransmittance + 1e-9);
          expect(filmed.solarHeatGain).toBeLessThanOrEqual(bare.solarHeatGain + 1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('a glazing known by its label', () => {
  it('meets the label in SHGC and U for sealed units and is marked assumed', () => {
    for (const label of [
      { solarHeatGain: 0.25, uFactor_W_m2K: 1.7 },
      { solarHeatGain: 0.6, uFactor_W_m2K: 2.8 },
      { solarHeatGain: 0.3, uFactor_W_m2K: 1 },
    ]) {
      const made = labelledGlazing(label);
      expect(Math.abs(made.assumed.solarHeatGainError)).toBeLessThan(0.001);
      expect(Math.abs(made.assumed.uFactorError_W_m2K)).toBeLessThan(0.01);
      expect(glazingOptics(made).solarHeatGain).toBeCloseTo(label.solarHeatGain, 3);
      expect(made.assumed.sentence).toMatch(/assumed from the label/);
    }
  });

  it('says by how much it misses a label no glass of the family can meet', () => {
    const made = labelledGlazing({ solarHeatGain: 0.85, uFactor_W_m2K: 2.8 });
    expect(made.assumed.solarHeatGainError).toBeLessThan(-0.05);
    expect(made.panes[0]?.solarTransmittance).toBeCloseTo(0.834, 6);
  });

  it('takes a label too dark for a tint as reflective glass', () => {
    expect(labelledGlazing({ solarHeatGain: 0.3, uFactor_W_m2K: 5.9 }).assumed.family).toMatch(/reflective/);
    expect(labelledGlazing({ solarHeatGain: 0.62, uFactor_W_m2K: 5.9 }).assumed.family).toMatch(/tinted/);
  });

  it('takes the frame off a label of the whole window', () => {
    const whole = labelledGlazing({ solarHeatGain: 0.25, uFactor_W_m2K: 1.7, frameShare: 0.2 });
    expect(glazingOptics(whole).solarHeatGain).toBeCloseTo((0.25 - 0.02) / 0.8, 3);
  });

  it('refuses labels outside what glass can be', () => {
    expect(() => labelledGlazing({ solarHeatGain: 0, uFactor_W_m2K: 2 })).toThrow(RangeError);
    expect(() => labelledGlazing({ solarHeatGain: 0.4, uFactor_W_m2K: 0 })).toThrow(RangeError);
  });
});
