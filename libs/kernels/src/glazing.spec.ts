import { kernel as glazing } from './glazing.js';
import { InputFault } from './kernel.js';
import { kernel as meterPair } from './meter-pair.js';
import { kernel as paneStress } from './pane-stress.js';
import { kernelRoom } from './room.js';

const room = kernelRoom();
const clear = { solarTransmittance: 0.834, frontReflectance: 0.075, backReflectance: 0.075 };
const silver = { solarTransmittance: 0.24, frontReflectance: 0.38, backReflectance: 0.38, roomEmissivity: 0.75, side: 'room' };

describe('the glazing kernel', () => {
  it('takes panes, a film and angles and gives arrays by angle, with the filmed pane', () => {
    const result = glazing.run({ panes: [clear, clear], film: silver, incidence_deg: [0, 60] }, room) as {
      solarHeatGain: number[];
      layerAbsorptance: number[][];
      filmedPane: { solarTransmittance: number };
      filmBenefit: { survives: number };
      uFactor_W_m2K: number;
    };
    expect(result.solarHeatGain).toHaveLength(2);
    expect(result.solarHeatGain[0]).toBeCloseTo(0.4296, 3);
    expect(result.layerAbsorptance).toHaveLength(2);
    expect(result.layerAbsorptance[0]).toHaveLength(2);
    expect(result.filmedPane.solarTransmittance).toBeCloseTo(0.24, 6);
    expect(result.filmBenefit.survives).toBeCloseTo(0.73, 2);
  });

  it('takes surface coefficients as they are given', () => {
    const result = glazing.run({ panes: [clear], films: { outdoor_W_m2K: 23, indoor_W_m2K: 8 } }, room) as { inwardFractions: number[] };
    expect(result.inwardFractions[0]).toBeCloseTo(8 / 31, 9);
  });

  it('gives the same for a KEY as for its panes', () => {
    const named = glazing.run({ glazing: 'single-clear-3' }, room) as { solarHeatGain: number[] };
    expect(named.solarHeatGain).toEqual((glazing.run({ panes: [clear] }, room) as { solarHeatGain: number[] }).solarHeatGain);
  });

  it.each<[string, unknown, string]>([
    ['an unknown field', { panes: [{ ...clear, colour: 'bronze' }] }, '/panes/0/colour'],
    ['an unknown KEY', { glazing: 'stained' }, '/glazing'],
    ['no glass', {}, '/panes'],
    ['gaps that do not fit', { panes: [clear], gaps: [{ resistance_m2K_W: 0.17 }] }, '/gaps'],
    ['an angle behind the glass', { panes: [clear], incidence_deg: [91] }, '/incidence_deg/0'],
    ['shares above 1', { panes: [{ ...clear, frontReflectance: 0.3 }] }, ''],
    ['an unknown film', { panes: [clear], film: 'gold' }, '/film'],
  ])('points at %s', (_, value, pointer) => {
    const run = (): unknown => glazing.run(value, room);
    expect(run).toThrow(InputFault);
    try {
      run();
    } catch (fault) {
      expect((fault as InputFault).pointer).toBe(pointer);
    }
  });
});

interface Pair {
  readonly cutInHeatGain: { readonly best: number };
  readonly solarHeatGain: { readonly best: number; readonly standardUncertainty: number };
  readonly warnings: readonly string[];
}

describe('the meter-pair kernel', () => {
  const bare = { bareTransmittance: 0.834, bareSolarHeatGain: 0.86, unit: 'Btu/h.ft2' };

  it('says why a cut of two thirds in what the meter sees is less in heat, and flags a reading no window plane gives', () => {
    const result = meterPair.run({ bare: 300, filmed: 100, ...bare }, room) as Pair & { cutInReading: number };
    expect(result.cutInReading).toBeCloseTo(2 / 3, 6);
    expect(result.cutInHeatGain.best).toBeCloseTo(0.5, 2);
    expect(result.warnings[0]).toMatch(/does not feel what the glass takes up/);
    expect(result.warnings.some((warning) => warning.includes('implausible in the window plane'))).toBe(true);
  });

  it('does not flag a strong reading that a window plane can give', () => {
    const result = meterPair.run({ bare: 210, filmed: 70, ...bare }, room) as Pair;
    expect(result.warnings).toHaveLength(1);
    expect(result.solarHeatGain.best).toBeCloseTo(0.43, 2);
    expect(result.solarHeatGain.standardUncertainty).toBeCloseTo(0.036, 3);
  });

  it('reads a double unit named by KEY with the outer pane apart: the same pair means a smaller cut', () => {
    const single = meterPair.run({ bare: 600, filmed: 200, unit: 'W/m2', glazing: 'single-clear-3' }, room) as Pair;
    const double = meterPair.run({ bare: 500, filmed: 166.67, unit: 'W/m2', glazing: 'double-clear-3' }, room) as Pair;
    expect(double.cutInHeatGain.best).toBeLessThan(single.cutInHeatGain.best - 0.1);
  });

  it('holds a reading against the clear day of its place and facade: 225 is too much for a west wall in July at 40° N, not for a south wall in January', () => {
    const flagged = (site: object): boolean =>
      (meterPair.run({ bare: 225, filmed: 75, ...bare, site }, room) as Pair).warnings.some((warning) => warning.includes('implausible'));
    expect(flagged({ latitude_deg: 40, date: '2026-07-21', azimuth_deg: 270 })).toBe(true);
    expect(flagged({ latitude_deg: 40, date: '2026-01-21', azimuth_deg: 180 })).toBe(false);
  });

  it('asks for the bare glass', () => {
    expect(() => meterPair.run({ bare: 300, filmed: 100, unit: 'W/m2' }, room)).toThrow(/bareTransmittance or glazing/);
  });
});

describe('the pane-stress kernel', () => {
  it('judges by the worst of the named cases and says which: the cold, calm, sunny morning', () => {
    const result = paneStress.run({ panes: [clear], film: silver, existingFilm: 'none' }, room) as { weatherCase: string; outcome: string; stress_MPa: number };
    expect(result.weatherCase).toBe('cold-sunny-calm');
    expect(result.stress_MPa).toBeCloseTo(17.3, 1);
    expect(result.outcome).toBe('ask-first');
  });

  it('judges by the listed rules alone when no weather is looked at', () => {
    const result = paneStress.run({ panes: [clear], film: silver, weatherCase: 'none' }, room) as { outcome: string; stress_MPa: number | null };
    expect(result).toMatchObject({ outcome: 'no-listed-trigger', stress_MPa: null });
  });

  it('asks for written consent on dark tint, and eases it for a tempered pane', () => {
    const bronze = { solarTransmittance: 0.49, frontReflectance: 0.05, backReflectance: 0.05, thickness_mm: 6 };
    expect(paneStress.run({ panes: [bronze], film: silver }, room)).toMatchObject({ outcome: 'written-consent-needed' });
    expect(paneStress.run({ panes: [bronze], film: silver, strength: 'tempered' }, room)).toMatchObject({ outcome: 'no-listed-trigger' });
  });
});
