import type { Plan, RankedDwelling, RankedFacade } from '#planning';
import type { Book } from '../book.js';
import { dollars } from '../cells.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import type { Column } from '../table.js';

const NOTE =
  'Rank = expected yearly cooling-cost reduction, all payers, before added heating, for each dollar of installed film. Rows of one band cannot be told apart. Eight in ten lie between low and high by what is specific to the dwelling. What bills may be expected to show of a modelled saving stands in its own column.';

const reasonAndPlan: readonly Column<RankedDwelling>[] = [
  { head: 'Expected in bills', unit: 'of the modelled', width: 10, format: FORMAT.percent, value: (r) => r.realisation?.middle ?? '' },
  { head: 'low', unit: '1 in 10 below', width: 7, format: FORMAT.percent, value: (r) => r.realisation?.low ?? '' },
  { head: 'high', unit: '1 in 10 above', width: 7, format: FORMAT.percent, value: (r) => r.realisation?.high ?? '' },
  { head: 'Reason', unit: '', width: 36, value: (r) => r.reason },
  { head: 'In the plan', unit: 'phase, or why not', width: 33, value: (r) => [r.inPlan, ...(r.differs === null ? [] : [r.differs])].join('; ') },
];

const figures = (currency: string): readonly Column<RankedDwelling>[] => [
  { head: 'Reduction per dollar', unit: '1/yr', width: 10, format: FORMAT.three, value: (r) => r.perDollar },
  { head: 'low', unit: '1/yr', width: 7, format: FORMAT.three, value: (r) => r.perDollarLow },
  { head: 'high', unit: '1/yr', width: 7, format: FORMAT.three, value: (r) => r.perDollarHigh },
  { head: 'Cooling cost reduced', unit: `${currency}/yr`, width: 10, format: FORMAT.money, value: (r) => dollars(r.yearlyCooling_cents) },
  { head: 'Installed cost', unit: currency, width: 10, format: FORMAT.money, value: (r) => dollars(r.cost_cents) },
  { head: 'Simple payback', unit: 'years', width: 9, format: FORMAT.one, value: (r) => r.simplePayback_yr ?? r.paybackWhy ?? 'not known' },
];

const place: readonly Column<RankedDwelling>[] = [
  { head: 'Rank', unit: '', width: 6, format: FORMAT.whole, value: (r) => r.rank },
  { head: 'Band', unit: '', width: 6.6, value: (r) => r.band },
  { head: 'Dwelling', unit: '', width: 14, value: (r) => r.dwelling },
];

/** What the expected shares rest on, once for all rows where they agree. */
function basisText(rows: readonly RankedDwelling[]): string {
  const bases = [...new Set(rows.map((r) => r.realisation?.basis ?? 'model, not calibrated'))].sort();
  return `The shares expected in bills rest on: ${bases.join('; ')}.`;
}

/** Dwellings by their best option, in the asked order, and those without any. */
export function rankedDwellingsSheet(book: Book, plan: Plan): void {
  oneTableSheet<RankedDwelling>(book, {
    name: SHEET.dwellings,
    isAsRun: true,
    about: `${plan.name}: ${String(plan.rankedDwellings.length)} dwellings ranked, ${String(plan.notRanked.length)} without an option (listed in ${SHEET.findings})`,
    notes: [`${NOTE} ${basisText(plan.rankedDwellings)}`],
    columns: [...place, { head: 'Building', unit: '', width: 9, value: (r) => r.building }, ...figures(plan.terms.currency), ...reasonAndPlan],
    rows: plan.rankedDwellings,
    none: 'No dwelling has an option.',
    frozenColumns: 3,
  });
}

/** Facades of dwellings, each by the option with that facade alone. */
export function rankedFacadesSheet(book: Book, plan: Plan): void {
  const facade: Column<RankedFacade> = { head: 'Facade', unit: '° from north', width: 9, format: FORMAT.whole, value: (r) => r.azimuth_deg };
  oneTableSheet<RankedFacade>(book, {
    name: SHEET.facades,
    isAsRun: true,
    about: `${plan.name}: the windows of a dwelling on one side of its building, filmed alone`,
    notes: [NOTE, 'Films in one dwelling share its cooling: the rows of one dwelling are not to be added up.'],
    columns: [...place, facade, ...figures(plan.terms.currency), ...reasonAndPlan],
    rows: plan.rankedFacades,
    none: 'No facade has an option.',
    frozenColumns: 3,
  });
}
