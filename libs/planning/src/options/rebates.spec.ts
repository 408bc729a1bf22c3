import type { Rebate } from '#calc';
import { filmOption } from '../../../../test/portfolios/film-option.js';
import { projectRebates } from '../review/project-rebates.js';
import type { PricedPhase } from '../rolls/price-by-rolls.js';
import { optionRebates, rebateIn, type RebateCase } from './rebates.js';

const offer = (change: Partial<Rebate> = {}): Rebate => ({
  id: 'R1', building: null, rate_cents_m2: 1_000, cap_cents: null, costShare: null, sectors: null, solarHeatGainBeforeAtLeast: null, solarHeatGainAfterAtMost: null,
  areaAtLeast_m2: null, needsPreApproval: false, preApprovedOn: null, deadline: null, inventoryRow: { file: 'rebates.csv', row: 2 }, ...change,
});
const gains = (glazing: string, film: string) => ({ before: glazing === 'single' ? 0.8 : 0.3, after: film === 'dark' ? 0.3 : 0.5 });
const windows = [
  { azimuth_deg: 270, glass_m2: 4, glazing: 'single', film: 'dark' },
  { azimuth_deg: 0, glass_m2: 2, glazing: 'single', film: 'dark' },
  { azimuth_deg: 180, glass_m2: 3, glazing: 'low-e', film: 'dark' },
];
const option: RebateCase = { building: 'B1', cost_cents: 20_000, windows };
const given = (change: Partial<Rebate>): number => optionRebates(option, { rebates: [offer(change)], gains })[0]?.cents ?? 0;

describe('what a fund gives towards an option', () => {
  it('pays by the glass that meets its terms', () => {
    expect(given({})).toBe(9_000);
    expect(given({ sectors: [{ from_deg: 180, to_deg: 300 }] })).toBe(7_000);
    expect(given({ sectors: [{ from_deg: 315, to_deg: 45 }] })).toBe(2_000);
    expect(given({ solarHeatGainBeforeAtLeast: 0.6 })).toBe(6_000);
    expect(given({ solarHeatGainAfterAtMost: 0.25 })).toBe(0);
    expect(given({ building: 'B2' })).toBe(0);
  });

  it('never passes its cap or its share of the cost', () => {
    expect(given({ cap_cents: 5_000 })).toBe(5_000);
    expect(given({ costShare: 0.25 })).toBe(5_000);
  });

  const of = (...rebates: Rebate[]) => optionRebates(option, { rebates, gains });
  const phase = { lastDay: '2027-06-30' };

  it('counts in a phase only when its letter is there and the phase ends before its deadline', () => {
    expect(rebateIn(of(offer({ needsPreApproval: true })), phase)).toBeNull();
    expect(rebateIn(of(offer({ needsPreApproval: true, preApprovedOn: '2027-01-01' })), phase)?.cents).toBe(9_000);
    expect(rebateIn(of(offer({ needsPreApproval: true, preApprovedOn: '2027-07-01' })), phase)).toBeNull();
    expect(rebateIn(of(offer({ deadline: '2027-06-29' })), phase)).toBeNull();
    expect(rebateIn(of(offer({ deadline: '2027-06-30' })), phase)?.cents).toBe(9_000);
  });

  it('takes the best of several offers, not their sum', () => {
    expect(rebateIn(of(offer(), offer({ id: 'R2', rate_cents_m2: 1_200 })), phase)?.rebate).toBe('R2');
  });
});

describe('what a fund gives a project', () => {
  const line = (dwelling: string, rebate: Rebate) => ({ option: filmOption({ dwelling, rebates: of2(rebate) }), phase: 0, value: { phase: 'O/1', whole_cents: 0, owner_cents: 0 } });
  const of2 = (rebate: Rebate) => optionRebates({ building: 'B1', cost_cents: 10_000, windows: [windows[0]!] }, { rebates: [rebate], gains });
  const phaseOf = (rebate: Rebate): PricedPhase => ({ phase: { id: 'O/1', firstDay: '2026-07-01', lastDay: '2027-06-30' }, lines: [line('B1/1', rebate), line('B1/2', rebate)] }) as unknown as PricedPhase;

  it('holds its cap once for the work of a building in a phase', () => {
    const fund = offer({ cap_cents: 5_000 });
    expect(projectRebates([phaseOf(fund)], [fund])).toMatchObject([{ building: 'B1', phase: 'O/1', area_m2: 8, byLine_cents: 8_000, cents: 5_000 }]);
  });

  it('is nothing below the least area, and all of it where the lines reach it together', () => {
    const [large, small] = [offer({ areaAtLeast_m2: 9 }), offer({ areaAtLeast_m2: 8 })];
    expect(projectRebates([phaseOf(large)], [large])[0]).toMatchObject({ cents: 0 });
    expect(projectRebates([phaseOf(large)], [large])[0]!.why).toContain('least area');
    expect(projectRebates([phaseOf(small)], [small])[0]).toMatchObject({ cents: 8_000, why: null });
  });
});
