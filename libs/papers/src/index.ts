export { english, formatOf, type PaperTerms } from './paper-terms.js'; // how papers are printed
export type { PaperFile } from './page/paper-bytes.js';
export { isPaperFormat, type PaperFormat } from './page/paper.js';
export type { TextKey, Texts } from './texts/texts.js'; // the one table of sentences
export { isPaperName, paper, PAPER_NAMES, type PaperName } from './paper-names.js'; // every paper by its name
