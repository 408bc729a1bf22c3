import { crewSentences } from './crew-en.js';
import { daySentences } from './days-en.js';

/** Sentences of the plan that a crew reads, in English; the table of the papers takes them in. */
export const planSentences = { ...crewSentences, ...daySentences } as const;
export type PlanTextKey = keyof typeof planSentences;

/** The names between braces in a sentence. */
export type Holes<S extends string> = S extends `${string}{${infer Name}}${infer Rest}` ? Name | Holes<Rest> : never;

/** What fills a hole: data as it stands, another sentence, or a list of either. */
export type Filling = string | number | Told | readonly (string | Told)[];

/** A sentence by its name in the table and what fills it, so that it can be said in any language. */
export interface Told {
  readonly key: string;
  readonly with?: Readonly<Record<string, Filling>>;
  /** What to say where the table has no such sentence: the own words of a rule a user has added. */
  readonly otherwise?: string;
}

/** Sentences in one language. */
export interface Language {
  /** As PDF readers want it, for example en-US; it also chooses the form for a count. */
  readonly language: string;
  readonly sentences: Readonly<Record<string, string>>;
  /** Reasons of the suitability rules as `rule.ID`, and forms of counts as `KEY.few`; what is missing is said in the rule's own words, or in the sentence's plain form. */
  readonly more?: Readonly<Record<string, string>>;
}

type FillingOf<S extends string> = [Holes<S>] extends [never] ? [] : [Readonly<Record<Holes<S>, Filling>>];

/** A sentence of the table with what fills it. A hole named `count` chooses the form, as one pane and two panes. */
export function told<K extends PlanTextKey>(key: K, ...filling: FillingOf<(typeof planSentences)[K]>): Told {
  return filling[0] === undefined ? { key } : { key, with: filling[0] };
}

/** A word of the plan as the table has it under a group: a side, a defect; as it stands where the table does not know it. */
export const toldWord = (group: 'side' | 'defect', word: string): Told => ({ key: `${group}.${word}`, otherwise: word });

const forms = new Map<string, Intl.PluralRules>();

function formOf(language: string, count: number): string {
  let rules = forms.get(language);
  if (rules === undefined) forms.set(language, (rules = new Intl.PluralRules(language)));
  return rules.select(count);
}

/** Says a sentence in a language. */
export function tell(sentence: Told, of: Language): string {
  const { key, with: filling = {}, otherwise } = sentence;
  const find = (name: string): string | undefined => of.sentences[name] ?? of.more?.[name];
  const { count } = filling;
  const form = typeof count === 'number' ? find(`${key}.${formOf(of.language, count)}`) : undefined;
  const text = form ?? find(key) ?? otherwise ?? key;
  const said = (part: string | number | Told): string => (typeof part === 'object' ? tell(part, of) : String(part));
  return text.replace(/\{(\w+)\}/g, (hole, name: string) => {
    const part = filling[name];
    if (part === undefined) return hole;
    return Array.isArray(part) ? part.map(said).join('; ') : said(part as string | number | Told);
  });
}

export const ENGLISH: Language = { language: 'en-US', sentences: planSentences };

/** The sentence in English, as plan, workbook and screen have it. */
export const inEnglish = (sentence: Told): string => tell(sentence, ENGLISH);

/** Words as one reads a list of two: film A and film B. */
export const andOf = (parts: readonly (string | Told)[]): string | Told => (parts.length < 2 ? (parts[0] ?? '') : parts.slice(1).reduce<string | Told>((first, last) => told('list.and', { first, last }), parts[0]!));

/** A room the survey does not name. */
export const ROOM_NOT_NAMED = inEnglish(told('note.noRoom'));

/** The codes a crew writes beside a pane. */
export const DEFECT_CODES = Object.keys(crewSentences).flatMap((key) => (key.startsWith('defect.') ? [key.slice('defect.'.length)] : []));

