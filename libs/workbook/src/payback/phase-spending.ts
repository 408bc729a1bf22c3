import type { Plan } from '#planning';
import type { Worksheet } from 'exceljs';
import { address, dollars, live, sumWhere } from '../cells.js';
import type { FilmPlace } from '../sheets/film-to-buy.js';
import { FORMAT } from '../style.js';
import { type Column, type TablePlace, writeTable } from '../table.js';
import { type MoneyModel, type PhaseMoney, toCent } from './money-model.js';

export const SPENDING_COLUMN = { workYear: 3, total: 13, over: 15 } as const;

/** Spending of each phase rebuilt by formula from what was bought and worked. */
export function writePhaseSpending(sheet: Worksheet, at: number, of: { readonly plan: Plan; readonly model: MoneyModel; readonly film: FilmPlace }): TablePlace {
  const { inputs, phases } = of.model;
  const { film } = of;
  const money = of.plan.terms.currency;
  const labour = (p: PhaseMoney): number => p.labour + p.contractor;
  const material = (p: PhaseMoney): number => p.film + dollars(p.result.spending.consumables_cents + p.result.spending.freight_cents);
  const tax = (p: PhaseMoney): number => toCent(material(p) * inputs.materialTax) + toCent(labour(p) * inputs.labourTax);
  const before = (p: PhaseMoney): number => material(p) + labour(p) + dollars(p.result.spending.visits_cents) + tax(p);
  const contingency = (p: PhaseMoney): number => toCent(before(p) * inputs.contingency);
  const total = (p: PhaseMoney): number => before(p) + contingency(p);
  const c = (column: number, row: number): string => address(column, row);
  const figure = (head: string, value: Column<PhaseMoney>['value']): Column<PhaseMoney> => ({ head, unit: money, width: 11, format: FORMAT.money, isSummed: true, value });
  const columns: readonly Column<PhaseMoney>[] = [
    { head: 'Phase', unit: '', width: 34, value: (p) => p.result.phase.id },
    { head: 'From', unit: 'date', width: 13, value: (p) => p.result.phase.firstDay },
    { head: 'Year', unit: 'of the study', width: 13, format: FORMAT.year, value: (p) => p.workYear },
    figure('Film', (p, _, r) => live(`ROUND(${sumWhere(film.cost, [[film.phases, c(1, r)]])}*film_cost_factor,2)`, p.film)),
    figure('Consumables, run', (p) => dollars(p.result.spending.consumables_cents)),
    figure('Freight, run', (p) => dollars(p.result.spending.freight_cents)),
    figure('Labour by the hour, run rate', (p) => p.labour),
    figure('Contractor, run', (p) => p.contractor),
    figure('Visits, run', (p) => dollars(p.result.spending.visits_cents)),
    figure('Tax', (p, _, r) => live(`ROUND(SUM(${c(4, r)}:${c(6, r)})*material_tax,2)+ROUND((${c(7, r)}*labour_factor+${c(8, r)})*labour_tax,2)`, tax(p))),
    figure('Before contingency', (p, _, r) => live(`SUM(${c(4, r)}:${c(6, r)})+ROUND(${c(7, r)}*labour_factor,2)+SUM(${c(8, r)}:${c(10, r)})`, before(p))),
    figure('Contingency', (p, _, r) => live(`ROUND(${c(11, r)}*contingency_share,2)`, contingency(p))),
    figure('Spent', (p, _, r) => live(`${c(11, r)}+${c(12, r)}`, total(p))),
    figure('Cap, run', (p) => dollars(p.result.phase.cap_cents)),
    figure('Over the cap', (p, _, r) => live(`ROUND(MAX(0,${c(13, r)}-${c(14, r)}),2)`, toCent(Math.max(0, total(p) - dollars(p.result.phase.cap_cents))))),
  ];
  return writeTable(sheet, at, { columns, rows: phases, total: 'All phases' });
}

/** Total spent in a phase at the plan's own inputs; as the formulas give it. */
export function spentInPhase(phase: PhaseMoney, model: MoneyModel): number {
  const s = phase.result.spending;
  const material = phase.film + dollars(s.consumables_cents + s.freight_cents);
  const labour = phase.labour + phase.contractor;
  const before = material + labour + dollars(s.visits_cents) + toCent(material * model.inputs.materialTax) + toCent(labour * model.inputs.labourTax);
  return before + toCent(before * model.inputs.contingency);
}
