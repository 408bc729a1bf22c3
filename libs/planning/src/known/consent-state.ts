import type { Consent } from '#calc';

/** Whether a pane may carry a film, from which date, and what it waits for. */
export interface ConsentState {
  readonly state: 'free' | 'from' | 'waiting' | 'refused';
  /** ISO date; null while free of conditions, waiting without a date, or refused. */
  readonly date: string | null;
  /** What is waited for, one subject a letter. */
  readonly waitsFor: readonly string[];
  /** In words for the crew sheet and the workbook. */
  readonly text: string;
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

const letter = (consent: Consent): string => `${consent.building}: ${consent.kind}${consent.glazing === null ? '' : `, ${consent.glazing}`}${consent.film === null ? '' : `, film ${consent.film}`}`;

/**
 * Puts the outcome of the suitability rules and the letters on file together. A pane that asks for consent and has none on file waits for
 * one letter per building, glazing type and film. Needed or asked without a date waits; refused is out; the latest date rules.
 */
export function consentState(question: ConsentQuestion, consents: readonly Consent[]): ConsentState {
  const onFile = consents.filter((c) => covers(c, question) && c.state !== 'not-needed');
  const waived = consents.some((c) => covers(c, question) && c.state === 'not-needed' && isAboutGlass(c));
  const refused = onFile.find((c) => c.state === 'refused');
  if (refused !== undefined) return { state: 'refused', date: null, waitsFor: [], text: `refused: ${letter(refused)}` };
  const waitsFor = onFile.filter((c) => c.state !== 'given' && c.date === null).map((c) => letter(c));
  const asks = question.outcome !== 'no-listed-trigger';
  if (asks && !waived && !onFile.some(isAboutGlass)) {
    const what = question.outcome === 'ask-first' ? 'answer of the film and glass makers' : 'written consent of the film and glass makers';
    waitsFor.push(`${question.building}: ${what}, ${question.glazing}, film ${question.film}`);
  }
  if (waitsFor.length > 0) return { state: 'waiting', date: null, waitsFor, text: `waits for ${waitsFor.join('; ')}` };
  const dates = onFile.map((c) => c.date).filter((d) => d !== null).sort();
  const date = dates.at(-1) ?? null;
  if (date === null) return { state: 'free', date: null, waitsFor: [], text: asks ? 'consent on file' : 'none needed' };
  const asked = onFile.find((c) => c.date === date);
  const words = asked?.state === 'given' ? 'given' : 'expected';
  return { state: 'from', date, waitsFor: [], text: `${words} ${date}${asked?.reference == null ? '' : ` (${asked.reference})`}` };
}
