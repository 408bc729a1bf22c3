import * as formula from '@formulajs/formulajs';
import { HyperFormula } from 'hyperformula';
import { isFigure, modifiedRateOfReturn, presentValue, projectLifeCycle, rateOfReturn } from '#calc';
import { hold } from './checks/hold.js';
import { finance } from './checks/money.js';
import { filmProjects } from './finance.js';

finance.forEach(hold);

const figure = (value: number | { readonly why: string }): number => (isFigure(value) ? value : Number.NaN);

describe('rates of return against other programs', () => {
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

it('a payback beyond the life is stated and marked', () => {
  const last = filmProjects.rows[2]!;
  expect(projectLifeCycle(last.given.project, { basis: 'real', discountRate: 0.05 }).withinLife).toBe(false);
});
