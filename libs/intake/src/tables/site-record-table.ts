import type { SiteRecord, SiteRecordKind } from '#calc';
import { dateCell } from '../cells/date-cell.js';
import { lengthCell, lengthCell_mm } from '../cells/length-cell.js';
import { numberCell } from '../cells/number-cell.js';
import { idCell, textCell, wordCell } from '../cells/word-cell.js';
import { needed, optional, type RowValues } from '../columns/column.js';
import { defineTable, wrong } from '../columns/table.js';
import { windowId, windowMark } from './consent-table.js';
import { dwellingId, dwellingPlace } from './place.js';

const sight = lengthCell({ min_mm: 60, max_mm: 6000 });

export const siteRecordColumns = {
  day: needed('day', { also: ['date', 'on'], about: 'day it was found or done', example: '2026-08-04', read: dateCell }),
  kind: needed('kind', { also: ['record', 'what'], about: 'what it records', example: 'done', read: wordCell({ 'field-size': ['field size', 'size', 'measured'], done: ['filmed', 'installed'], 'no-access': ['no access', 'not in'], defect: ['redo'], 'broken-pane': ['broken pane', 'cracked', 'broken'], minutes: ['time'], 'film-used': ['film used', 'film'] }) }),
  ...dwellingPlace,
  window: windowMark,
  pane: optional('pane', { also: ['lite'], about: 'number of the pane in the window, from 1; blank is all of them', example: '1', read: numberCell({ min: 1, max: 500, whole: true }) }),
  film: optional('film', { also: ['film id'], about: 'film put on or run off', example: 'B', read: idCell }),
  width: optional('width', { also: ['sight width'], unit: 'in', quantity: 'length', about: 'sight width as measured on the spot', example: '35 1/2', read: sight }),
  height: optional('height', { also: ['sight height'], unit: 'in', quantity: 'length', about: 'sight height as measured on the spot', example: '47 3/8', read: sight }),
  personMinutes: optional('person_minutes', { also: ['minutes', 'person min'], about: 'minutes of the visit times the people', example: '180', read: numberCell({ min: 0, max: 20_000 }) }),
  rollWidth_mm: optional('roll_width', { unit: 'in', quantity: 'length', about: 'width of the roll', example: '48', read: lengthCell_mm({ min_mm: 200, max_mm: 3000 }) }),
  rollLength_mm: optional('roll_length', { also: ['length used'], unit: 'ft', quantity: 'length', about: 'length run off the roll', example: '38', read: lengthCell_mm({ min_mm: 1, max_mm: 500_000 }) }),
  defect: optional('defect', { also: ['fault'], about: 'what is wrong with the pane', example: 'fingers at the top edge', read: textCell }),
  note: optional('note', { also: ['remark', 'comment'], about: 'anything else; needed where a pane broke: how, who was near, who was told', example: '', read: textCell }),
} as const;

type Values = RowValues<typeof siteRecordColumns>;
type Key = keyof Values;

/** What each kind cannot do without: of every inner list at least one column. */
const NEEDS: Readonly<Record<SiteRecordKind, readonly (readonly Key[])[]>> = {
  'field-size': [['window'], ['width', 'height']],
  done: [['dwelling', 'window']],
  'no-access': [['dwelling', 'window']],
  defect: [['window'], ['defect', 'note']],
  // How it broke and who was told: a pane that broke without that is not taken in.
  'broken-pane': [['window'], ['note']],
  minutes: [['dwelling', 'window'], ['personMinutes']],
  'film-used': [['film'], ['rollLength_mm']],
};

export const siteRecordTable = defineTable({
  name: 'site-records',
  about: 'One row per thing the crew found or did: a field size, a pane done, a door that stayed shut, a defect, minutes, film used. The same row sent again is the same record. A dwelling has one row of minutes a day: add them up.',
  columns: siteRecordColumns,
  records: (of, inventoryRow, say): readonly SiteRecord[] => {
    const kind = of.kind ?? 'done';
    for (const [first = 'kind', ...others] of NEEDS[kind]) {
      if ([first, ...others].some((key) => of[key] !== null)) continue;
      say(first, wrong('missing-value', `${[first, ...others].map((key) => siteRecordColumns[key].name).join(' or ')} for a record of ${kind}`, kind === 'broken-pane' && first === 'note' ? 'write how it broke, who was near and who was told' : 'fill it in'));
      return [];
    }
    const window = windowId(of);
    const dwelling = dwellingId(of.building, of.dwelling)?.id ?? window?.split('/').slice(0, 2).join('/') ?? null;
    if ((of.dwelling ?? of.window) !== null && (dwelling === null || !dwelling.includes('/'))) {
      say('dwelling', wrong('missing-value', 'building and dwelling', 'name the dwelling'));
      return [];
    }
    // Film off two rolls on one day is two records; anything else is told apart by day, place and kind.
    const parts = [of.day, dwelling, window, of.pane, kind, ...(kind === 'film-used' ? [of.film, of.rollWidth_mm] : [])];
    return [{
      id: parts.map((part) => part ?? '').join('|'), day: of.day ?? '', kind, dwelling, window, pane: of.pane, film: of.film, width: of.width, height: of.height,
      personMinutes: of.personMinutes, rollWidth_mm: of.rollWidth_mm, rollLength_mm: of.rollLength_mm, defect: of.defect, note: of.note, inventoryRow,
    }];
  },
});
