import type { Worksheet } from 'exceljs';
import { address, live, put, section } from '../cells.js';
import { asInput, bold, FORMAT } from '../style.js';
import type { MoneyModel } from './money-model.js';

interface Input {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly format: string;
  readonly note: string;
}

/** Rows of the inputs and the cell that counts the changed ones. */
export interface InputsPlace {
  readonly changedCell: string;
  readonly nextRow: number;
}

function inputsOf({ inputs }: MoneyModel): Input[] {
  const share = (name: string, label: string, of: Pick<Input, 'value' | 'unit' | 'note'>): Input => ({ name, label, format: FORMAT.percentTwo, ...of });
  const factor = (name: string, label: string, note: string): Input => ({ name, label, unit: 'times', value: 1, format: FORMAT.three, note });
  return [
    share('discount_rate', 'Discount rate', { value: inputs.discount, unit: 'a year, real', note: 'without inflation' }),
    share('price_rise', 'Rise of energy prices', { value: inputs.rise, unit: 'a year, real', note: 'above inflation, all energy' }),
    share('film_degradation', 'Effect a film loses', { value: inputs.degradation, unit: 'a year', note: 'of what it still has' }),
    factor('electricity_price_factor', 'Electricity price factor', 'on the yearly saving net of added heating: every rate, demand price and fuel price of the tariffs by the same factor'),
    factor('film_cost_factor', 'Film cost factor', 'on the price of rolls'),
    factor('labour_cost_factor', 'Labour cost factor', 'on labour and removal; visits stay'),
    share('contingency_share', 'Contingency', { value: inputs.contingency, unit: 'share', note: 'inside the cap' }),
    share('material_tax', 'Tax on film, consumables, freight', { value: inputs.materialTax, unit: 'share', note: '' }),
    share('labour_tax', 'Tax on labour and removal', { value: inputs.labourTax, unit: 'share', note: '' }),
  ];
}

/** Named inputs in heavy boxes, each beside the value the plan was made with. */
export function writeInputs(sheet: Worksheet, at: number, model: MoneyModel): InputsPlace {
  section(sheet, at, 'Inputs: change the boxed cells');
  ['', 'Unit', 'Now', '', 'Plan', 'Changed', 'What it moves'].forEach((text, i) => {
    put(sheet.getCell(at + 1, i + 1), text === '' ? null : text);
    bold(sheet.getCell(at + 1, i + 1));
    if (i === 2 || i === 4 || i === 5) sheet.getCell(at + 1, i + 1).alignment = { horizontal: 'right' };
    if (i === 6) sheet.getCell(at + 1, i + 1).alignment = { horizontal: 'left', indent: 1 };
  });
  const inputs = inputsOf(model);
  const first = at + 2;
  inputs.forEach((input, i) => {
    const row = first + i;
    put(sheet.getCell(row, 1), input.label);
    put(sheet.getCell(row, 2), input.unit);
    const cell = sheet.getCell(row, 3);
    put(cell, input.value, input.format);
    cell.name = input.name;
    asInput(cell);
    const low = input.unit === 'times' || input.unit === 'share' ? 0 : -0.5;
    cell.dataValidation = { type: 'decimal', operator: 'between', formulae: [low, input.unit === 'times' ? 100 : 1], showErrorMessage: true, errorTitle: input.label, error: `A number from ${String(low)} to ${input.unit === 'times' ? '100' : '1'}` };
    put(sheet.getCell(row, 4), 'input');
    sheet.getCell(row, 4).alignment = { horizontal: 'left', indent: 1 };
    sheet.getCell(row, 7).alignment = { horizontal: 'left', indent: 1 };
    put(sheet.getCell(row, 5), input.value, input.format);
    put(sheet.getCell(row, 6), live(`IF(${address(3, row)}=${address(5, row)},0,1)`, 0), FORMAT.year);
    put(sheet.getCell(row, 7), input.note === '' ? null : input.note);
  });
  const last = first + inputs.length - 1;
  const changed = last + 1;
  put(sheet.getCell(changed, 1), 'Inputs changed');
  put(sheet.getCell(changed, 2), 'count');
  put(sheet.getCell(changed, 3), live(`SUM(${address(6, first)}:${address(6, last)})`, 0), FORMAT.year);
  return { changedCell: address(3, changed), nextRow: changed + 2 };
}
