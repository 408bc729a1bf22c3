import type { Known } from '#calc';
import { words } from './cell-text.js';

/** Translates what people write for a kind of glass into a KEY of the glazing catalogue. */
export interface GlazingWords {
  readonly keyOf: (text: string) => Known<string>;
  readonly examples: readonly string[];
}

/** A glazing KEY with the words that mean it and no other. */
export interface NamedGlazing {
  readonly key: string;
  readonly synonyms: readonly string[];
}

/** Word list made of a catalogue's keys and synonyms. @throws RangeError when one word means two keys */
export function glazingWordsOf(glazings: readonly NamedGlazing[]): GlazingWords {
  const byWord = new Map<string, string>();
  for (const { key, synonyms } of glazings) {
    for (const word of [key, ...synonyms].map(words)) {
      const other = byWord.get(word);
      if (other !== undefined && other !== key) throw new RangeError(`"${word}" must mean one glazing, got ${other} and ${key}`);
      byWord.set(word, key);
    }
  }
  return { keyOf: (text) => byWord.get(words(text)) ?? null, examples: glazings.slice(0, 3).map(({ synonyms, key }) => synonyms[0] ?? key) };
}
