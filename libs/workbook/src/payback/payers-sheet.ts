import { type PayerRule, payerShares } from '#calc';
import type { Plan } from '#planning';
import type { Book } from '../book.js';
import { address, live, quoted } from '../cells.js';
import { type ChangedInputs, changedInputs } from '../changed-inputs.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import type { Column } from '../table.js';

const COLUMN = { ownerShare: 3, lag: 4, vacancy: 5, asRun: 6, firstAge: 9 } as const;
const SHARE = { low: 0, high: 1 } as const;

/** Cell of the owner's part of a saving, by payer rule and age of the film in years from 1. */
export type OwnerPart = (rule: PayerRule, age_years: number) => { readonly cell: string; readonly share: number };

const keyOf = (rule: PayerRule): string => [rule.id, rule.ownerShare, rule.resetLag_yr, rule.vacancyShare].join('|');

/** owner = vacancy + (1 − vacancy) × (late + (1 − late) × share); `late` is the part of the year the bill still follows the old use. */
function ownerFormula(row: number, age_years: number): string {
  const [share, lag, vacancy] = [COLUMN.ownerShare, COLUMN.lag, COLUMN.vacancy].map((c) => `$${address(c, row)}`);
  return `${vacancy!}+(1-${vacancy!})*(1-(1-MIN(1,MAX(0,${lag!}-${String(age_years - 1)})))*(1-${share!}))`;
}

/** Who keeps a saving: shares, lag and vacancy are inputs, the owner's part by age of the film follows. Owner and tenant always sum to 1. */
export function payersSheet(book: Book, plan: Plan): { readonly ownerPart: OwnerPart; readonly changed: ChangedInputs; readonly shares: string } {
  const rules = [...new Map(plan.payback.lines.map((l) => [keyOf(l.payer), l.payer])).values()].sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1));
  const ages = Math.max(1, ...plan.payback.lines.map((l) => l.yearly_cents.length));
  const columns: readonly Column<PayerRule>[] = [
    { head: 'Payer rule', unit: '', width: 18, value: (r) => r.id },
    { head: 'Kind', unit: '', width: 12, value: (r) => r.kind },
    { head: 'Owner’s share', unit: 'input', width: 9, format: FORMAT.percentTwo, value: (r) => r.ownerShare, input: SHARE },
    { head: 'Bill follows after', unit: 'years, input', width: 10, format: FORMAT.two, value: (r) => r.resetLag_yr, input: { low: 0, high: 50 } },
    { head: 'Stands empty', unit: 'share, input', width: 10, format: FORMAT.percentTwo, value: (r) => r.vacancyShare, input: SHARE },
    { head: 'Owner’s share, as run', unit: '', width: 9, format: FORMAT.percentTwo, value: (r) => r.ownerShare },
    { head: 'Bill follows, as run', unit: 'years', width: 9, format: FORMAT.two, value: (r) => r.resetLag_yr },
    { head: 'Stands empty, as run', unit: '', width: 9, format: FORMAT.percentTwo, value: (r) => r.vacancyShare },
    ...Array.from({ length: ages }, (_, i): Column<PayerRule> => ({ head: `Year ${String(i + 1)}`, unit: 'owner', width: 8, format: FORMAT.percentTwo, value: (r, __, row) => live(ownerFormula(row, i + 1), payerShares(r, i + 1).owner) })),
  ];
  const { place } = oneTableSheet(book, {
    name: SHEET.payers,
    about: `${plan.name}: the part of a saving that stays with the owner, by year after the work; the tenant has the rest`,
    notes: ['While a dwelling stands empty the owner pays its bill. A ratio bill follows the lower use only after its lag; until then the owner keeps the saving.'],
    columns,
    rows: rules,
    none: 'No line, so no payer.',
  });
  const rowOf = new Map(rules.map((r, i) => [keyOf(r), place.firstRow + i]));
  const ownerPart: OwnerPart = (rule, age_years) => ({ cell: `${quoted(SHEET.payers)}!${address(COLUMN.firstAge + age_years - 1, rowOf.get(keyOf(rule))!)}`, share: payerShares(rule, age_years).owner });
  const changed = changedInputs(SHEET.payers, place, [COLUMN.ownerShare, COLUMN.lag, COLUMN.vacancy].map((c, i) => [c, COLUMN.asRun + i]));
  const shares = `${quoted(SHEET.payers)}!${address(COLUMN.firstAge, place.firstRow)}:${address(COLUMN.firstAge + ages - 1, Math.max(place.firstRow, place.lastRow))}`;
  return { ownerPart, changed, shares };
}
