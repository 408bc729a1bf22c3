import fc from 'fast-check';
import { depreciation, lifeCycle, modifiedRateOfReturn, nominalRate, paybackYears, presentValue, projectFlows, projectLifeCycle, rateOfReturn, ratesOfReturn, realRate, singlePresentValue, uniformPresentValue, yearlyStream, type StreamTerms } from './index.js';

const real = { basis: 'real', discountRate: 0.1 } as const;

describe('every rate of return', () => {
  /** Flows whose present value is the product of the factors: a factor [1, −a] is worth nothing at a rate of a − 1. */
  const product = (...factors: number[][]) => factors.reduce((so, factor) => {
    const out = Array<number>(so.length + factor.length - 1).fill(0);
    so.forEach((a, i) => factor.forEach((b, j) => (out[i + j]! += a * b)));
    return out;
  }, [-100]);

  it('is found once where the worth only touches zero', () => {
    fc.assert(fc.property(fc.double({ min: 0.6, max: 2.5, noNaN: true }), (growth) => {
      for (const flows of [product([1, -growth], [1, -growth]), product([1, -growth], [1, -growth], [1, 1]), product([1, -growth], [1, -growth], [1, 0, 1])]) {
        const rates = ratesOfReturn(flows);
        expect(rates).toHaveLength(1);
        expect(rates[0]).toBeCloseTo(growth - 1, 5);
      }
    }), { numRuns: 200 });
  });

  it('is given in rising order, crossed or touched', () => {
    expect(ratesOfReturn(product([1, -1.5], [1, -1.5], [1, -1.1]))).toEqual([expect.closeTo(0.1, 9), expect.closeTo(0.5, 5)]);
    expect(ratesOfReturn(product([1, -1.1], [1, -1.1], [1, -1.5]))).toEqual([expect.closeTo(0.1, 5), expect.closeTo(0.5, 9)]);
    expect(ratesOfReturn(product([1, -1.05], [1, -1.2], [1, -1.6]))).toEqual([0.05, 0.2, 0.6].map((rate) => expect.closeTo(rate, 7) as unknown));
  });

  it('does not hang on the years before the first flow, nor on the size of the flows', () => {
    expect(ratesOfReturn([0, 0, -100, 110])).toEqual([expect.closeTo(0.1, 12)]);
    for (const scale of [1e-9, 1, 1e12]) expect(ratesOfReturn(product([1, -1.1], [1, -1.2]).map((flow) => flow * scale))).toEqual([expect.closeTo(0.1, 9), expect.closeTo(0.2, 9)]);
  });

  it('is none where nothing flows or all flows go one way', () => {
    for (const flows of [[], [0], [0, 0, 0], [5], [5, 5], [-5, 0, -5]]) expect(ratesOfReturn(flows)).toEqual([]);
  });

  it('is not looked for in flows that are no figures', () => {
    for (const flows of [[Number.NaN, 1], [-1, Infinity], [-1, 2, Number.NaN]]) expect(() => ratesOfReturn(flows)).toThrow(RangeError);
  });

  it('says why there is none, and which there are', () => {
    expect(rateOfReturn([0, 0])).toEqual({ why: 'all flows are zero: any rate fits' });
    expect(rateOfReturn([0, 5])).toEqual({ why: 'nothing is paid out, so there is no rate of return' });
    expect(rateOfReturn([0, -5])).toEqual({ why: 'nothing comes back, so there is no rate of return' });
    expect(rateOfReturn(product([1, -1.1], [1, -1.2]))).toEqual({ why: 'several rates make the flows worth zero: 10.00 %, 20.00 %' });
    expect(rateOfReturn([-100, 100, -100])).toEqual({ why: 'no rate above -99 % makes the flows worth zero' });
  });
});

describe('measures at the ends', () => {
  it('a project that saves nothing after its outlay has a ratio of 0 and no rate', () => {
    const { sir, airr, simplePayback_years, withinLife, mirr } = lifeCycle([-100, 0, 0], real);
    expect(sir).toBe(0);
    expect(airr).toEqual({ why: 'the savings are worth nothing or less, so no rate describes them' });
    expect(simplePayback_years).toEqual({ why: 'not paid back within 2 years' });
    expect(withinLife).toBe(false);
    expect(mirr).toHaveProperty('why');
  });

  it('without an outlay neither ratio nor rate nor payback', () => {
    const { sir, airr, simplePayback_years } = lifeCycle([0, 50], real);
    expect(sir).toEqual({ why: 'nothing is paid at the start, so there is no ratio' });
    expect(airr).toEqual(sir);
    expect(simplePayback_years).toHaveProperty('why');
    const free = projectLifeCycle({ cost_cents: 100, rebate_cents: 100, firstYearSaving_cents: 50, life_years: 3 }, real);
    expect(free.simplePayback_years).toEqual({ why: 'nothing is paid at the start, so there is nothing to pay back' });
    expect(free.withinLife).toBe(false);
  });

  it('paid back on the last day is within its life, a day later is not', () => {
    const of = (cost_cents: number) => projectLifeCycle({ cost_cents, firstYearSaving_cents: 50, life_years: 3 }, real);
    expect(of(150)).toMatchObject({ simplePayback_years: 3, withinLife: true });
    expect(of(151)).toMatchObject({ simplePayback_years: 3.02, withinLife: false });
    expect(projectLifeCycle({ cost_cents: 10, firstYearSaving_cents: 0, life_years: 3 }, real)).toMatchObject({ simplePayback_years: { why: 'the first year saves nothing' }, withinLife: false });
  });

  it('names the rate or the month that cannot be', () => {
    expect(() => lifeCycle([-1, 1], { ...real, discountRate: -1 })).toThrow('discountRate');
    expect(() => modifiedRateOfReturn([-1, 1], { financeRate: 0, reinvestRate: -1 })).toThrow('reinvestRate');
    expect(() => paybackYears([-1, 1], -1)).toThrow('rate');
    expect(() => projectFlows({ cost_cents: 1, firstYearSaving_cents: 1, life_years: 1, escalation: -1 })).toThrow('escalation');
    expect(() => presentValue([-1], -1)).toThrow('rate');
    expect(() => singlePresentValue(-1, 1)).toThrow('rate');
    expect(() => uniformPresentValue(-1, 1)).toThrow('rate');
    expect(() => uniformPresentValue(0, 1, -1)).toThrow('escalation');
    expect(() => nominalRate(-1, 0)).toThrow('real');
    expect(() => nominalRate(0, -1)).toThrow('inflation');
    expect(() => realRate(-1, 0)).toThrow('nominal');
    expect(() => realRate(0, -1)).toThrow('inflation');
    for (const monthInService of [0, 13]) expect(() => depreciation(100, { method: 'mid-month-27.5', monthInService })).toThrow('monthInService');
  });
});

describe('taking the film off', () => {
  const terms: StreamTerms = { studyStartYear: 2026, startsAfter_years: 0, life_years: 2, endYear: null, removal_cents: 30 };
  const state = { fromYear: 2026, saving_cents: 100, heating_cents: 10 };
  it.each([
    ['in its last year', null, [0, 90, 60]],
    ['where the building stands a year longer', 2028, [0, 90, 60]],
    ['not where the building ends with that year’s start', 2027, [0, 90, 0]],
    ['not where it ended before', 2026, [0, 0, 0]],
  ])('is paid %s', (_, endYear, flows) => {
    expect(yearlyStream([state], { ...terms, endYear }).flows_cents).toEqual(flows);
  });

  it('states hold from their year on, the first before it too', () => {
    const states = [{ ...state, fromYear: 2030 }, { ...state, fromYear: 2031, saving_cents: 50 }];
    expect(yearlyStream(states, { ...terms, life_years: 7, removal_cents: 0 }).flows_cents).toEqual([0, 90, 90, 90, 90, 90, 40, 40]);
  });

  it('refuses one state that is none among others, and names the rise that cannot be', () => {
    expect(() => yearlyStream([state, { fromYear: 2027, saving_cents: Number.NaN, heating_cents: 0 }], terms)).toThrow(RangeError);
    expect(() => yearlyStream([state], { ...terms, escalation: -1 })).toThrow('escalation');
    expect(() => yearlyStream([state], { ...terms, heatingEscalation: -1 })).toThrow('heatingEscalation');
  });
});
