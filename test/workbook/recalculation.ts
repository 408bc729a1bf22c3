import type ExcelJS from 'exceljs';
import { HyperFormula, type RawCellContent } from 'hyperformula';

/** A live formula with the result stored beside it. */
export interface StoredFormula {
  readonly sheet: string;
  readonly address: string;
  readonly formula: string;
  readonly stored: unknown;
}

export function formulasOf(book: ExcelJS.Workbook): StoredFormula[] {
  const found: StoredFormula[] = [];
  book.eachSheet((sheet) => {
    sheet.eachRow((row) => {
      row.eachCell((cell) => {
        // The reader leaves a stored 0 out.
        if (cell.formula) found.push({ sheet: sheet.name, address: cell.address, formula: cell.formula, stored: cell.result ?? 0 });
      });
    });
  });
  return found;
}

function contents(sheet: ExcelJS.Worksheet): RawCellContent[][] {
  return Array.from({ length: sheet.rowCount }, (_, r) =>
    Array.from({ length: sheet.columnCount }, (_unused, c): RawCellContent => {
      const cell = sheet.getCell(r + 1, c + 1);
      if (cell.formula) return `=${cell.formula}`;
      if (typeof cell.value === 'string') return `'${cell.value}`;
      return typeof cell.value === 'number' ? cell.value : null;
    }),
  );
}

const nameOf = (book: ExcelJS.Workbook): { name: string; expression: string }[] =>
  book.definedNames.model.filter((n) => !n.name.startsWith('_')).map((n) => ({ name: n.name, expression: `=${(n.ranges[0] ?? '').replace(/^([A-Za-z ]+)!/, "'$1'!")}` }));

/** The book in another program's hands: names, formulas and values, computed from nothing. */
export function engineOf(book: ExcelJS.Workbook): HyperFormula {
  return HyperFormula.buildFromSheets(Object.fromEntries(book.worksheets.map((s) => [s.name, contents(s)])), { licenseKey: 'gpl-v3', smartRounding: false, precisionEpsilon: 1e-15, useArrayArithmetic: true }, nameOf(book));
}

/** A figure of an engine at an address. */
export function valueAt(engine: HyperFormula, sheet: string, address: string): unknown {
  const at = engine.simpleCellAddressFromString(address, engine.getSheetId(sheet) ?? 0);
  if (at === undefined) throw new RangeError(`address must be a cell, got ${address}`);
  return engine.getCellValue(at);
}

/** Every formula whose stored result is not what the other side computes. */
export function disagreements(formulas: readonly StoredFormula[], computed: (f: StoredFormula) => unknown): string[] {
  return formulas.flatMap((f) => {
    const other = computed(f);
    const agrees = typeof f.stored === 'number' && typeof other === 'number' ? Math.abs(f.stored - other) <= 1e-9 * Math.max(1, Math.abs(f.stored)) : f.stored === other;
    return agrees ? [] : [`${f.sheet}!${f.address} =${f.formula}: stored ${String(f.stored)}, computed ${String(other)}`];
  });
}
