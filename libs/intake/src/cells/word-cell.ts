import { freeText, looksDamaged, plainText, trimmed, words } from './cell-text.js';
import { fault, known, lookAt, notKnown, type CellReader } from './reading.js';

/** Words that mean one of a fixed list; keys are the words kept. */
export type WordList<T extends string> = Readonly<Record<T, readonly string[]>>;

function wordOf<T extends string>(list: WordList<T>, text: string): T | null {
  const said = words(text);
  for (const [word, also] of Object.entries(list) as [T, readonly string[]][]) {
    if (words(word) === said || also.some((other) => words(other) === said)) return word;
  }
  return null;
}

const listed = (list: object): string => `one of: ${Object.keys(list).join(', ')}`;

/** One word of a list; another word is an error. */
export const wordCell =
  <T extends string>(list: WordList<T>): CellReader<T> =>
  (text) => {
    const word = wordOf(list, text);
    return word === null ? fault('unknown-word', listed(list), 'use one of these words, or leave the cell blank') : known(word);
  };

/** Several words of a list, apart by ; | or a comma. */
export const wordsCell =
  <T extends string>(list: WordList<T>): CellReader<readonly T[]> =>
  (text) => {
    const found: T[] = [];
    for (const part of plainText(text).split(/[;,|]/)) {
      const word = wordOf(list, part);
      if (word === null) return fault('unknown-word', listed(list), `"${part.trim()}" is not one of these; correct it`);
      if (!found.includes(word)) found.push(word);
    }
    return known(found.sort());
  };

/** Yes or no. */
export const yesNoCell: CellReader<boolean> = (text) => {
  const word = wordOf({ yes: ['y', 'true', '1', 'x'], no: ['n', 'false', '0'] }, text);
  return word === null ? fault('unknown-word', 'yes or no', 'write yes or no, or leave the cell blank') : known(word === 'yes');
};

/** Free text, as typed. */
export const textCell: CellReader<string> = (text) => known(freeText(text));

/** A list of free texts, apart by ; or |. */
export const textsCell: CellReader<readonly string[]> = (text) =>
  known([...new Set(freeText(text).split(/[;|]/).map((part) => part.trim()).filter((part) => part !== ''))].sort());

/** An id, kept as typed: leading zeros stay, outer and hard spaces go. */
export const idCell: CellReader<string> = (text) =>
  looksDamaged(text)
    ? fault('spreadsheet-damage', 'an id as text', 'a spreadsheet changed this id; type it again in a text cell')
    : known(freeText(text).replace(/ {2,}/g, ' '));

/** A glazing type by KEY or by the words people use; another word leaves it unknown. */
export const glazingCell: CellReader<string> = (text, { glazingWords }) => {
  const key = glazingWords.keyOf(trimmed(text));
  const expected = `a glazing KEY or words such as ${glazingWords.examples.join(', ')}`;
  if (key === null) return notKnown('glass-word', expected, 'taken as not known; give the KEY, or add the label\'s SHGC and U-factor');
  return known(key, /\?\s*$/.test(text) ? lookAt('glass-doubtful', expected, `taken as ${key}; test the glass before ordering film`) : undefined);
};
