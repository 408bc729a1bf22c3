import { type Filling, type Holes, type Language, tell, type Told } from '#planning';
import type { en } from './en.js';

export type TextKey = keyof typeof en;

/** All sentences in one language; another language is another such object. */
export interface Texts extends Language {
  readonly sentences: Readonly<Record<TextKey, string>>;
}

type Fillings<K extends TextKey> = [Holes<(typeof en)[K]>] extends [never] ? [] : [Readonly<Record<Holes<(typeof en)[K]>, Filling>>];

/** Says a sentence of the table with its holes filled, or one that a plan names. */
export interface Say {
  <K extends TextKey>(key: K, ...filling: Fillings<K>): string;
  readonly told: (sentence: Told) => string;
}

export function sayIn(texts: Texts): Say {
  const say = <K extends TextKey>(key: K, ...filling: Fillings<K>): string => tell(filling[0] === undefined ? { key } : { key, with: filling[0] }, texts);
  return Object.assign(say, { told: (sentence: Told) => tell(sentence, texts) });
}
