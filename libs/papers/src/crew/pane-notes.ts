import { type KitItem, ROOM_NOT_NAMED, type Told, type WorkOrder } from '#planning';
import type { Say } from '../texts/texts.js';

/** A note with the walking numbers of the panes it holds for. */
export interface PaneNote {
  readonly note: string;
  readonly panes: readonly number[];
}

/** A word of the plan in the language of the papers, or as it stands where the table does not know it. */
export const wordOf = (say: Say, prefix: 'outcome' | 'reach' | 'side' | 'unit', word: string): string => {
  return say.told({ key: `${prefix}.${word}`, otherwise: word.replaceAll('-', ' ') });
};

/** The unit of a quantity, in the singular for one. */
export const unitOf = (say: Say, unit: string, quantity: number): string => wordOf(say, 'unit', quantity === 1 ? `${unit}.one` : unit);

/** A note in the language of the papers, or as the plan has it: the own words of a rule the table does not know, and of plans kept before. */
const noteOf = (named: Told | undefined, note: string, say: Say): string => (named === undefined ? note : say.told({ ...named, otherwise: note }));

/** The room as surveyed. */
export const roomOf = (room: string, say: Say): string => (room === ROOM_NOT_NAMED ? say('note.noRoom') : room);

/** What to take along, each with how much of it. */
export const kitText = (kit: readonly KitItem[], say: Say): string =>
  kit.map(({ what, quantity, unit, told }) => say('crew.kit.item', { what: told ?? what, quantity, unit: unitOf(say, unit, quantity) })).join(' · ');

/** Suitability, consent and notes of an order, each said once with its panes, in the order of the walk. */
export function paneNotes(order: WorkOrder, say: Say): PaneNote[] {
  const byNote = new Map<string, number[]>();
  const add = (note: string, pane: number): void => void byNote.set(note, [...(byNote.get(note) ?? []), pane]);
  order.panes.forEach((pane, i) => {
    add(say('crew.outcome', { outcome: wordOf(say, 'outcome', pane.outcome), consent: pane.told === undefined ? pane.consent : say.told({ ...pane.told.consent, otherwise: pane.consent }) }), i + 1);
    pane.notes.forEach((note, n) => add(noteOf(pane.told?.notes[n], note, say), i + 1));
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
