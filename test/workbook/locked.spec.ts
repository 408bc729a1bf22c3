import ExcelJS from 'exceljs';
import type { Plan } from '#planning';
import { workbookBytes } from '#workbook';
import { plannedWith } from './planned.js';

interface Protected {
  readonly sheetProtection?: Readonly<Record<string, unknown>> | null;
}

/** Inputs as a reader finds them: a heavy border, and the word "input" in the head of the column or beside the cell. */
const isBoxed = (cell: ExcelJS.Cell): boolean => cell.border?.top?.style === 'medium' && cell.border.bottom?.style === 'medium';

function saysInput(sheet: ExcelJS.Worksheet, cell: ExcelJS.Cell): boolean {
  const { row, col } = cell as unknown as { readonly row: number; readonly col: number };
  if (sheet.getCell(row, col + 1).value === 'input') return true;
  for (let r = row - 1; r > 0; r--) {
    const { value } = sheet.getCell(r, col);
    if (typeof value === 'string' && value.includes('input')) return true;
  }
  return false;
}

describe('the locks of the workbook', () => {
  let plan: Plan;
  let book: ExcelJS.Workbook;
  let inputs: { readonly sheet: ExcelJS.Worksheet; readonly cell: ExcelJS.Cell }[];
  beforeAll(async () => {
    plan = await plannedWith((p) => p);
    book = new ExcelJS.Workbook();
    await book.xlsx.load((await workbookBytes(plan)).buffer as ArrayBuffer);
    inputs = [];
    book.eachSheet((sheet) => {
      sheet.eachRow((row) => {
        row.eachCell((cell) => {
          if (cell.protection?.locked === false) inputs.push({ sheet, cell });
        });
      });
    });
  }, 120_000);

  it('hold on every sheet without a password, and leave reading, fitting and filtering free', () => {
    for (const sheet of book.worksheets) {
      const { sheetProtection } = sheet as unknown as Protected;
      expect(sheetProtection).toMatchObject({ sheet: true });
      expect(sheetProtection).not.toHaveProperty('hashValue');
      for (const free of ['formatColumns', 'formatRows', 'autoFilter']) expect({ sheet: sheet.name, free, is: sheetProtection?.[free] }).toEqual({ sheet: sheet.name, free, is: true });
      for (const shut of ['formatCells', 'insertRows', 'deleteRows']) expect(sheetProtection?.[shut] ?? false).toBe(false);
    }
  });

  it('leave open inputs only, each a typed number in a box with the word beside it and limits that refuse the rest', () => {
    expect(inputs.length).toBeGreaterThan(20);
    for (const { sheet, cell } of inputs) {
      const at = `${sheet.name}!${cell.address}`;
      expect({ at, formula: cell.formula }).toEqual({ at, formula: undefined });
      expect({ at, type: typeof cell.value }).toEqual({ at, type: 'number' });
      expect({ at, isBoxed: isBoxed(cell), says: saysInput(sheet, cell) }).toEqual({ at, isBoxed: true, says: true });
      const of = cell.dataValidation as ExcelJS.DataValidation | undefined;
      expect({ at, type: of?.type, refuses: of?.showErrorMessage }).toEqual({ at, type: 'decimal', refuses: true });
      const [low, high] = (of?.formulae ?? []).map(Number);
      expect(Number(cell.value)).toBeGreaterThanOrEqual(low!);
      expect(Number(cell.value)).toBeLessThanOrEqual(high!);
    }
  });

  it('keep every formula shut', () => {
    book.eachSheet((sheet) => {
      sheet.eachRow((row) => {
        row.eachCell((cell) => {
          if (cell.formula) expect({ at: `${sheet.name}!${cell.address}`, locked: cell.protection?.locked ?? true }).toEqual({ at: `${sheet.name}!${cell.address}`, locked: true });
        });
      });
    });
  });

  it('stand beside named inputs for every single figure', () => {
    const names = book.definedNames.model.map((n) => n.name);
    for (const name of ['discount_rate', 'price_rise', 'film_degradation', 'end_removal_price', 'electricity_price_factor', 'film_cost_factor', 'labour_rate', 'contingency_share', 'material_tax', 'labour_tax']) expect(names).toContain(name);
  });
});
