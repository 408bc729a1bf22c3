import type { en } from './en.js';

export type TextKey = keyof typeof en;

/** The names between braces in a sentence. */
export type Holes<S extends string> = S extends `${string}{${infer Name}}${infer Rest}` ? Name | Holes<Rest> : never;

/** All sentences of the papers in one language; another language is another such table. */
export interface Texts {
  /** As PDF readers want it, for example en-US. */
  readonly language: string;
  readonly sentences: Readonly<Record<TextKey, string>>;
}

type Filling<K extends TextKey> = [Holes<(typeof en)[K]>] extends [never] ? [] : [Readonly<Record<Holes<(typeof en)[K]>, string | number>>];

/** Says a sentence of the table with its holes filled. */
export type Say = <K extends TextKey>(key: K, ...filling: Filling<K>) => string;

export function sayIn(texts: Texts): Say {
  return (key, ...filling) => {
    const values = (filling[0] ?? {}) as Readonly<Record<string, string | number>>;
    return texts.sentences[key].replace(/\{(\w+)\}/g, (hole, name: string) => (name in values ? String(values[name]) : hole));
  };
}
