import type { Plan, RankedDwelling, RankedFacade } from '../plan/plan.js';
import type { Figure } from './figure.js';
import { digits, dollars } from './receipt-numbers.js';
import { type Receipt, type ReceiptStep, workedOut } from './receipt.js';
import { dwellingRow } from './survey-rows.js';

function rankReceipt(plan: Plan, of: { readonly row: RankedDwelling; readonly list: readonly RankedDwelling[]; readonly id: string; readonly title: string }): Receipt {
  const { row, list } = of;
  const perDollar = row.yearlyCooling_cents / row.cost_cents;
  const before = list.filter((other) => other.perDollar > row.perDollar || (other.perDollar === row.perDollar && other.option < row.option)).length;
  const steps: ReceiptStep[] = [
    { label: 'rank figure', substituted: `${dollars(row.yearlyCooling_cents)} ÷ ${dollars(row.cost_cents)} = ${digits(perDollar, 6)} a year for each dollar`, value: perDollar, unit: '1/yr' },
    { label: 'eight in ten lie within', substituted: `${digits(row.perDollarLow, 6)} … ${digits(row.perDollarHigh, 6)}`, value: row.perDollarHigh - row.perDollarLow, unit: '1/yr' },
    { label: 'place', substituted: `${String(before)} of ${String(list.length)} stand higher, so ${String(before + 1)}; band ${row.band}: its members cannot be told apart`, value: before + 1, unit: 'place' },
  ];
  return {
    figure: of.id,
    title: of.title,
    value: row.rank,
    unit: 'place',
    formula: 'rank figure = yearly cooling cost cut, all payers, mean over the film’s life, before added heating ÷ installed cost; the highest is first, equal ones by name',
    steps,
    rows: dwellingRow(plan, row.dwelling, ['floor_area', 'cooling_set_point', 'cooling_efficiency']),
    assumptions: [],
    compute: null,
    computeWhy: 'a division and a count; no kernel ranks a list',
    worked: workedOut(row.rank, before + 1, 'the list is not in order'),
    see: plan.lines.some((l) => l.option.id === row.option) ? [`line/${row.dwelling}/saving`, `line/${row.dwelling}/cost`] : [],
  };
}

const figure = (of: { readonly row: RankedDwelling; readonly id: string; readonly title: string; readonly list: (plan: Plan) => readonly RankedDwelling[] }): Figure => ({
  id: of.id,
  title: of.title,
  receipt: ({ plan }) => rankReceipt(plan, { ...of, list: of.list(plan) }),
});

/** Place of a dwelling in the ranked list. */
export const dwellingRank = (row: RankedDwelling): Figure => figure({ row, id: `rank/${row.dwelling}`, title: `Rank of ${row.dwelling}`, list: (plan) => plan.rankedDwellings });

/** Place of one side of a dwelling. */
export const facadeRank = (row: RankedFacade): Figure =>
  figure({ row, id: `rank/${row.dwelling}/${digits(row.azimuth_deg, 2)}`, title: `Rank of the side of ${row.dwelling} at ${digits(row.azimuth_deg, 2)}°`, list: (plan) => plan.rankedFacades });

/** The same under the line of the plan. */
export const lineRank = (row: RankedDwelling): Figure => figure({ row, id: `line/${row.dwelling}/rank`, title: `Rank of ${row.dwelling}`, list: (plan) => plan.rankedDwellings });
