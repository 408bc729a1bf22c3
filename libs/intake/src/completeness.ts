import type { Dwelling, Portfolio, Window } from '#calc';
import { words } from './cells/cell-text.js';
import type { Finding, FindingList } from './finding.js';
import type { Placed } from './gathered.js';

/** What is looked over for gaps: everything that will be there once these files are in. */
export type Whole = Pick<Portfolio, 'buildings' | 'dwellings' | 'planTypes' | 'windows' | 'dwellingMeters' | 'meters'>;

const warn = (at: { readonly file: string; readonly row: number }, of: Pick<Finding, 'column' | 'value' | 'code' | 'expected' | 'whatToDo'>): Omit<Finding, 'times'> => ({ ...at, severity: 'warning', ...of });

function groupBy<T>(list: readonly T[], key: (item: T) => string | null): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of list) {
    const at = key(item);
    if (at === null) continue;
    const group = groups.get(at);
    if (group === undefined) groups.set(at, [item]);
    else group.push(item);
  }
  return groups;
}

function dwellingGaps(dwelling: Dwelling, own: readonly Window[], ofPlan: readonly Window[]): Omit<Finding, 'times'>[] {
  const at = dwelling.inventoryRow;
  const gaps: Omit<Finding, 'times'>[] = [];
  if (own.every(({ dropped }) => dropped) && ofPlan.length === 0 && dwelling.kind === 'dwelling') {
    gaps.push(warn(at, { column: null, value: dwelling.id, code: 'no-windows', expected: 'at least one window, or a plan type that has windows', whatToDo: 'survey its windows or name its plan type; without them it is in no ranking' }));
  }
  if (ofPlan.length > 0 && dwelling.frontAzimuth_deg === null) {
    gaps.push(warn(at, { column: 'front', value: dwelling.id, code: 'front-missing', expected: 'the side the plan\'s front looks to', whatToDo: 'fill in front; until then no one knows where its windows look' }));
  }
  const marks = new Set(ofPlan.map(({ mark }) => mark));
  for (const window of own.filter(({ dropped, mark }) => dropped && !marks.has(mark))) {
    gaps.push(warn(window.inventoryRow, { column: 'dropped', value: window.id, code: 'dropped-unknown', expected: 'the mark of a window of the plan type', whatToDo: 'there is no such window to drop; correct the mark' }));
  }
  const rooms = new Set([...own, ...ofPlan].map(({ room }) => words(room ?? '')));
  for (const room of (dwelling.cooledRooms ?? []).filter((name) => !rooms.has(words(name)))) {
    gaps.push(warn(at, { column: 'cooled_rooms', value: room, code: 'room-unknown', expected: 'a room that has a window here', whatToDo: 'no window stands in a room of this name; write rooms the same way everywhere' }));
  }
  return gaps;
}

/** Finds what is missing: buildings without dwellings, dwellings without windows, plans lying nobody knows how. */
export function lookForGaps(whole: Whole, findings: FindingList): void {
  const byDwelling = groupBy(whole.windows, ({ dwelling }) => dwelling);
  const byPlan = groupBy(whole.windows, ({ planType }) => planType);
  const homes = groupBy(whole.dwellings, ({ building }) => building);
  const metered = new Set(whole.dwellingMeters.map(({ dwelling }) => dwelling));
  for (const { id, inventoryRow } of whole.buildings) {
    if (homes.size > 0 && !homes.has(id)) findings.add(warn(inventoryRow, { column: 'building', value: id, code: 'no-dwellings', expected: 'at least one dwelling', whatToDo: 'add its dwellings, or take the building out' }));
  }
  for (const { id, inventoryRow } of whole.planTypes) {
    if (!byPlan.has(id)) findings.add(warn(inventoryRow, { column: 'plan_type', value: id, code: 'no-windows', expected: 'at least one window in windows.csv with this plan_type', whatToDo: 'survey the plan type' }));
  }
  for (const dwelling of whole.dwellings) {
    const ofPlan = dwelling.planType === null ? [] : (byPlan.get(dwelling.planType) ?? []);
    // Without any window at all the windows' file is the trouble, and it has been said.
    if (whole.windows.length > 0) findings.addAll(dwellingGaps(dwelling, byDwelling.get(dwelling.id) ?? [], ofPlan));
    if (whole.meters.length > 0 && !metered.has(dwelling.id)) {
      findings.add({ ...dwelling.inventoryRow, column: null, value: dwelling.id, severity: 'note', code: 'no-meter', expected: 'a row in dwelling-meters.csv', whatToDo: 'a meter of its own on the assumed tariff is taken' });
    }
  }
}

/** Windows without a mark that are alike in everything: two windows, or one row twice. */
export function warnEqualRows(windows: readonly Placed<{ readonly mark: string | null }>[], findings: FindingList): void {
  const seen = new Map<string, number>();
  for (const { record, row } of windows) {
    if (record.mark !== null) continue;
    const content = JSON.stringify({ ...record, inventoryRow: null });
    const first = seen.get(content);
    if (first === undefined || first === row.row) seen.set(content, row.row);
    else findings.add({ ...row, column: null, value: null, severity: 'warning', code: 'equal-rows', expected: 'a mark where two windows are alike', whatToDo: `says the same as line ${first}; taken as two windows. Take one row out if it is one window` });
  }
}
