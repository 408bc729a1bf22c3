import { capCurvePictures, cashPicture, english, type Picture, pngOf, rankingPicture, sayIn, svgOf } from '#papers';
import type { Plan } from '#planning';
import type { Book } from '../book.js';
import { paragraph, section, titleRow } from '../cells.js';
import { printed } from '../print.js';
import { SHEET } from '../sheet-names.js';

interface Shown {
  readonly drawn: Picture;
  /** What else a reader who cannot see it should know. */
  readonly words: string;
}

const COLUMNS = 10;
const WIDTH = 9.7;
const LONGEST = 100;
const PX_PER_PT = 1;
const PX_PER_ROW = 20;

/** Pictures of the plan, black on white, one below the other, each with its title in a cell for those who cannot see it. */
export function picturesSheet(book: Book, plan: Plan): void {
  const sheet = book.open({ name: SHEET.pictures, frozen: { rows: 2, columns: 0 }, width: COLUMNS * WIDTH });
  for (let c = 1; c <= COLUMNS; c++) sheet.getColumn(c).width = WIDTH;
  titleRow(sheet, SHEET.pictures, `${plan.name}: ranking with ranges, value against cap, cash position; figures of the run`);
  const { picture } = book;
  let row = 4;
  if (picture === null) {
    row = paragraph(sheet, row, { text: 'A workbook of this size is written without pictures; they are on the printed papers of the plan.', longest: LONGEST });
  } else {
    const say = sayIn(english);
    const [best] = plan.rankedDwellings;
    const first = best === undefined ? '' : ` First is ${best.dwelling} with ${best.perDollar.toFixed(3)} a year per dollar, ${best.perDollarLow.toFixed(3)} to ${best.perDollarHigh.toFixed(3)}.`;
    const all: Shown[] = [
      { drawn: rankingPicture(plan, say), words: `${first} Figures: sheet ${SHEET.dwellings}.` },
      ...capCurvePictures(plan, say).map((drawn): Shown => ({ drawn, words: ` Figures: sheet ${SHEET.capCurve}.` })),
      { drawn: cashPicture(plan, say), words: ` Figures, discounted: sheet ${SHEET.payback}.` },
    ];
    for (const { drawn, words } of all) {
      section(sheet, row, drawn.title);
      const [width, height] = [drawn.width * PX_PER_PT, drawn.height * PX_PER_PT];
      picture(sheet, { png: pngOf(svgOf(drawn)), row: row + 1, width, height, words: `${drawn.title}.${words}` });
      row += Math.ceil(height / PX_PER_ROW) + 3;
      sheet.getRow(row - 1).addPageBreak();
    }
  }
  printed(sheet, { columns: COLUMNS, rows: row, headRows: { first: 1, last: 2 } });
}
