import type { Consent, Lock, SolarReading } from '#calc';
import { bearingCell } from '../cells/compass-cell.js';
import { dateCell, momentCell } from '../cells/date-cell.js';
import { quantityCell } from '../cells/quantity-cell.js';
import { glazingCell, idCell, textCell, wordCell } from '../cells/word-cell.js';
import { needed, optional } from '../columns/column.js';
import { defineTable, doubtful, wrong } from '../columns/table.js';
import { dwellingId, dwellingPlace, WINDOW_HEADERS } from './place.js';

/** A window's mark beside building and dwelling, or its whole id in one cell. */
export const windowMark = optional('window', { also: ['mark', ...WINDOW_HEADERS], about: 'mark of one window; with building and dwelling', example: 'W03', read: idCell });

export function windowId(of: { readonly building: string | null; readonly dwelling: string | null; readonly window: string | null }): string | null {
  if (of.window === null || of.window.split('/').length > 2) return of.window;
  const place = dwellingId(of.building, of.dwelling);
  return place === null ? null : `${place.id}/${of.window}`;
}

export const consentTable = defineTable({
  name: 'consents',
  about: 'One row per letter or test that must be there before film goes on.',
  columns: {
    consent: optional('consent', { also: ['consent id', 'approval', 'approval id'], about: 'short code; blank: made from what it covers', example: 'ER-GLASS', read: idCell }),
    building: needed('building', { also: dwellingPlace.building.also, about: 'code of the building', example: 'ER', read: idCell }),
    dwelling: dwellingPlace.dwelling,
    kind: needed('kind', { also: ['who', 'consent kind', 'type of approval'], about: 'who must agree', example: 'glass maker', read: wordCell({ 'glass maker': ['window maker', 'glass warranty'], 'film maker': [], owner: [], association: ['association board', 'board'], listing: ['historic listing', 'historic'], 'glass test': ['test'] }) }),
    glazing: optional('glazing', { also: ['glazing type', 'glass', 'glass type'], about: 'glazing type it covers; blank is all', example: 'single bronze 3/16 in', read: glazingCell }),
    film: optional('film', { also: ['film id'], about: 'film it covers; blank is all', example: 'A', read: idCell }),
    window: windowMark,
    state: needed('state', { also: ['status'], about: 'how far it is', example: 'given', read: wordCell({ 'not-needed': ['not needed'], needed: ['required'], asked: ['requested', 'applied', 'pending'], given: ['approved', 'granted', 'yes'], refused: ['denied', 'rejected', 'no'] }) }),
    date: optional('date', { also: ['date given', 'expected date', 'date expected'], about: 'day it was given, or is expected', example: '2026-08-15', read: dateCell }),
    reference: optional('reference', { also: ['ref', 'letter'], about: 'letter or file number', example: 'letter 12', read: textCell }),
  },
  records: (of, inventoryRow, say): readonly Consent[] => {
    const window = windowId(of);
    if (of.state === 'given' && of.date === null) say('date', doubtful('date-missing', 'the day consent was given', 'add the date; until then the panes it covers wait'));
    const id = of.consent ?? [of.building, of.kind, of.glazing, of.film, window].filter((part) => part !== null).join(' ');
    return [{ id, building: of.building ?? '', kind: of.kind ?? '', glazing: of.glazing, film: of.film, window, state: of.state ?? 'needed', date: of.date, reference: of.reference, inventoryRow }];
  },
});

export const lockTable = defineTable({
  name: 'locks',
  about: 'One row per choice fixed by hand: a dwelling, one side of it, or a window, in or out.',
  columns: {
    ...dwellingPlace,
    window: windowMark,
    facade: optional('facade', { also: ['elevation', 'orientation', 'side'], about: 'side of the dwelling; blank is the whole', example: 'W', read: bearingCell }),
    direction: needed('direction', { also: ['in or out', 'lock'], about: 'in or out', example: 'in', read: wordCell({ in: ['include'], out: ['exclude'] }) }),
    phase: optional('phase', { also: ['fiscal year'], about: 'phase it is fixed to, owner entity/name', example: 'OWNER1/2026-27', read: textCell }),
    film: optional('film', { also: ['film id'], about: 'film it is fixed to', example: 'A', read: idCell }),
    reason: needed('reason', { also: ['why'], about: 'why, in a sentence', example: 'promised at the last inspection', read: textCell }),
    role: needed('role', { also: ['by', 'who'], about: 'who decided, as a role', example: 'manager', read: textCell }),
    date: needed('date', { also: ['on'], about: 'day of the decision', example: '2026-06-15', read: dateCell }),
  },
  records: (of, _row, say): readonly Lock[] => {
    const subject = windowId(of) ?? dwellingId(of.building, of.dwelling)?.id;
    if (subject === undefined) {
      say('dwelling', wrong('missing-value', 'building and dwelling', 'name the dwelling that is fixed'));
      return [];
    }
    return [{ subject, direction: of.direction ?? 'in', azimuth_deg: of.facade, phase: of.phase, film: of.film, reason: of.reason ?? '', role: of.role ?? '', date: of.date ?? '' }];
  },
});

const flux = (name: string, about: string, example: string) =>
  optional(name, { unit: 'Btu_h_ft2', quantity: 'flux', about, example, read: quantityCell('flux', { min: 0, max: 1400 }) });

export const readingTable = defineTable({
  name: 'readings',
  about: 'One row per meter reading behind the glass, bare or filmed; it overrides catalogue figures for its building, side and glazing.',
  columns: {
    building: needed('building', { also: dwellingPlace.building.also, about: 'code of the building', example: 'EC', read: idCell }),
    facade: needed('facade', { also: ['elevation', 'orientation', 'side'], about: 'side of the building', example: 'W', read: bearingCell }),
    glazing: needed('glazing', { also: ['glazing type', 'glass', 'glass type'], about: 'glazing type it was taken behind', example: 'single clear 1/8 in', read: glazingCell }),
    bare: flux('bare', 'reading behind the bare glass', '210'),
    filmed: flux('filmed', 'reading behind the filmed glass', '70'),
    outdoors: flux('outdoors', 'reading outdoors in the same plane', '245'),
    film: optional('film', { also: ['film id'], about: 'film on the glass', example: 'B', read: idCell }),
    taken: needed('taken', { also: ['date', 'day', 'time'], about: 'day it was taken, with the time of day in standard time if it was noted; an outdoor reading needs the time', example: '2026-05-12 15:10', read: momentCell }),
  },
  records: (of, inventoryRow, say): readonly SolarReading[] => {
    if (of.bare === null && of.filmed === null) {
      say('bare', wrong('missing-value', 'a bare or a filmed reading', 'fill in at least one of the two'));
      return [];
    }
    if (of.glazing === null) return [];
    return [{ building: of.building ?? '', azimuth_deg: of.facade ?? 0, glazing: of.glazing, bare_W_m2: of.bare, filmed_W_m2: of.filmed, outdoors_W_m2: of.outdoors, film: of.film, taken: of.taken ?? '', inventoryRow }];
  },
});
