import type { Catalogue } from '#catalogue';
import type { Plan } from '../plan/plan.js';
import type { Receipt } from './receipt.js';
import type { SurveyAgain } from './survey-again.js';

/** What a figure is worked out from again: the plan as kept, the built-in data it was made with, and the survey for figures that hang on hours. */
export interface ReceiptAt {
  readonly plan: Plan;
  readonly catalogue: Catalogue;
  /** Read only when a figure asks for it. */
  readonly survey: () => Promise<SurveyAgain>;
}

/** A figure that can be opened. */
export interface Figure {
  /** Readable and stable: `line/EC/101/cost`. */
  readonly id: string;
  readonly title: string;
  readonly receipt: (at: ReceiptAt) => Receipt | Promise<Receipt>;
}

/** Part of an id that is not a dwelling or a window: its slashes are written as %2F. */
export const part = (text: string): string => encodeURIComponent(text);

/** A name in words as part of an id: `Single clear, 3 mm (1/8 in)` is `single-clear-3-mm-1-8-in`. */
export const worded = (name: string): string => name.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-').replaceAll(/^-|-$/g, '');
