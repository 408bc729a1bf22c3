import type { Consent } from '#calc';
import { inEnglish, told, type Told } from '../words/told.js';

/** Whether a pane may carry a film, from which date, and what it waits for. */
export interface ConsentState {
  readonly state: 'free' | 'from' | 'waiting' | 'refused';
  /** ISO date; null while free of conditions, waiting without a date, or refused. */
  readonly date: string | null;
  /** What is waited for, one subject a letter. */
  readonly waitsFor: readonly string[];
  /** In words for the crew sheet and the workbook. */
  readonly text: string;
  readonly told: Told;
}

/** Kinds of consent that answer a suitability outcome about the glass itself. */
const ABOUT_GLASS = ['glass', 'film maker', 'test', 'warranty', 'manufacturer'];
const isAboutGlass = (consent: Consent): boolean => ABOUT_GLASS.some((word) => consent.kind.toLowerCase().includes(word));

export interface ConsentQuestion {
  readonly building: string;
  readonly glazing: string;
  /** The type as surveyed, where a label is used for the figures. */
  readonly surveyedGlazing: string | null;
  readonly film: string;
  readonly window: string;
  readonly outcome: 'no-listed-trigger' | 'ask-first' | 'written-consent-needed';
}

const covers = (consent: Consent, q: ConsentQuestion): boolean =>
  consent.building === q.building &&
  (consent.glazing === null || consent.glazing === q.glazing || consent.glazing === q.surveyedGlazing) &&
  (consent.film === null || consent.film === q.film) &&
  (consent.window === null || consent.window === q.window);

function letter({ building, kind, glazing, film }: Consent): Told {
  const plain = told('consent.letter', { building, kind });
  const ofGlass = glazing === null ? plain : told('consent.letterGlass', { letter: plain, glazing });
  return film === null ? ofGlass : told('consent.letterFilm', { letter: ofGlass, film });
}

const stated = (state: Omit<ConsentState, 'text'>): ConsentState => ({ ...state, text: inEnglish(state.told) });

/**
 * Puts the outcome of the suitability rules and the letters on file together. A pane that asks for consent and has none on file waits for
 * one letter per building, glazing type and film. Needed or asked without a date waits; refused is out; the latest date rules.
 */
export function consentState(question: ConsentQuestion, consents: readonly Consent[]): ConsentState {
  const onFile = consents.filter((c) => covers(c, question) && c.state !== 'not-needed');
  const waived = consents.some((c) => covers(c, question) && c.state === 'not-needed' && isAboutGlass(c));
  const refused = onFile.find((c) => c.state === 'refused');
  if (refused !== undefined) return stated({ state: 'refused', date: null, waitsFor: [], told: told('consent.refused', { letter: letter(refused) }) });
  const waitsFor = onFile.filter((c) => c.state !== 'given' && c.date === null).map((c) => letter(c));
  const asks = question.outcome !== 'no-listed-trigger';
  if (asks && !waived && !onFile.some(isAboutGlass)) {
    const { building, glazing, film } = question;
    waitsFor.push(told(question.outcome === 'ask-first' ? 'consent.answer' : 'consent.written', { building, glazing, film }));
  }
  if (waitsFor.length > 0) return stated({ state: 'waiting', date: null, waitsFor: waitsFor.map(inEnglish), told: told('consent.waits', { letters: waitsFor }) });
  const dates = onFile.map((c) => c.date).filter((d) => d !== null).sort();
  const date = dates.at(-1) ?? null;
  if (date === null) return stated({ state: 'free', date: null, waitsFor: [], told: told(asks ? 'consent.onFile' : 'consent.none') });
  const asked = onFile.find((c) => c.date === date);
  const state = told(asked?.state === 'given' ? 'consent.given' : 'consent.expected', { date });
  const reference = asked?.reference ?? null;
  return stated({ state: 'from', date, waitsFor: [], told: reference === null ? state : told('consent.reference', { state, reference }) });
}
