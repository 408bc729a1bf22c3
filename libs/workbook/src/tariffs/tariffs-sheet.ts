import { type PriceStep, readTariff, type Tariff } from '#calc';
import type { Plan } from '#planning';
import type { Book } from '../book.js';
import { address, type CellContent, live, quoted } from '../cells.js';
import { type ChangedInputs, changedInputs } from '../changed-inputs.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import type { Column } from '../table.js';

/** A list of price steps as it stands on the sheet. */
export interface StepsPlace {
  readonly first: number;
  readonly last: number;
  /** Upper ends are stated for a day and grow with the days of the month. */
  readonly daily: boolean;
  readonly steps: readonly PriceStep[];
}

/** Where a tariff stands, and the tariff itself for the results its formulas have now. */
export interface TariffPlace {
  readonly tariff: Tariff;
  readonly energy: readonly StepsPlace[];
  /** Price of exported kWh by energy period; null where the tariff pays nothing for them. */
  readonly sellRow: readonly (number | null)[];
  readonly demand: readonly StepsPlace[];
  readonly flatDemand: readonly StepsPlace[];
  readonly fixedRow: number;
  readonly minimumRow: number;
}

interface StepRow {
  readonly tariff: string;
  readonly charge: string;
  readonly period: number | null;
  readonly step: PriceStep | null;
  readonly isFirst: boolean;
  readonly hasStep: boolean;
  readonly price: number;
  readonly before: number;
  readonly from: number;
  readonly unit: string;
}

/** Columns the bills point at. */
export const TARIFF_COLUMN = { from: 5, upTo: 6, price: 7, over: 8, limitAsRun: 9, priceAsRun: 10 } as const;

const dollarsOf = (price_cents: number): number => price_cents / 100;

function stepRows(tariff: string, of: { readonly charge: string; readonly period: number | null; readonly unit: string; readonly steps: readonly PriceStep[] }): StepRow[] {
  return of.steps.map((step, i): StepRow => {
    const before = of.steps[i - 1];
    return { tariff, charge: of.charge, period: of.period, step, isFirst: i === 0, hasStep: true, price: dollarsOf(step.price_cents), before: before === undefined ? 0 : dollarsOf(before.price_cents), from: before?.upTo ?? 0, unit: of.unit };
  });
}

const single = (tariff: string, charge: string, of: { readonly period: number | null; readonly price: number; readonly unit: string }): StepRow => ({ tariff, charge, ...of, step: null, isFirst: true, hasStep: false, before: 0, from: 0 });

interface Laid {
  readonly rows: StepRow[];
  readonly places: TariffPlace[];
}

/** Lays the charges of all tariffs one below the other and notes their rows. */
function laid(tariffs: readonly Tariff[], firstRow: number): Laid {
  const rows: StepRow[] = [];
  const put = (more: readonly StepRow[]): number => {
    rows.push(...more);
    return firstRow + rows.length - more.length;
  };
  const place = (steps: readonly PriceStep[], first: number): StepsPlace => ({ first, last: first + steps.length - 1, daily: steps.some((s) => s.daily), steps });
  const places = tariffs.map((tariff): TariffPlace => {
    const { label } = tariff;
    const list = (charge: string, unit: string, lists: readonly (readonly PriceStep[])[]): StepsPlace[] => lists.map((steps, period) => place(steps, put(stepRows(label, { charge, period: lists.length > 1 ? period + 1 : null, unit, steps }))));
    const energy = list('energy', 'kWh', tariff.energy);
    const sellRow = tariff.energy.map((steps, p) => {
      const sell = steps.find((s) => s.sell_cents !== null)?.sell_cents ?? null;
      return sell === null ? null : put([single(label, 'exported energy', { period: p + 1, price: dollarsOf(sell), unit: 'kWh' })]);
    });
    const demand = list('demand by period', 'kW', tariff.demand?.steps ?? []);
    const flatDemand = list('greatest demand', 'kW', tariff.flatDemand?.steps ?? []);
    const fixedRow = put([single(label, 'fixed charge', { period: null, price: dollarsOf(tariff.fixed_cents), unit: tariff.fixedPer })]);
    const minimumRow = put([single(label, 'least bill', { period: null, price: dollarsOf(tariff.minimum_cents), unit: tariff.minimumPer })]);
    return { tariff, energy, sellRow, demand, flatDemand, fixedRow, minimumRow };
  });
  return { rows, places };
}

const upTo = (row: StepRow): CellContent => (row.step !== null && Number.isFinite(row.step.upTo) ? row.step.upTo : null);

const columns = (money: string): readonly Column<StepRow>[] => [
  { head: 'Tariff', unit: '', width: 16, value: (r) => r.tariff },
  { head: 'Charge', unit: '', width: 20, value: (r) => r.charge },
  { head: 'Period', unit: 'number', width: 8, format: FORMAT.year, value: (r) => r.period },
  { head: 'Per', unit: '', width: 8, value: (r) => r.unit },
  { head: 'From', unit: 'kWh or kW a month', width: 13, format: FORMAT.two, value: (r, _, row) => (r.hasStep ? (r.isFirst ? 0 : live(address(TARIFF_COLUMN.upTo, row - 1), r.from)) : null) },
  { head: 'Up to', unit: 'input', width: 13, format: FORMAT.two, value: upTo, input: { low: 0, high: 1e9, has: (r) => upTo(r) !== null } },
  { head: 'Price', unit: `${money}, input`, width: 12, format: FORMAT.factor, value: (r) => r.price, input: { low: -1000, high: 1e6 } },
  { head: 'Over the step before', unit: money, width: 12, format: FORMAT.factor, value: (r, _, row) => (r.hasStep ? live(r.isFirst ? address(TARIFF_COLUMN.price, row) : `${address(TARIFF_COLUMN.price, row)}-${address(TARIFF_COLUMN.price, row - 1)}`, r.price - r.before) : null) },
  { head: 'Up to, as run', unit: '', width: 12, format: FORMAT.two, value: upTo },
  { head: 'Price, as run', unit: money, width: 12, format: FORMAT.factor, value: (r) => r.price },
  { head: 'Limit holds', unit: '', width: 11, value: (r) => (r.step === null ? '' : r.step.daily ? 'a day' : 'a month') },
];

/** The prices of the plan's meters: every rate, limit, demand price, fixed charge and least bill is an input, and the bills follow. */
export function tariffsSheet(book: Book, plan: Plan): { readonly places: ReadonlyMap<string, TariffPlace>; readonly changed: ChangedInputs } {
  const tariffs = plan.tariffs.map((text) => readTariff(text));
  const made = (firstRow: number): Laid => laid(tariffs, firstRow);
  const rows = made(0).rows;
  const { place } = oneTableSheet(book, {
    name: SHEET.tariffs,
    about: `${plan.name}: prices of the meters the plan touches; boxed cells are inputs, the bills of ${SHEET.bills} follow`,
    notes: ['Prices hold at the study start. Which hours belong to which period, and the clock of the tariff, are part of the run: a changed schedule needs a new run.'],
    columns: columns(plan.terms.currency),
    rows,
    none: 'No line, so no tariff.',
  });
  const changed = changedInputs(SHEET.tariffs, place, [[TARIFF_COLUMN.upTo, TARIFF_COLUMN.limitAsRun], [TARIFF_COLUMN.price, TARIFF_COLUMN.priceAsRun]]);
  return { places: new Map(made(place.firstRow).places.map((p) => [p.tariff.label, p])), changed };
}

export const onTariffs = (range: string): string => `${quoted(SHEET.tariffs)}!${range}`;
