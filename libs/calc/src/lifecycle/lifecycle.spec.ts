import fc from 'fast-check';
import type { PayerRule } from '../portfolio/index.js';
import {
  depreciation, isFigure, lifeCycle, modifiedRateOfReturn, nominalRate, paybackYears, payerShares, presentValue, projectFlows, projectLifeCycle, rateOfReturn, ratesOfReturn, realRate,
  singlePresentValue, uniformPresentValue, yearlyStream, type Project, type StreamTerms, rebate_cents } from './index.js';

const real = { basis: 'real', discountRate: 0.03 } as const;
const rate = fc.double({ min: 0, max: 0.2, noNaN: true });
const money = fc.double({ min: 1, max: 1e6, noNaN: true });

describe('present value', () => {
  it('of a level stream is the factor times the amount', () => {
    fc.assert(fc.property(money, rate, fc.integer({ min: 1, max: 40 }), (amount, d, years) => {
      const flows = [0, ...Array<number>(years).fill(amount)];
      expect(presentValue(flows, d) / (amount * uniformPresentValue(d, years))).toBeCloseTo(1, 10);
    }));
  });

  it('of a rising stream follows the closed form, and the number of years where both rates agree', () => {
    expect(uniformPresentValue(0.05, 12, 0.02)).toBeCloseTo((1.02 / 0.03) * (1 - (1.02 / 1.05) ** 12), 10);
    expect(uniformPresentValue(0.04, 15, 0.04)).toBeCloseTo(15, 10);
    expect(singlePresentValue(0.07, 0)).toBe(1);
  });

  it('real and nominal agree when prices rise evenly: the same flows in money of the day at the nominal rate are worth the same', () => {
    fc.assert(fc.property(rate, rate, money, (d, inflation, amount) => {
      const flows = [-amount, amount / 3, amount / 3, amount / 2];
      const ofTheDay = flows.map((flow, year) => flow * (1 + inflation) ** year);
      expect(presentValue(ofTheDay, nominalRate(d, inflation)) / amount).toBeCloseTo(presentValue(flows, d) / amount, 9);
      expect(realRate(nominalRate(d, inflation), inflation)).toBeCloseTo(d, 12);
    }));
  });

  it('refuses a rate of -100 % and flows that are no numbers', () => {
    expect(() => presentValue([1], -1)).toThrow('rate must be above -1');
    expect(() => presentValue([Number.NaN], 0.03)).toThrow('finite');
    expect(() => uniformPresentValue(0.03, 1.5)).toThrow('whole number');
  });
});

describe('rate of return', () => {
  it('makes the flows worth nothing', () => {
    fc.assert(fc.property(money, fc.array(money, { minLength: 1, maxLength: 30 }), (cost, back) => {
      const flows = [-cost, ...back];
      const found = rateOfReturn(flows);
      if (!isFigure(found)) return;
      expect(Math.abs(presentValue(flows, found)) / (cost + back.reduce((a, b) => a + b, 0))).toBeLessThan(1e-9);
    }));
  });

  it('finds every rate that was put in: products of (x − 1/(1 + r))', () => {
    // (1 − 1.1x)(1 − 1.25x)(1 − 1.6x): 10, 25 and 60 %.
    const flows = [-1, 3.95, -5.135, 2.2];
    ratesOfReturn(flows).forEach((found, i) => expect(found).toBeCloseTo([0.1, 0.25, 0.6][i]!, 9));
    expect(ratesOfReturn(flows)).toHaveLength(3);
    expect(rateOfReturn(flows)).toEqual({ why: 'several rates make the flows worth zero: 10.00 %, 25.00 %, 60.00 %' });
  });

  it('finds a rate that the value only touches', () => {
    // (1 − 1.2x)²: worth zero at 20 % and never below.
    expect(ratesOfReturn([1, -2.4, 1.44])).toHaveLength(1);
    expect(ratesOfReturn([1, -2.4, 1.44])[0]).toBeCloseTo(0.2, 6);
  });

  it.each([
    [[0, 0, 0], 'any rate'],
    [[5, 5], 'nothing is paid out'],
    [[-5, -5], 'nothing comes back'],
    [[-72_000, ...Array<number>(9).fill(2900), -5100], 'no rate'],
  ])('says why there is none: %j', (flows, why) => {
    expect(rateOfReturn(flows)).toEqual({ why: expect.stringContaining(why) as unknown });
  });

  it('of sixty years with outlays between has each of its rates at a change of sign', () => {
    const flows = Array.from({ length: 61 }, (_, year) => (year === 0 ? -100 : year % 20 === 0 ? -30 : 9));
    const rates = ratesOfReturn(flows);
    const signs = Array.from({ length: 1190 }, (_, i) => Math.sign(presentValue(flows, -0.98 + i / 1000)));
    expect(rates).toHaveLength(signs.filter((sign, i) => i > 0 && sign !== signs[i - 1]).length);
    for (const found of rates) expect(presentValue(flows, found - 1e-6) * presentValue(flows, found + 1e-6)).toBeLessThan(0);
  });

  it('modified: the discount rate itself where the flows are worth nothing at it', () => {
    fc.assert(fc.property(rate, money, (d, amount) => {
      const flows = [-amount, 0, 0, amount * (1 + d) ** 3];
      expect(modifiedRateOfReturn(flows, { financeRate: d, reinvestRate: d })).toBeCloseTo(d, 9);
    }));
    expect(modifiedRateOfReturn([-1, -1], { financeRate: 0, reinvestRate: 0 })).toHaveProperty('why');
  });
});

describe('measures of one study agree with each other', () => {
  const project: fc.Arbitrary<Project> = fc.record({
    cost_cents: money,
    firstYearSaving_cents: fc.double({ min: -1e4, max: 1e6, noNaN: true }),
    yearlyPenalty_cents: fc.double({ min: 0, max: 1e4, noNaN: true }),
    escalation: fc.double({ min: -0.02, max: 0.05, noNaN: true }),
    degradation: fc.double({ min: 0, max: 0.05, noNaN: true }),
    life_years: fc.integer({ min: 1, max: 30 }),
    removal_cents: fc.double({ min: 0, max: 1e5, noNaN: true }),
  });

  it('net value above zero, ratio above one and adjusted rate above the discount rate say the same', () => {
    fc.assert(fc.property(project, (of) => {
      const { npv_cents, sir, airr } = projectLifeCycle(of, real);
      if (!isFigure(sir) || Math.abs(npv_cents) < 1e-6 * of.cost_cents) return;
      expect(sir > 1).toBe(npv_cents > 0);
      if (isFigure(airr)) expect(airr > real.discountRate).toBe(npv_cents > 0);
    }));
  });

  it('a project is worth what its flows are worth', () => {
    fc.assert(fc.property(project, (of) => {
      const flows = projectFlows(of);
      expect(projectLifeCycle(of, real).npv_cents).toBe(lifeCycle(flows, real).npv_cents);
      expect(flows).toHaveLength(of.life_years + 1);
    }));
  });

  it('discounted payback is never sooner than simple payback', () => {
    fc.assert(fc.property(money, fc.array(money, { minLength: 1, maxLength: 20 }), rate, (cost, back, d) => {
      const [simple, discounted] = [paybackYears([-cost, ...back]), paybackYears([-cost, ...back], d)];
      if (isFigure(discounted)) expect(isFigure(simple) && simple <= discounted + 1e-9).toBe(true);
    }));
  });

  it('what cannot be said says why', () => {
    const free = lifeCycle([0, 5], real);
    expect([free.sir, free.airr, free.simplePayback_years]).toEqual(Array(3).fill({ why: expect.any(String) as unknown }));
    const loss = projectLifeCycle({ cost_cents: 100, firstYearSaving_cents: 0, yearlyPenalty_cents: 5, life_years: 3 }, real);
    expect(loss).toMatchObject({ withinLife: false, simplePayback_years: { why: 'the first year saves nothing' }, airr: { why: expect.any(String) as unknown } });
    expect(() => lifeCycle([-1], real)).toThrow('flows_cents');
    expect(() => projectFlows({ cost_cents: -1, firstYearSaving_cents: 1, life_years: 2 })).toThrow('cost_cents');
    expect(() => projectFlows({ cost_cents: 1, firstYearSaving_cents: 1, life_years: 2.5 })).toThrow('life_years');
  });
});

describe('the saving as a stream', () => {
  const terms: StreamTerms = { studyStartYear: 2026, startsAfter_years: 0, life_years: 5, endYear: null };
  const states = [{ fromYear: 2026, saving_cents: 1000, heating_cents: 100 }, { fromYear: 2028, saving_cents: 600, heating_cents: 40 }];

  it('changes with the plant in its replacement year', () => {
    expect(yearlyStream(states, terms).flows_cents).toEqual([0, 900, 900, 560, 560, 560]);
  });

  it('of one state is the project of the same figures', () => {
    const stream = yearlyStream([states[0]!], { ...terms, escalation: 0.01, heatingEscalation: 0.01, degradation: 0.005, removal_cents: 80 });
    const flows = projectFlows({ cost_cents: 0, firstYearSaving_cents: 1000, yearlyPenalty_cents: 100, escalation: 0.01, degradation: 0.005, life_years: 5, removal_cents: 80 });
    stream.flows_cents.slice(1).forEach((flow, i) => expect(flow).toBeCloseTo(flows[i + 1]!, 9));
  });

  it('begins later in a later phase, with prices that have risen since the start', () => {
    const stream = yearlyStream([states[0]!], { ...terms, startsAfter_years: 2, life_years: 1, escalation: 0.02, heatingEscalation: 0 });
    expect(stream.flows_cents.slice(0, 3)).toEqual([0, 0, 0]);
    expect(stream.flows_cents[3]).toBeCloseTo(1000 * 1.02 ** 3 - 100, 9);
    expect(stream.years[0]).toMatchObject({ calendarYear: 2028, age_years: 1 });
  });

  it('ends where the building is sold, and film that leaves with it is not paid for taking off', () => {
    expect(yearlyStream([states[0]!], { ...terms, endYear: 2029, removal_cents: 50 }).flows_cents).toEqual([0, 900, 900, 900, 0, 0]);
    expect(yearlyStream([states[0]!], { ...terms, removal_cents: 50 }).flows_cents[5]).toBe(850);
  });

  it('loses the share of windows that are replaced', () => {
    const stream = yearlyStream([states[0]!], { ...terms, windowLosses: [{ fromYear: 2027, share: 0.25 }, { fromYear: 2029, share: 0.75 }] });
    expect(stream.flows_cents).toEqual([0, 900, 675, 675, 0, 0]);
  });

  it('holds the first state also before its year', () => {
    expect(yearlyStream([{ fromYear: 2030, saving_cents: 10, heating_cents: 0 }], { ...terms, life_years: 1 }).flows_cents).toEqual([0, 10]);
  });

  it('refuses states out of order and figures outside their range', () => {
    expect(() => yearlyStream([], terms)).toThrow('states');
    expect(() => yearlyStream([states[1]!, states[0]!], terms)).toThrow('rising order');
    expect(() => yearlyStream(states, { ...terms, degradation: 2 })).toThrow('degradation');
    expect(() => yearlyStream(states, { ...terms, startsAfter_years: -1 })).toThrow('startsAfter_years');
  });
});

describe('who keeps a saving', () => {
  const rule = (more: Partial<PayerRule>): PayerRule => ({ id: 'r', kind: 'ratio', ownerShare: 0.4, resetLag_yr: 0, vacancyShare: 0, ...more });

  it('shares sum to one', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const rules = fc.record({ ownerShare: share, resetLag_yr: fc.double({ min: 0, max: 5, noNaN: true }), vacancyShare: share });
    fc.assert(fc.property(rules, fc.integer({ min: 1, max: 9 }), (shares, age) => {
      const { owner, tenant } = payerShares(rule(shares), age);
      expect(owner + tenant).toBeCloseTo(1, 12);
      expect(Math.min(owner, tenant)).toBeGreaterThanOrEqual(-1e-12);
    }));
  });

  it('the owner keeps it until a ratio bill is reset, and while the dwelling is empty', () => {
    expect([1, 2, 3].map((age) => payerShares(rule({ resetLag_yr: 1.5 }), age).owner)).toEqual([1, 0.7, 0.4]);
    expect(payerShares(rule({ ownerShare: 0, vacancyShare: 0.1 }), 1).owner).toBeCloseTo(0.1, 12);
    expect(() => payerShares(rule({ ownerShare: 1.2 }), 1)).toThrow('ownerShare');
  });
});

describe('write-off', () => {
  it('adds up to the basis, whatever the method', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 10_000_000 }), fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 40 }), (basis, monthInService, years) => {
      for (const by of [{ method: 'mid-month-27.5', monthInService }, { method: 'expense' }, { method: 'straight-line', years }] as const) {
        const parts = depreciation(basis, by);
        expect(parts.reduce((sum, part) => sum + part.cents, 0)).toBe(basis);
        expect(parts.reduce((sum, part) => sum + part.share, 0)).toBeCloseTo(1, 12);
      }
    }));
  });

  it('refuses months and years that are not there', () => {
    expect(() => depreciation(1, { method: 'mid-month-27.5', monthInService: 0 })).toThrow('monthInService');
    expect(() => depreciation(1, { method: 'straight-line', years: 0 })).toThrow('years');
    expect(() => depreciation(-1, { method: 'expense' })).toThrow('basis_cents');
  });
});

describe('a rebate', () => {
  const terms = { rate_cents_m2: 1_500, cap_cents: 40_000, costShare: 0.5 };

  it.each([
    [{ area_m2: 10, cost_cents: 60_000 }, 15_000, 'area × rate'],
    [{ area_m2: 100, cost_cents: 600_000 }, 40_000, 'the cap'],
    [{ area_m2: 20, cost_cents: 50_000 }, 25_000, 'the share of the cost'],
  ])('of %p is %p: %s', (project, expected) => expect(rebate_cents(project, terms)).toBe(expected));

  it('without cap and share never passes the cost', () => expect(rebate_cents({ area_m2: 10, cost_cents: 9_000 }, { rate_cents_m2: 1_500, cap_cents: null, costShare: null })).toBe(9_000));

  it('refuses figures below zero', () => {
    expect(() => rebate_cents({ area_m2: -1, cost_cents: 0 }, terms)).toThrow('area_m2');
    expect(() => rebate_cents({ area_m2: 1, cost_cents: 0 }, { ...terms, costShare: 1.1 })).toThrow('costShare');
    expect(() => rebate_cents({ area_m2: 1, cost_cents: 0 }, { ...terms, rate_cents_m2: -1 })).toThrow('rate');
  });
});
