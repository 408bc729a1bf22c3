import * as formula from '@formulajs/formulajs';
import { HyperFormula } from 'hyperformula';
import { depreciation, isFigure, lifeCycle, modifiedRateOfReturn, presentValue, projectLifeCycle, rateOfReturn, singlePresentValue, uniformPresentValue } from '#calc';
import { filmProjects, modifiedRates, presentValueFactors, ratesOfReturnPrinted, stormWindows } from './finance.js';
import { readValues } from './read-values.js';

const figure = (value: number | { readonly why: string }): number => (isFigure(value) ? value : Number.NaN);

describe('present values against the handbook', () => {
  it.each(presentValueFactors.rows)('$place', ({ given: { kind, rate, years, escalation }, expect: printed }) => {
    const factor = kind === 'SPV' ? singlePresentValue(rate, years) : uniformPresentValue(rate, years, escalation);
    expect(factor.toFixed(printed.digits)).toBe(printed.factor.toFixed(printed.digits));
  });

  it.each(stormWindows.rows)('storm windows: $place', ({ given, expect: printed }) => {
    const energy = (yearly: readonly number[]): number => yearly.reduce((sum, cost, i) => sum + cost * given.factors[i]!, 0);
    const [base, alternative] = [energy(given.yearly.base), given.cost + energy(given.yearly.alternative)];
    expect(Math.abs(base - printed.lifeCycleBase)).toBeLessThan(stormWindows.tolerance.abs!);
    expect(Math.abs(alternative - printed.lifeCycleAlternative)).toBeLessThan(stormWindows.tolerance.abs!);
    // The same saving as level flows of equal worth: net savings, ratio and adjusted rate follow from it.
    const yearly = energy(given.yearly.base.map((cost, i) => cost - given.yearly.alternative[i]!)) / uniformPresentValue(given.rate, given.years);
    const result = lifeCycle([-given.cost, ...Array<number>(given.years).fill(yearly)], { basis: 'real', discountRate: given.rate });
    expect(Math.abs(result.npv_cents - printed.netSavings)).toBeLessThan(stormWindows.tolerance.abs!);
    expect(figure(result.sir)).toBeCloseTo(1.80024, 6);
    expect(figure(result.airr)).toBeCloseTo(0.06072729659555409, 9);
  });
});

describe('rates of return against print', () => {
  it.each(ratesOfReturnPrinted.rows)('$place', ({ given, expect: printed }) => {
    expect(Math.abs(figure(rateOfReturn(given.flows)) * given.perYear - printed.rate)).toBeLessThan(printed.within);
  });

  it.each(modifiedRates.rows)('modified, $place', ({ given, expect: printed }) => {
    expect(Math.abs(figure(modifiedRateOfReturn(given.flows, given)) - printed.rate)).toBeLessThan(printed.within);
  });

  it('agrees with a spreadsheet library on value and rates', () => {
    for (const flows of [[-100, 39, 59, 55, 20], [-84_000, ...Array<number>(15).fill(14_400)], [-500, -200, 300, 400, 250]]) {
      expect(presentValue(flows, 0.03)).toBeCloseTo(flows[0]! + Number(formula.NPV(0.03, ...flows.slice(1))), 6);
      expect(figure(rateOfReturn(flows))).toBeCloseTo(Number(formula.IRR(flows, 0.1)), 8);
    }
  });

  it('agrees with a spreadsheet engine on the modified rate', () => {
    for (const flows of [[-100, 39, 59, 55, 20], [-84_000, ...Array<number>(15).fill(14_400)], [-500, -200, 300, 400, 250]]) {
      const sheet = HyperFormula.buildFromArray([flows, ['=MIRR(1:1,0.05,0.04)']], { licenseKey: 'gpl-v3' });
      // The engine rounds what it shows to ten digits.
      expect(figure(modifiedRateOfReturn(flows, { financeRate: 0.05, reinvestRate: 0.04 }))).toBeCloseTo(Number(sheet.getCellValue({ sheet: 0, row: 1, col: 0 })), 9);
    }
  });
});

describe('three films as projects', () => {
  it.each(filmProjects.rows)('$place', ({ given, expect: printed }) => {
    const result = projectLifeCycle(given.project, { basis: 'real', discountRate: given.discountRate });
    printed.flows.forEach((flow, i) => expect(result.flows_cents[i + 1]).toBeCloseTo(flow, 9));
    expect(result.npv_cents).toBeCloseTo(printed.npv, 8);
    expect(figure(result.sir)).toBeCloseTo(printed.sir, 11);
    expect(figure(result.airr)).toBeCloseTo(printed.airr, 11);
    expect(figure(result.simplePayback_years)).toBeCloseTo(printed.simplePayback, 11);
    if (printed.discountedPayback === null) expect(result.discountedPayback_years).toHaveProperty('why');
    else expect(figure(result.discountedPayback_years)).toBeCloseTo(printed.discountedPayback, 10);
    if (printed.irr === null) expect(result.irr).toHaveProperty('why');
    else expect(figure(result.irr)).toBeCloseTo(printed.irr, 11);
  });

  it('a payback beyond the life is stated and marked', () => {
    const last = filmProjects.rows[2]!;
    expect(projectLifeCycle(last.given.project, { basis: 'real', discountRate: 0.05 }).withinLife).toBe(false);
  });
});

describe('mid-month write-off over 27.5 years', () => {
  const table = readValues<readonly number[]>('finance-mid-month.json');

  it.each(table.rows.map(([month, ...percent]) => ({ month: month!, percent })))('month $month to the printed digit, all 29 years', ({ month, percent }) => {
    const years = depreciation(100_000, { method: 'mid-month-27.5', monthInService: month });
    expect(years.map((year) => (year.share * 100).toFixed(3))).toEqual(percent.map((each) => each.toFixed(3)));
    expect(years.map((year) => year.cents)).toEqual(percent.map((each) => Math.round(each * 1000)));
  });
});
