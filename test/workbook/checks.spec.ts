import ExcelJS from 'exceljs';
import type { Plan } from '#planning';
import { rolloutWorkbook } from '#workbook';
import { checkResults, spoilings } from './checks.js';
import { oddlyNamed } from './odd-names.js';
import { plannedWith } from './planned.js';
import { disagreements, engineOf, formulasOf, valueAt } from './recalculation.js';

/** Decimals a number format prints. */
function decimalsOf(format: string): number {
  const shown = /0(?:\.(0+))?(%?)/.exec(format.split(';')[0]!);
  return (shown?.[1]?.length ?? 0) + (shown?.[2] === '%' ? 2 : 0);
}

const rounded = (value: number, decimals: number): number => Math.sign(value) * Number(`${String(Math.round(Number(`${String(Math.abs(value))}e${String(decimals)}`)))}e-${String(decimals)}`);
const numberIn = (cell: ExcelJS.Cell): number => Number((cell.formula ? cell.result : cell.value) ?? 0);

/** Totals of a book that are not the sum of what is printed above or beside them. */
function wrongTotals(book: ExcelJS.Workbook): { readonly asked: number; readonly wrong: string[] } {
  const sums = formulasOf(book).flatMap((f) => {
    const range = /^SUM\(([A-Z]+)(\d+):([A-Z]+)(\d+)\)$/.exec(f.formula);
    return range === null ? [] : [{ f, range }];
  });
  const wrong = sums.flatMap(({ f, range }) => {
    const sheet = book.getWorksheet(f.sheet)!;
    const cell = sheet.getCell(f.address);
    let printed = 0;
    for (let row = Number(range[2]); row <= Number(range[4]); row++) {
      for (let c = sheet.getColumn(range[1]!).number; c <= sheet.getColumn(range[3]!).number; c++) {
        const part = sheet.getCell(row, c);
        if (typeof numberIn(part) === 'number' && part.numFmt) printed += rounded(numberIn(part), decimalsOf(part.numFmt));
      }
    }
    const decimals = decimalsOf(cell.numFmt);
    return rounded(printed, decimals) === rounded(numberIn(cell), decimals) ? [] : [`${f.sheet}!${f.address}: printed ${String(numberIn(cell))}, rows ${String(printed)}`];
  });
  return { asked: sums.length, wrong };
}

describe('the checks of the cover', () => {
  let plan: Plan;
  let book: ExcelJS.Workbook;
  beforeAll(async () => {
    plan = await plannedWith((p) => ({ ...p, settings: { ...p.settings, realEscalation: 0.012, endRemoval_cents_m2: 1_250, labourTaxShare: 0.02 } }));
    book = rolloutWorkbook(plan);
  }, 120_000);

  it('are zero, and each shows a figure that was spoilt', () => {
    const engine = engineOf(book);
    const results = (): Map<string, unknown> => checkResults(book, (f) => valueAt(engine, f.sheet, f.address));
    expect([...results().values()].every((v) => v === 0)).toBe(true);
    for (const { check, sheet, address, value } of spoilings(book)) {
      const at = engine.simpleCellAddressFromString(address, engine.getSheetId(sheet)!)!;
      const before = engine.getCellSerialized(at);
      engine.setCellContents(at, value);
      expect({ check, is: results().get(check) === 0 }).toEqual({ check, is: false });
      expect({ check, together: results().get('All checks together') === 0 }).toEqual({ check, together: false });
      engine.setCellContents(at, before);
      expect({ check, again: results().get(check) }).toEqual({ check, again: 0 });
    }
  }, 120_000);

  it('stay zero, and every formula right, when IDs are patterns, comparisons or words of a formula', () => {
    const odd = rolloutWorkbook(oddlyNamed(plan));
    const engine = engineOf(odd);
    expect(disagreements(formulasOf(odd), (f) => valueAt(engine, f.sheet, f.address))).toEqual([]);
    expect([...checkResults(odd, (f) => valueAt(engine, f.sheet, f.address)).values()].every((v) => v === 0)).toBe(true);
    const cash = odd.getWorksheet('Cash flow')!.getColumn(3).values;
    expect(cash).toContain('Q*');
    expect(cash).toContain('Q~B');
  }, 60_000);

  it('hold on paper too: every printed total is the sum of what is printed', () => {
    const { asked, wrong } = wrongTotals(book);
    expect(asked).toBeGreaterThan(30);
    expect(wrong).toEqual([]);
  });

  it('stand beside a discounted payback by formula that is the planning’s own', () => {
    const sheet = book.getWorksheet('Position by year')!;
    const found = new Map<unknown, unknown>();
    sheet.eachRow((row) => found.set(row.getCell(1).value, row.getCell(5).result));
    expect(plan.payback.lines.length).toBeGreaterThan(1);
    for (const line of plan.payback.lines) {
      const years = found.get(line.dwelling);
      if (line.discountedPayback_yr === null) expect(years).toBe('none');
      // A cent of rounding on the outlay and on a year's saving.
      else expect(Number(years)).toBeCloseTo(line.discountedPayback_yr, 3);
    }
  });
});
