import type { AssumedValue } from '#calc';
import type { Plan, PricedFilm, Term } from '#planning';
import type { Worksheet } from 'exceljs';
import type { Book } from '../book.js';
import { paragraph, section, titleRow } from '../cells.js';
import { printed } from '../print.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import { type Column, setWidths, writeTable } from '../table.js';

const WIDTHS = [30, 36, 16, 34, 14, 60] as const;
const [FIRST, SECOND, THIRD, FOURTH, FIFTH, SIXTH] = WIDTHS;
const share = (value: number | null): string => (value === null ? 'not known' : String(value));

const termColumns: readonly Column<Term>[] = [
  { head: 'Term', unit: '', width: FIRST, value: (t) => t.label },
  { head: 'Key', unit: '', width: SECOND, value: (t) => t.key },
  { head: 'Value', unit: '', width: THIRD, format: 'General', value: (t) => t.value },
  { head: 'Unit', unit: '', width: FOURTH, value: (t) => t.unit },
  { head: 'Basis', unit: '', width: FIFTH, value: (t) => t.basis },
  { head: 'Source', unit: '', width: SIXTH, value: (t) => t.source },
];

const assumedColumns: readonly Column<AssumedValue>[] = [
  { head: 'Where', unit: '', width: FIRST, value: (a) => a.subject },
  { head: 'What', unit: '', width: SECOND, value: (a) => a.field },
  { head: 'Value', unit: '', width: THIRD, value: (a) => a.value },
  { head: 'Unit', unit: '', width: FOURTH, value: (a) => a.unit },
  { head: 'Basis', unit: '', width: FIFTH, value: (a) => a.basis },
  { head: 'Source', unit: '', width: SIXTH, value: (a) => a.source },
];

const weatherColumns: readonly Column<Plan['weather'][number]>[] = [
  { head: 'Building', unit: '', width: FIRST, value: (w) => w.building },
  { head: 'Weather', unit: '', width: SECOND, value: (w) => w.label },
  { head: '', unit: '', width: THIRD, value: () => null },
  { head: '', unit: '', width: FOURTH, value: () => null },
  { head: '', unit: '', width: FIFTH, value: () => null },
  { head: 'Source', unit: '', width: SIXTH, value: (w) => w.source },
];

const filmText = ({ film }: PricedFilm): string =>
  `sun through ${share(film.solarTransmittance)}, reflected ${share(film.frontReflectance)} outside and ${share(film.backReflectance)} inside; light through ${share(film.visibleTransmittance)}, reflected outside ${share(film.outsideVisibleReflectance)}; room emissivity ${share(film.roomEmissivity)}; on 3 mm clear glass`;

const filmColumns = (money: string): readonly Column<PricedFilm>[] => [
  { head: 'Film', unit: '', width: FIRST, value: (f) => `${f.film.id}, ${f.film.name}` },
  { head: 'Price basis', unit: '', width: SECOND, value: (f) => f.priceBasis },
  { head: 'Price of film used', unit: `${money}/m²`, width: THIRD, format: FORMAT.two, value: (f) => f.price_cents_m2 / 100 },
  { head: 'Waste of cutting all, life, quote', unit: 'share of pieces; years; until', width: FOURTH, value: (f) => `${(f.waste * 100).toFixed(1)} %; ${f.film.life_yr === null ? 'life not known' : `${String(f.film.life_yr)} years`}; ${f.film.quoteEnds ?? 'no date'}` },
  { head: 'Basis', unit: '', width: FIFTH, value: (f) => f.film.basis },
  { head: 'Figures and source', unit: 'shares of 1', width: SIXTH, value: (f) => `${filmText(f)}. ${f.film.source}` },
];

function part<Row>(sheet: Worksheet, at: number, of: { readonly title: string; readonly columns: readonly Column<Row>[]; readonly rows: readonly Row[] }): number {
  section(sheet, at, of.title);
  const next = writeTable(sheet, at + 1, of).nextRow;
  return of.rows.length > 0 ? next : paragraph(sheet, next, { text: 'None.', longest: 60 }) + 1;
}

/** Terms, assumed values, weather and films as used, each with its source. */
export function assumptionsSheet(book: Book, plan: Plan): void {
  const sheet = book.open({ name: SHEET.assumptions, frozen: { rows: 2, columns: 0 }, width: WIDTHS.reduce((sum, w) => sum + w, 0), hasManyRows: true });
  WIDTHS.forEach((width, i) => {
    sheet.getColumn(i + 1).width = width;
  });
  setWidths(sheet, termColumns);
  titleRow(sheet, SHEET.assumptions, `${plan.name}: what the figures rest on. Given = from the files; assumed = a default, to be replaced by what is known here. A change here needs a new run.`);
  let row = part(sheet, 4, { title: 'Terms of the money side; rates are real, prices of the study start', columns: termColumns, rows: plan.terms.terms });
  row = part(sheet, row, { title: 'Values assumed because the survey leaves them blank', columns: assumedColumns, rows: plan.assumed });
  row = part(sheet, row, { title: 'Weather', columns: weatherColumns, rows: plan.weather });
  row = part(sheet, row, { title: 'Films', columns: filmColumns(plan.terms.currency), rows: plan.films });
  printed(sheet, { columns: WIDTHS.length, rows: row, headRows: { first: 1, last: 2 } });
}
