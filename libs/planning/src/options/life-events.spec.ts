import type { Phase } from '#calc';
import { filmOption, planTermsOf } from '../../../../test/portfolios/film-option.js';
import { optionFlows, phaseValue } from './value.js';

const phase: Phase = { id: 'O/2', ownerEntity: 'O', name: '2', firstDay: '2027-07-01', lastDay: '2028-06-30', cap_cents: 0, crewMinutes: null };
const segment = (firstYear: number, plant: 'present' | 'after replacement', of: { readonly gone: number; readonly cooling_cents: number; readonly heating_cents: number }) => ({
  firstYear, plant, windowsGone: of.gone, saving: { coolingElectricity_kWh: 0, cooling_cents: of.cooling_cents, addedHeating_cents: of.heating_cents, addedHeating_kWh: 0 },
});

describe('a line with everything that can happen to it', () => {
  // Put on in the second year of the study, six years of life; plant replaced 2028, windows of it replaced 2030, building sold 2032; 1 % of the
  // effect lost a year, prices up 2 % a year real, 3 % real discount. Flow of film year a, study year t = a + 1: net × 0.99^(a−1) × 1.02^t.
  const option = filmOption({
    filmLife_yr: 6,
    segments: [
      segment(2026, 'present', { gone: 0, cooling_cents: 3_000, heating_cents: 200 }),
      segment(2028, 'after replacement', { gone: 0, cooling_cents: 2_000, heating_cents: 150 }),
      segment(2030, 'after replacement', { gone: 1, cooling_cents: 1_200, heating_cents: 100 }),
    ],
  });
  const at = { terms: planTermsOf({ realEscalation: 0.02, filmDegradation_1_yr: 0.01 }), endYear: 2032 };

  it.each([
    [2, 2_800 * 1.02 ** 2, 2_913.12],
    [3, 1_850 * 0.99 * 1.02 ** 3, 1_943.6025],
    [4, 1_850 * 0.99 ** 2 * 1.02 ** 4, 1_962.6498],
    [5, 1_100 * 0.99 ** 3 * 1.02 ** 5, 1_178.4173],
    [6, 1_100 * 0.99 ** 4 * 1.02 ** 6, 1_189.9658],
    [7, 0, 0],
  ])('flow at the end of study year %i', (year, worked, printed) => {
    const flow = optionFlows(option, phase, at).whole_cents[year];
    expect(flow).toBeCloseTo(worked, 6);
    expect(flow).toBeCloseTo(printed, 3);
  });

  it('pays in the year of the work and nowhere else, and is worth 8,281.45 − 10,000 / 1.03', () => {
    expect(optionFlows(option, phase, at).cost_cents).toEqual([0, 10_000, 0, 0, 0, 0, 0, 0]);
    // 2,745.895 + 1,778.672 + 1,743.789 + 1,016.513 + 996.578 = 8,281.446
    expect(phaseValue(option, phase, at).whole_cents).toBeCloseTo(-1_427.29, 2);
  });
});
