import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as formula from '@formulajs/formulajs';
import ExcelJS from 'exceljs';
import { isFigure, lifeCycle, modifiedRateOfReturn, presentValue, rateOfReturn } from '#calc';
import { hasOffice, recalculated } from './office.js';

/** Flows of projects by year: the second is a film, the last turns its sign twice. */
const FLOWS: readonly (readonly number[])[] = [
  [-100, 39, 59, 55, 20],
  [-84_000, ...Array<number>(15).fill(14_400)],
  [-500, -200, 300, 400, 250],
  [-1234.56, 0, 0, 1500],
  [-1000, 600, 600, 0, -150, 400],
];
const RATE = 0.03;
const [FINANCE, REINVEST] = [0.05, 0.04];
const figure = (value: ReturnType<typeof rateOfReturn>): number => (isFigure(value) ? value : Number.NaN);

describe('present value and rates of return against functions of other programs', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'rollout-rates-'));
  });
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  it.each(FLOWS.map((flows, i) => [i, flows] as const))('a general library finds the same value and rate for row %i', (_, flows) => {
    expect(presentValue(flows, RATE)).toBeCloseTo(flows[0]! + Number(formula.NPV(RATE, ...flows.slice(1))), 6);
    expect(lifeCycle(flows, { discountRate: RATE, basis: 'real' }).npv_cents).toBeCloseTo(presentValue(flows, RATE), 6);
    expect(figure(rateOfReturn(flows))).toBeCloseTo(Number(formula.IRR([...flows], 0.1)), 7);
  });

  it('LibreOffice finds the same value, rate and modified rate', async () => {
    if (!hasOffice) {
      console.warn('SKIPPED: soffice is not on this machine, so its NPV, IRR and MIRR were not asked');
      return;
    }
    const book = new ExcelJS.Workbook();
    const sheet = book.addWorksheet('Rates');
    const width = Math.max(...FLOWS.map((f) => f.length));
    const last = (count: number): string => sheet.getColumn(3 + count).letter;
    FLOWS.forEach((flows, i) => {
      const row = i + 1;
      const all = `D${String(row)}:${last(flows.length)}${String(row)}`;
      flows.forEach((flow, year) => {
        sheet.getCell(row, 4 + year).value = flow;
      });
      sheet.getCell(row, 1).value = { formula: `D${String(row)}+NPV(${String(RATE)},E${String(row)}:${last(flows.length)}${String(row)})`, result: 0 };
      sheet.getCell(row, 2).value = { formula: `IRR(${all})`, result: 0 };
      sheet.getCell(row, 3).value = { formula: `MIRR(${all},${String(FINANCE)},${String(REINVEST)})`, result: 0 };
    });
    expect(width).toBeLessThan(20);
    const office = (await recalculated(new Map([['rates', book]]), folder)).get('rates')!.getWorksheet('Rates')!;
    FLOWS.forEach((flows, i) => {
      const found = (column: number): number => Number(office.getCell(i + 1, column).result);
      expect(found(1)).toBeCloseTo(presentValue(flows, RATE), 6);
      expect(found(2)).toBeCloseTo(figure(rateOfReturn(flows)), 9);
      expect(found(3)).toBeCloseTo(figure(modifiedRateOfReturn(flows, { financeRate: FINANCE, reinvestRate: REINVEST })), 9);
    });
  }, 300_000);
});
