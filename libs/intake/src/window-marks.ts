import type { EnteredLength, Window } from '#calc';
import { compassWord } from './cells/compass-cell.js';
import { words } from './cells/cell-text.js';
import type { SurveyedWindow } from './tables/window-table.js';

const size_in = ({ mm }: EnteredLength): string => String(Math.round(mm / 25.4));

/** Dwelling or plan type a window belongs to. */
export const holderOf = (window: Pick<SurveyedWindow, 'dwelling' | 'planType'>): string => window.dwelling ?? window.planType ?? '';

/** Room, side and size of a window in a few letters: "bedroom-W-46x46". */
export function placeMark(window: SurveyedWindow): string {
  const room = window.room === null ? 'room' : words(window.room).replace(/ /g, '-');
  const side = window.azimuth_deg === null ? 'side' : window.planType === null ? compassWord(window.azimuth_deg) : String(window.azimuth_deg);
  return `${room}-${side}-${size_in(window.width)}x${size_in(window.height)}`;
}

const contentOf = ({ inventoryRow: _, ...content }: SurveyedWindow): string => JSON.stringify(content);

/**
 * Gives every window without a mark one from its place: room, side, size, then an ordinal among equals. The order of the
 * rows plays no part, and a window added elsewhere in the dwelling moves no mark.
 */
export function withMarks(windows: readonly SurveyedWindow[]): readonly Window[] {
  const byPlace = new Map<string, SurveyedWindow[]>();
  for (const window of windows) {
    if (window.mark !== null) continue;
    const place = `${holderOf(window)}/${placeMark(window)}`;
    byPlace.set(place, [...(byPlace.get(place) ?? []), window]);
  }
  const marks = new Map<SurveyedWindow, string>();
  for (const same of byPlace.values()) {
    const ordered = [...same].map((window) => ({ window, content: contentOf(window) })).sort((a, b) => (a.content < b.content ? -1 : a.content > b.content ? 1 : 0));
    ordered.forEach(({ window }, i) => marks.set(window, `${placeMark(window)}-${i + 1}`));
  }
  return windows.map((window) => {
    const mark = window.mark ?? marks.get(window) ?? '';
    return { ...window, id: `${holderOf(window)}/${mark}`, mark };
  });
}
