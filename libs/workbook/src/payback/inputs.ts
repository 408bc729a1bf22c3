import type { Worksheet } from 'exceljs';
import { address, live, put, section } from '../cells.js';
import type { ChangedInputs } from '../changed-inputs.js';
import { asInput, bold, FORMAT, type InputLimits, limited } from '../style.js';
import type { MoneyModel } from './money-model.js';

interface Input extends InputLimits {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly format: string;
  readonly note: string;
}

/** Cell that counts the changed inputs of all sheets. */
export interface InputsPlace {
  readonly changedCell: string;
  readonly nextRow: number;
}

function inputsOf({ inputs }: MoneyModel, currency: string): Input[] {
  const rate = (name: string, label: string, of: Pick<Input, 'value' | 'unit' | 'note'>): Input => ({ name, label, format: FORMAT.percentTwo, low: -0.5, high: 1, ...of });
  const share = (name: string, label: string, of: Pick<Input, 'value' | 'note'>): Input => ({ name, label, unit: 'share', format: FORMAT.percentTwo, low: 0, high: 1, ...of });
  const factor = (name: string, label: string, note: string): Input => ({ name, label, unit: 'times', value: 1, format: FORMAT.three, low: 0, high: 100, note });
  return [
    rate('discount_rate', 'Discount rate', { value: inputs.discount, unit: 'a year, real', note: 'without inflation' }),
    rate('price_rise', 'Rise of energy prices', { value: inputs.rise, unit: 'a year, real', note: 'above inflation, all energy' }),
    rate('film_degradation', 'Effect a film loses', { value: inputs.degradation, unit: 'a year', note: 'of what it still has' }),
    { name: 'end_removal_price', label: 'Taking film off at its end', unit: `${currency} a m² of film`, value: inputs.endRemoval, format: FORMAT.two, low: 0, high: 1000, note: 'in the last year of the film, where it is still on its glass; the owner pays, no cap holds it' },
    factor('electricity_price_factor', 'Energy price factor', 'on the yearly saving net of added heating: every rate, demand price and fuel price by the same factor'),
    factor('film_cost_factor', 'Film cost factor', 'on the price of every roll; the price of one roll stands on Film to buy'),
    { name: 'labour_rate', label: 'Labour rate', unit: `${currency} an hour, loaded`, value: inputs.labourRate, format: FORMAT.two, low: 0, high: 10_000, note: 'on work by the hour; a contractor’s price and visits stay' },
    share('contingency_share', 'Contingency', { value: inputs.contingency, note: 'inside the cap' }),
    share('material_tax', 'Tax on film, consumables, freight', { value: inputs.materialTax, note: '' }),
    share('labour_tax', 'Tax on labour and removal', { value: inputs.labourTax, note: '' }),
  ];
}

function writeHead(sheet: Worksheet, at: number): void {
  section(sheet, at, 'Inputs: change the boxed cells');
  ['', 'Unit', 'Now', '', 'As run', 'Changed', 'What it moves'].forEach((text, i) => {
    const cell = sheet.getCell(at + 1, i + 1);
    put(cell, text === '' ? null : text);
    bold(cell);
    if (i === 2 || i === 4 || i === 5) cell.alignment = { horizontal: 'right' };
    if (i === 6) cell.alignment = { horizontal: 'left', indent: 1 };
  });
}

function writeInput(sheet: Worksheet, row: number, input: Input): void {
  put(sheet.getCell(row, 1), input.label);
  put(sheet.getCell(row, 2), input.unit);
  const cell = sheet.getCell(row, 3);
  put(cell, input.value, input.format);
  cell.name = input.name;
  asInput(cell);
  limited(sheet, address(3, row), { low: input.low, high: input.high, title: input.label });
  put(sheet.getCell(row, 4), 'input');
  for (const c of [4, 7]) sheet.getCell(row, c).alignment = { horizontal: 'left', indent: 1 };
  put(sheet.getCell(row, 5), input.value, input.format);
  put(sheet.getCell(row, 6), live(`IF(${address(3, row)}=${address(5, row)},0,1)`, 0), FORMAT.year);
  put(sheet.getCell(row, 7), input.note === '' ? null : input.note);
}

function writeFigure(sheet: Worksheet, row: number, of: { readonly label: string; readonly unit: string; readonly formula: string; readonly result: number; readonly format: string }): void {
  put(sheet.getCell(row, 1), of.label);
  put(sheet.getCell(row, 2), of.unit);
  put(sheet.getCell(row, 3), live(of.formula, of.result), of.format);
}

/** Named inputs in heavy boxes, each beside the value of the run, and how many inputs of the book are no longer as run. */
export function writeInputs(sheet: Worksheet, at: number, of: { readonly model: MoneyModel; readonly currency: string; readonly elsewhere: readonly ChangedInputs[] }): InputsPlace {
  writeHead(sheet, at);
  const inputs = inputsOf(of.model, of.currency);
  const first = at + 2;
  inputs.forEach((input, i) => {
    writeInput(sheet, first + i, input);
  });
  const last = first + inputs.length - 1;
  const rateRow = first + inputs.findIndex((i) => i.name === 'labour_rate');
  let row = last + 1;
  writeFigure(sheet, row, { label: 'Labour rate beside the run', unit: 'times', formula: `IF(${address(5, rateRow)}>0,${address(3, rateRow)}/${address(5, rateRow)},1)`, result: 1, format: FORMAT.factor });
  sheet.getCell(row, 3).name = 'labour_factor';
  const counted = row + 1;
  row = counted;
  writeFigure(sheet, row, { label: 'Inputs changed here', unit: 'count', formula: `SUM(${address(6, first)}:${address(6, last)})`, result: 0, format: FORMAT.year });
  for (const { sheet: name, count } of of.elsewhere) {
    if (count === null) continue;
    row += 1;
    writeFigure(sheet, row, { label: `Inputs changed on ${name}`, unit: 'count', formula: count, result: 0, format: FORMAT.year });
  }
  const changed = row + 1;
  writeFigure(sheet, changed, { label: 'Inputs changed', unit: 'count', formula: `SUM(${address(3, counted)}:${address(3, row)})`, result: 0, format: FORMAT.year });
  return { changedCell: address(3, changed), nextRow: changed + 2 };
}
