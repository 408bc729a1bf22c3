import type { PayerRule } from '../portfolio/index.js';
import {
  depreciation, lifeCycle, modifiedRateOfReturn, nominalRate, paybackYears, payerShares, presentValue, projectFlows, projectLifeCycle, rateOfReturn, realRate, rebate_cents, singlePresentValue,
  uniformPresentValue, yearlyStream, type Project, type StreamTerms,
} from './index.js';

const real = { basis: 'real', discountRate: 0.1 } as const;

describe('payback by hand', () => {
  it.each([
    ['four quarters', [-100, 25, 25, 25, 25], 0, 4],
    ['between the years', [-100, 40, 40, 40], 0, 2.5],
    ['at once in the first', [-100, 400], 0, 0.25],
    // 110 in a year at 10 % is worth 100 today.
    ['discounted', [-100, 110], 0.1, 1],
    ['discounted, two years', [-100, 55, 60.5], 0.1, 2],
  ] as [string, number[], number, number][])('%s', (...[, flows, rate, years]) => {
    expect(paybackYears(flows, rate)).toBeCloseTo(years, 9);
  });

  it('says why there is none', () => {
    expect(paybackYears([-100, 40, 40])).toEqual({ why: 'not paid back within 2 years' });
    expect(paybackYears([0, 5])).toHaveProperty('why');
    expect(paybackYears([])).toHaveProperty('why');
    expect(() => paybackYears([-1, 1], -1)).toThrow(RangeError);
  });
});

describe('rebates by hand', () => {
  const terms = { rate_cents_m2: 100, cap_cents: null, costShare: null };
  it.each([
    ['by area', { area_m2: 3, cost_cents: 1000 }, terms, 300],
    ['to the cap', { area_m2: 3, cost_cents: 1000 }, { ...terms, cap_cents: 250 }, 250],
    ['to a share of the cost', { area_m2: 3, cost_cents: 1000 }, { ...terms, costShare: 0.2 }, 200],
    ['never above the cost', { area_m2: 30, cost_cents: 1000 }, terms, 1000],
    ['nothing for nothing', { area_m2: 0, cost_cents: 0 }, terms, 0],
    ['a cap of nothing', { area_m2: 3, cost_cents: 1000 }, { ...terms, cap_cents: 0 }, 0],
    ['a share of nothing, a share of all', { area_m2: 3, cost_cents: 1000 }, { ...terms, costShare: 0 }, 0],
    ['at the whole cost', { area_m2: 30, cost_cents: 1000 }, { ...terms, costShare: 1 }, 1000],
    ['no rate', { area_m2: 3, cost_cents: 1000 }, { ...terms, rate_cents_m2: 0 }, 0],
  ])('%s', (...[, project, of, cents]) => expect(rebate_cents(project, of)).toBe(cents));

  it.each([
    [{ area_m2: -1, cost_cents: 1 }, terms], [{ area_m2: 1, cost_cents: -1 }, terms], [{ area_m2: 1, cost_cents: 1 }, { ...terms, rate_cents_m2: -1 }],
    [{ area_m2: 1, cost_cents: 1 }, { ...terms, cap_cents: -1 }], [{ area_m2: 1, cost_cents: 1 }, { ...terms, costShare: -0.1 }], [{ area_m2: 1, cost_cents: 1 }, { ...terms, costShare: 1.1 }],
    [{ area_m2: Number.NaN, cost_cents: 1 }, terms],
  ])('refuses %j', (project, of) => expect(() => rebate_cents(project, of)).toThrow(RangeError));
});

describe('who keeps a saving, at the ends', () => {
  const rule = (more: Partial<PayerRule>): PayerRule => ({ id: 'r', kind: 'ratio', ownerShare: 0, resetLag_yr: 0, vacancyShare: 0, ...more });
  it('all or nothing', () => {
    expect(payerShares(rule({}), 1)).toEqual({ owner: 0, tenant: 1 });
    expect(payerShares(rule({ ownerShare: 1 }), 1)).toEqual({ owner: 1, tenant: 0 });
    expect(payerShares(rule({ vacancyShare: 1 }), 1)).toEqual({ owner: 1, tenant: 0 });
    // A quarter empty; of the rest half the year late; then a fifth: 0.25 + 0.75 × (0.5 + 0.5 × 0.2) = 0.7.
    expect(payerShares(rule({ ownerShare: 0.2, resetLag_yr: 1.5, vacancyShare: 0.25 }), 2).owner).toBeCloseTo(0.7, 12);
    expect(payerShares(rule({ resetLag_yr: 9 }), 1).owner).toBe(1);
  });
  it.each([[{ ownerShare: -0.1 }, 1], [{ vacancyShare: 1.1 }, 1], [{ vacancyShare: -0.1 }, 1], [{ resetLag_yr: -1 }, 1], [{}, 0], [{}, 1.5]])('refuses %j in year %p', (more, age) => {
    expect(() => payerShares(rule(more), age)).toThrow(RangeError);
  });
});

describe('write-off at the ends', () => {
  it('nothing is nothing in every year, straight lines are even, an expense is at once', () => {
    expect(depreciation(0, { method: 'expense' })).toEqual([{ share: 1, cents: 0 }]);
    expect(depreciation(300_000, { method: 'straight-line', years: 15 }).map(({ cents }) => cents)).toEqual(Array(15).fill(20_000));
    expect(depreciation(500, { method: 'straight-line', years: 1 })).toEqual([{ share: 1, cents: 500 }]);
    for (const monthInService of [1, 6, 7, 12]) expect(depreciation(123_457, { method: 'mid-month-27.5', monthInService }).reduce((sum, { cents }) => sum + cents, 0)).toBe(123_457);
  });
  it('refuses what no tax year has', () => {
    for (const years of [0, 1.5, -1]) expect(() => depreciation(1, { method: 'straight-line', years })).toThrow(RangeError);
    for (const monthInService of [0, 13, 1.5]) expect(() => depreciation(1, { method: 'mid-month-27.5', monthInService })).toThrow(RangeError);
    expect(() => depreciation(-1, { method: 'expense' })).toThrow(RangeError);
    expect(() => depreciation(1.5, { method: 'expense' })).toThrow(RangeError);
  });
});

describe('rates and factors at the ends', () => {
  it('worked by hand', () => {
    expect(presentValue([-100, 110], 0.1)).toBeCloseTo(0, 9);
    expect(presentValue([5], 0.3)).toBe(5);
    expect(uniformPresentValue(0, 7)).toBe(7);
    expect(uniformPresentValue(0.1, 0)).toBe(0);
    expect(uniformPresentValue(0.1, 2)).toBeCloseTo(1 / 1.1 + 1 / 1.21, 12);
    // The first year's amount has risen once already.
    expect(uniformPresentValue(0.1, 1, 0.05)).toBeCloseTo(1.05 / 1.1, 12);
    expect(singlePresentValue(0.25, 2)).toBeCloseTo(0.64, 12);
    expect(nominalRate(0.03, 0.02)).toBeCloseTo(0.0506, 12);
    expect(realRate(0.0506, 0.02)).toBeCloseTo(0.03, 12);
    expect(rateOfReturn([-100, 0, 121])).toBeCloseTo(0.1, 9);
    // 121 at 10 % for no time, 100 today: 21 % in one year.
    expect(modifiedRateOfReturn([-100, 121], { financeRate: 0.1, reinvestRate: 0.1 })).toBeCloseTo(0.21, 12);
    expect(modifiedRateOfReturn([-100, 110, 0], { financeRate: 0.5, reinvestRate: 0.1 })).toBeCloseTo(0.1, 12);
  });
  it('refused', () => {
    for (const rate of [-1, -2, Infinity, Number.NaN]) expect(() => singlePresentValue(rate, 1)).toThrow(RangeError);
    for (const years of [-1, 0.5]) expect(() => singlePresentValue(0.1, years)).toThrow(RangeError);
    expect(() => lifeCycle([-1], real)).toThrow(RangeError);
    expect(() => realRate(0.1, -1)).toThrow(RangeError);
    expect(() => nominalRate(-1, 0.1)).toThrow(RangeError);
    expect(modifiedRateOfReturn([-100], { financeRate: 0, reinvestRate: 0 })).toHaveProperty('why');
    expect(modifiedRateOfReturn([100, 1], { financeRate: 0, reinvestRate: 0 })).toEqual({ why: 'nothing is paid out, so there is no rate of return' });
    expect(modifiedRateOfReturn([-100, 0], { financeRate: 0, reinvestRate: 0 })).toEqual({ why: 'nothing comes back, so there is no rate of return' });
  });
});

describe('a project by hand', () => {
  const project: Project = { cost_cents: 1000, rebate_cents: 200, firstYearSaving_cents: 500, yearlyPenalty_cents: 60, escalation: 0.1, degradation: 0.5, life_years: 2, removal_cents: 30 };
  // Year 1: 440 × 1.1 = 484; year 2: 440 × 1.21 × 0.5 − 30 = 236.2.
  it('rises with prices from the first year, ages from the second, and pays for taking off in the last', () => {
    expect(projectFlows(project)).toEqual([-800, expect.closeTo(484, 9), expect.closeTo(236.2, 9)]);
  });
  it('is measured as the handbook measures it', () => {
    const { npv_cents, sir, simplePayback_years, withinLife } = projectLifeCycle(project, real);
    const savings = 484 / 1.1 + 236.2 / 1.21;
    expect(npv_cents).toBeCloseTo(savings - 800, 9);
    expect(sir).toBeCloseTo(savings / 800, 12);
    expect(simplePayback_years).toBeCloseTo(800 / 484, 12);
    expect(withinLife).toBe(true);
  });
  it.each([[{ life_years: 0 }], [{ degradation: -0.1 }], [{ degradation: 1.1 }], [{ rebate_cents: -1 }], [{ removal_cents: -1 }], [{ cost_cents: Infinity }], [{ firstYearSaving_cents: Number.NaN }], [{ escalation: -1 }]])(
    'refuses %j', (wrong) => expect(() => projectFlows({ ...project, ...wrong })).toThrow(RangeError),
  );
  it('may age wholly, or not at all', () => {
    expect(projectFlows({ ...project, degradation: 1 })[2]).toBeCloseTo(-30, 9);
    expect(projectFlows({ ...project, degradation: 0 })[2]).toBeCloseTo(440 * 1.21 - 30, 9);
    expect(projectFlows({ cost_cents: 0, firstYearSaving_cents: 1, life_years: 1 })).toEqual([expect.closeTo(0, 12), 1]);
  });
});

describe('a stream at the ends', () => {
  const terms: StreamTerms = { studyStartYear: 2026, startsAfter_years: 0, life_years: 2, endYear: null };
  const state = { fromYear: 2026, saving_cents: 100, heating_cents: 10 };
  it.each([
    [{ life_years: 0 }], [{ life_years: 1.5 }], [{ startsAfter_years: 0.5 }], [{ degradation: -0.1 }], [{ degradation: 1.1 }],
    [{ windowLosses: [{ fromYear: 2026, share: 1.1 }] }], [{ windowLosses: [{ fromYear: 2026, share: -0.1 }] }],
  ])('refuses %j', (wrong) => expect(() => yearlyStream([state], { ...terms, ...wrong })).toThrow(RangeError));
  it('refuses two states of one year, and figures that are none', () => {
    expect(() => yearlyStream([state, state], terms)).toThrow(RangeError);
    expect(() => yearlyStream([{ ...state, heating_cents: Number.NaN }], terms)).toThrow(RangeError);
    expect(() => yearlyStream([{ ...state, saving_cents: Infinity }], terms)).toThrow(RangeError);
  });
  it('may lose every window, or none, and age wholly', () => {
    expect(yearlyStream([state], { ...terms, windowLosses: [{ fromYear: 2027, share: 1 }] }).flows_cents).toEqual([0, 90, 0]);
    expect(yearlyStream([state], { ...terms, windowLosses: [{ fromYear: 2027, share: 0 }] }).flows_cents).toEqual([0, 90, 90]);
    expect(yearlyStream([state], { ...terms, degradation: 1 }).flows_cents.slice(0, 2)).toEqual([0, 90]);
    expect(yearlyStream([state], { ...terms, endYear: 2026 }).flows_cents.every((flow) => flow === 0)).toBe(true);
  });
});
