import type { Window } from '#calc';
import { words } from './cells/cell-text.js';
import type { FindingList } from './finding.js';
import type { Placed } from './gathered.js';
import type { SurveyedWindow } from './tables/window-table.js';
import { holderOf, placeMark } from './window-marks.js';

// Two surveys of one pane seldom differ by more than this in width or height. Common practice, no source.
const SAME_PANE_mm = 75;

type Measured = Pick<SurveyedWindow, 'room' | 'azimuth_deg' | 'width' | 'height'>;

const samePlace = (a: Measured, b: Measured): boolean => words(a.room ?? '') === words(b.room ?? '') && a.azimuth_deg === b.azimuth_deg;
const apart_mm = (a: Measured, b: Measured): number => Math.max(Math.abs(a.width.mm - b.width.mm), Math.abs(a.height.mm - b.height.mm));

/** Ids of kept windows a new survey has spoken for already: by their mark, or by a mark made of the same place and size. */
function spokenFor(windows: readonly Placed<SurveyedWindow>[]): Set<string> {
  const taken = new Set<string>();
  const ordinals = new Map<string, number>();
  for (const { record } of windows) {
    const place = `${holderOf(record)}/${placeMark(record)}`;
    if (record.mark !== null) taken.add(`${holderOf(record)}/${record.mark}`);
    else {
      const ordinal = (ordinals.get(place) ?? 0) + 1;
      ordinals.set(place, ordinal);
      taken.add(`${place}-${ordinal}`);
    }
  }
  return taken;
}

/**
 * A later survey without marks. A window that stands where exactly one kept window of the same size stands takes its mark;
 * one that is nearly such a window is not taken, and the match is proposed: whether it is the same window a person must say.
 */
export function withKeptMarks(windows: readonly Placed<SurveyedWindow>[], kept: readonly Window[], findings: FindingList): readonly Placed<SurveyedWindow>[] {
  const taken = spokenFor(windows);
  const keptIds = new Set(kept.map(({ id }) => id));
  const free = new Map<string, Window[]>();
  for (const window of kept) if (!taken.has(window.id)) free.set(holderOf(window), [...(free.get(holderOf(window)) ?? []), window]);
  return windows.flatMap((placed) => {
    const { record, row } = placed;
    const holder = holderOf(record);
    const near = record.mark !== null || keptIds.has(`${holder}/${placeMark(record)}-1`) ? [] : (free.get(holder) ?? []).filter((other) => samePlace(record, other) && apart_mm(record, other) <= SAME_PANE_mm);
    const [only, ...more] = near;
    if (only === undefined) return [placed];
    free.set(holder, (free.get(holder) ?? []).filter(({ id }) => id !== only.id));
    if (more.length === 0 && apart_mm(record, only) === 0) {
      findings.add({ ...row, column: 'mark', value: only.mark, severity: 'note', code: 'mark-kept', expected: 'the mark of the window', whatToDo: 'the one window of this room, side and size keeps its mark' });
      return [{ ...placed, record: { ...record, mark: only.mark } }];
    }
    findings.add({ ...row, column: 'mark', value: null, severity: 'error', code: 'window-match-proposed', expected: `the mark ${near.map(({ mark }) => mark).join(' or ')} if it is that window, or a new mark`, whatToDo: 'write the mark into the row: only you know whether it is the same window' });
    return [];
  });
}
