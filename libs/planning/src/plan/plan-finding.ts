import { inEnglish, type Told } from '../words/told.js';

/** Something to say about the data or the result: what, where, and what to do. */
export interface PlanFinding {
  readonly severity: 'error' | 'warning' | 'note';
  readonly subject: string;
  readonly text: string;
  readonly whatToDo: string;
  /** Text and what to do as sentences of the table, where a crew reads them. */
  readonly told?: { readonly text: Told; readonly whatToDo: Told };
}

/** A finding whose sentences stand in the table. */
export const toldFinding = (about: Pick<PlanFinding, 'severity' | 'subject'>, text: Told, whatToDo: Told): PlanFinding => ({ ...about, text: inEnglish(text), whatToDo: inEnglish(whatToDo), told: { text, whatToDo } });

/** Dwelling without an option, with the reason. */
export interface NotRanked {
  readonly dwelling: string;
  readonly why: string;
}
