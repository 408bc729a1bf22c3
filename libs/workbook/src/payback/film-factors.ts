import type { Plan } from '#planning';
import type { Worksheet } from 'exceljs';
import { address, fixed, live, paragraph, quoted, section, sumWhere } from '../cells.js';
import { SHEET } from '../sheet-names.js';
import type { FilmPlace } from '../sheets/film-to-buy.js';
import { FORMAT } from '../style.js';
import { type Column, writeTable } from '../table.js';
import type { MoneyModel } from './money-model.js';

/** Cells of the factors, in the order of the model's films. */
export interface FactorsPlace {
  readonly cells: readonly string[];
  readonly nextRow: number;
}

/** What the rolls of each film cost now beside the run: the factor on the film of every line. */
export function writeFilmFactors(sheet: Worksheet, at: number, of: { readonly plan: Plan; readonly model: MoneyModel; readonly film: FilmPlace }): FactorsPlace {
  const { plan, model, film } = of;
  const money = plan.terms.currency;
  const bought = (name: string): number => plan.cuts.reduce((sum, c) => sum + (c.film === name ? c.bought.reduce((s, b) => s + b.count * b.price_cents, 0) : 0), 0) / 100;
  const c = address;
  const columns: readonly Column<string>[] = [
    { head: 'Film', unit: '', width: 38, value: (name) => name },
    { head: 'Rolls now', unit: money, width: 13, format: FORMAT.money, value: (name, _, r) => live(sumWhere(film.cost, [[film.films, c(1, r)]]), bought(name)) },
    { head: 'Rolls, as run', unit: money, width: 13, format: FORMAT.money, value: (name, _, r) => live(sumWhere(film.costAsRun, [[film.films, c(1, r)]]), bought(name)) },
    { head: 'Factor', unit: 'times', width: 11, format: FORMAT.factor, value: (_name, _, r) => live(`IF(${c(3, r)}>0,${c(2, r)}/${c(3, r)},1)`, 1) },
  ];
  section(sheet, at, `Film price by film, from the rolls of ${SHEET.film}`);
  const table = writeTable(sheet, at + 1, { columns, rows: model.films });
  const next = model.films.length > 0 ? table.nextRow : paragraph(sheet, table.firstRow, { text: 'No film is used.', longest: 60 }) + 1;
  return { cells: model.films.map((_, i) => `${quoted(SHEET.payback)}!${fixed(4, table.firstRow + i)}`), nextRow: next };
}
