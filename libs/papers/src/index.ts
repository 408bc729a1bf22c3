export { english, formatOf, type PaperTerms } from './paper-terms.js'; // how papers are printed
export type { PaperFile } from './page/paper-bytes.js';
export { isPaperFormat, type PaperFormat } from './page/paper.js';
export type { TextKey, Texts } from './texts/texts.js'; // the one table of sentences
export { isPaperName, isPrintable, paper, PAPER_NAMES, type PaperName } from './paper-names.js'; // every paper by its name
export { sayIn, type Say } from './texts/texts.js';
export type { Picture } from './pictures/picture.js';
export { rankingPicture, type RankingAsk } from './pictures/ranking.js'; // pictures for pages and sheets
export { capCurvePictures } from './pictures/cap-curve.js';
export { cashPicture, cashPosition, type CashPosition } from './pictures/cash-position.js';
export { rollLayout } from './pictures/roll-layout.js';
export { rollSheets, type RollSheet } from './cuts/roll-sheets.js';
export { cuttingOrder, type CuttingOrder, type StraightCut } from './cuts/straight-cuts.js';
export { pngOf, svgOf } from './pictures/svg.js';
