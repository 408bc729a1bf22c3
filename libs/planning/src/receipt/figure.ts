import type { Catalogue } from '#catalogue';
import type { Plan } from '../plan/plan.js';
import type { Receipt } from './receipt.js';

/** What a figure is worked out from again: the plan as kept, and the built-in data it was made with. */
export interface ReceiptAt {
  readonly plan: Plan;
  readonly catalogue: Catalogue;
}

/** A figure that can be opened. */
export interface Figure {
  /** Readable and stable: `line/EC/101/cost`. */
  readonly id: string;
  readonly title: string;
  readonly receipt: (at: ReceiptAt) => Receipt;
}

/** Part of an id that is not a dwelling or a window: its slashes are written as %2F. */
export const part = (text: string): string => encodeURIComponent(text);
