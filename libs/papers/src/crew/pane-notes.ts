import type { WorkOrder } from '#planning';
import type { Say, TextKey } from '../texts/texts.js';
import { en } from '../texts/en.js';

/** A note with the walking numbers of the panes it holds for. */
export interface PaneNote {
  readonly note: string;
  readonly panes: readonly number[];
}

export const hasText = (key: string): key is TextKey => Object.hasOwn(en, key);

/** A word of the plan in the language of the papers, or as it stands where the table does not know it. */
export const wordOf = (say: Say, prefix: 'outcome' | 'reach' | 'unit', word: string): string => {
  const key = `${prefix}.${word}`;
  // Words of the table carry no holes.
  return hasText(key) ? (say as (key: TextKey) => string)(key) : word.replaceAll('-', ' ');
};

/** The unit of a quantity, in the singular for one. */
export const unitOf = (say: Say, unit: string, quantity: number): string => wordOf(say, 'unit', quantity === 1 && hasText(`unit.${unit}.one`) ? `${unit}.one` : unit);

/** Suitability, consent and notes of an order, each said once with its panes, in the order of the walk. */
export function paneNotes(order: WorkOrder, say: Say): PaneNote[] {
  const byNote = new Map<string, number[]>();
  const add = (note: string, pane: number): void => void byNote.set(note, [...(byNote.get(note) ?? []), pane]);
  order.panes.forEach((pane, i) => {
    add(say('crew.outcome', { outcome: wordOf(say, 'outcome', pane.outcome), consent: pane.consent }), i + 1);
    for (const note of pane.notes) add(note, i + 1);
  });
  return [...byNote].map(([note, panes]) => ({ note, panes }));
}

/** 1, 2, 3, 5 as "1–3, 5". */
export function runsText(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const n of numbers) {
    const last = runs[runs.length - 1];
    if (last !== undefined && n === last[1] + 1) last[1] = n;
    else runs.push([n, n]);
  }
  return runs.map(([from, to]) => (from === to ? String(from) : to === from + 1 ? `${String(from)}, ${String(to)}` : `${String(from)}–${String(to)}`)).join(', ');
}
