import type { Bill, Building, FacadeHorizon, OwnerEntity, Phase, PlanSettings, PlanType, Portfolio, TariffText, Window } from '#calc';
import { sayBillTroubles } from './bills/bill-findings.js';
import { billsFrom } from './bills/bills-from.js';
import { lookForGaps, warnEqualRows } from './completeness.js';
import { distinct, warnAlike } from './distinct.js';
import type { FindingList } from './finding.js';
import type { Gathered, Placed } from './gathered.js';
import { billsOfMeters, ledgerInPlace, recordsOfWindows, withoutOrphans } from './references.js';
import { readingKey, withRepeats } from './reading-repeats.js';
import { withKeptMarks } from './resurvey.js';
import { bothMinutes, warnAhead } from './site-records.js';
import type { HorizonRow } from './tables/building-table.js';
import { withMarks } from './window-marks.js';

/** All records of the files, ready to be kept; settings are null when no plan.json came. Lists are sorted by id. */
export type InventoryRecords = Omit<Portfolio, 'settings'> & { readonly settings: PlanSettings | null };

/** What came from the JSON files. */
export interface PlanParts {
  readonly settings: PlanSettings | null;
  readonly owners: readonly OwnerEntity[];
  readonly phases: readonly Phase[];
  readonly tariffs: readonly TariffText[];
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
const sorted = <R>(list: readonly Placed<R>[], id: (record: R) => string): readonly R[] =>
  list.map(({ record }) => record).sort((a, b) => byText(id(a), id(b)));
const byId = ({ id }: { readonly id: string }): string => id;

/** Plan types that stand in windows.csv only, not in what is kept either; their floor and name are not known. */
function withImpliedPlans(all: Gathered, keptTypes: readonly PlanType[], findings: FindingList): Gathered {
  if (all.planTypes.length > 0) return all;
  const kept = new Set(keptTypes.map(byId));
  const implied = new Map<string, Placed<PlanType>>();
  for (const { record, row } of all.windows) {
    const id = record.planType;
    if (id === null || implied.has(id) || kept.has(id)) continue;
    implied.set(id, { row, record: { id, building: null, name: id, floorArea_m2: null, ceilingHeight_m: null, exposedWall_m2: null, inventoryRow: row } });
    findings.add({ ...row, column: 'plan_type', value: id, severity: 'note', code: 'plan-type-implied', expected: 'a row in plan-types.csv', whatToDo: 'known by its windows only; floor area comes from the dwellings' });
  }
  return { ...all, planTypes: [...implied.values()] };
}

/** Buildings with their skylines; without horizons.csv a building keeps those it had, and horizons.csv alone renews kept buildings. */
function withHorizons(buildings: readonly Building[], horizons: readonly Placed<HorizonRow>[], kept: readonly Building[]): readonly Building[] {
  const before = new Map(kept.map((building) => [building.id, building]));
  if (horizons.length === 0) return buildings.map((building) => ({ ...building, horizons: before.get(building.id)?.horizons ?? [] }));
  const sides = new Map<string, Map<number, FacadeHorizon['points'][number][]>>();
  for (const { record } of horizons) {
    const { building, facade_deg, azimuth_deg, altitude_deg, passes, passesBare } = record;
    const facades = sides.get(building) ?? new Map<number, FacadeHorizon['points'][number][]>();
    facades.set(facade_deg, [...(facades.get(facade_deg) ?? []), { azimuth_deg, altitude_deg, ...(passes !== null && { passes }), ...(passesBare !== null && { passesBare }) }]);
    sides.set(building, facades);
  }
  const here = new Set(buildings.map(({ id }) => id));
  const renewed = kept.filter(({ id }) => sides.has(id) && !here.has(id));
  return [...buildings, ...renewed].sort((a, b) => byText(a.id, b.id)).map((building) => ({
    ...building,
    horizons: [...(sides.get(building.id) ?? [])]
      .map(([azimuth_deg, points]) => ({ azimuth_deg, points: points.sort((a, b) => a.azimuth_deg - b.azimuth_deg) }))
      .sort((a, b) => a.azimuth_deg - b.azimuth_deg),
  }));
}

/** Owner entities of the plan file, and those that buildings name and neither it nor what is kept knows. */
function withNamedOwners(owners: readonly OwnerEntity[], of: { readonly buildings: readonly Building[]; readonly kept: readonly OwnerEntity[] }, findings: FindingList): readonly OwnerEntity[] {
  const all = new Map(owners.map((owner) => [owner.id, owner]));
  const kept = new Set(of.kept.map(byId));
  for (const { ownerEntity: id, inventoryRow } of of.buildings) {
    if (all.has(id) || kept.has(id)) continue;
    all.set(id, { id, name: id, inventoryRow });
    if (owners.length > 0) findings.add({ ...inventoryRow, column: 'owner_entity', value: id, severity: 'warning', code: 'owner-entity-unlisted', expected: 'an owner entity listed in plan.json', whatToDo: 'taken as an owner without a cap; list it, or correct the id' });
  }
  return [...all.values()].sort((a, b) => byText(a.id, b.id));
}

function keepDistinct(all: Gathered, findings: FindingList): Gathered {
  return {
    ...all,
    buildings: distinct(all.buildings, { id: byId, what: 'building' }, findings),
    planTypes: distinct(all.planTypes, { id: byId, what: 'plan type' }, findings),
    dwellings: distinct(all.dwellings, { id: byId, what: 'dwelling' }, findings),
    meters: distinct(all.meters, { id: byId, what: 'meter' }, findings),
    dwellingMeters: distinct(all.dwellingMeters, { id: ({ dwelling, meter }) => `${dwelling} on ${meter}`, what: 'dwelling and meter' }, findings),
    consents: distinct(all.consents, { id: byId, what: 'consent' }, findings),
    moveOuts: distinct(all.moveOuts, { id: ({ dwelling, out }) => `${dwelling} ${out}`, what: 'move-out' }, findings),
    films: distinct(all.films, { id: byId, what: 'film' }, findings),
    rolls: distinct(all.rolls, { id: byId, what: 'roll' }, findings),
    readings: distinct(withRepeats(all.readings), { id: (of) => `${readingKey(of)} ${of.repeat ?? 1}`, what: 'reading' }, findings),
    locks: distinct(all.locks, { id: ({ subject, azimuth_deg }) => `${subject} ${azimuth_deg ?? ''}`, what: 'lock' }, findings),
    siteRecords: distinct(all.siteRecords, { id: byId, what: 'site record', both: bothMinutes }, findings),
    ledger: distinct(all.ledger, { id: byId, what: 'ledger entry' }, findings),
    rebates: distinct(all.rebates, { id: byId, what: 'rebate' }, findings),
    horizons: distinct(all.horizons, { id: (of) => [of.building, of.facade_deg, of.azimuth_deg].join(' '), what: 'bearing of a skyline' }, findings),
  };
}

/** What is kept from earlier and not written over by these files. */
const beside = <R extends { readonly id: string }>(kept: readonly R[] | undefined, now: readonly R[]): readonly R[] => {
  const ids = new Set(now.map(byId));
  return [...now, ...(kept ?? []).filter(({ id }) => !ids.has(id))];
};

function windowsOf(all: Gathered, kept: readonly Window[], findings: FindingList): readonly Placed<Window>[] {
  warnEqualRows(all.windows, findings);
  const marked = withMarks(withKeptMarks(all.windows, kept, findings).map(({ record }) => record)).map((record) => ({ record, row: record.inventoryRow }));
  return distinct(marked, { id: byId, what: 'window' }, findings);
}

const billKey = ({ meter, firstDay, lastDay }: Bill): string => [meter, firstDay, lastDay].join(' ');

/** The bills of the files; what is odd about a meter's bills is said beside those kept from earlier. */
function billRecords(all: Gathered, to: { readonly kept: Portfolio | null; readonly findings: FindingList; readonly meter?: string | null }): readonly Bill[] {
  const { kept, findings, meter = null } = to;
  const meters = new Set([...(kept?.meters ?? []).map(byId), ...all.meters.map(({ record }) => record.id)]);
  if (meter !== null && !meters.has(meter)) {
    findings.add({ file: all.bills[0]?.row.file ?? 'bills.csv', row: null, column: null, value: meter, severity: 'error', code: 'orphan', expected: 'a meter that is kept', whatToDo: 'nothing was taken: name a meter of meters.csv' });
    return [];
  }
  const bills = sorted(distinct(billsOfMeters(billsFrom(all.bills, meter, findings), meters, findings), { id: billKey, what: 'bill' }, findings), billKey);
  const here = new Set(bills.map(billKey));
  sayBillTroubles(bills, (kept?.bills ?? []).filter((bill) => !here.has(billKey(bill))), findings);
  return bills;
}

/** Checks the tables against each other and puts them in order; what cannot stand is left out with a finding. */
export function recordsFrom(gathered: Gathered, plan: PlanParts, to: { readonly kept: Portfolio | null; readonly findings: FindingList; readonly meter?: string | null; readonly today?: string | undefined }): InventoryRecords {
  const { kept, findings, today } = to;
  const alone = keepDistinct(withImpliedPlans(gathered, kept?.planTypes ?? [], findings), findings);
  warnAlike(alone.buildings, 'building', findings);
  warnAlike(alone.dwellings, 'dwelling', findings);
  warnAlike(alone.meters, 'meter', findings);
  if (today !== undefined) warnAhead(alone.siteRecords, today, findings);
  const all = withoutOrphans(alone, { kept, tariffs: plan.tariffs.map(({ label }) => label) }, findings);
  const windows = sorted(windowsOf(all, kept?.windows ?? [], findings), byId);
  const buildings = withHorizons(sorted(all.buildings, byId), all.horizons, kept?.buildings ?? []);
  const records: InventoryRecords = {
    settings: plan.settings,
    ownerEntities: withNamedOwners(plan.owners, { buildings, kept: kept?.ownerEntities ?? [] }, findings),
    phases: [...plan.phases].sort((a, b) => byText(a.id, b.id)),
    buildings,
    planTypes: sorted(all.planTypes, byId),
    dwellings: sorted(all.dwellings, byId),
    windows,
    meters: sorted(all.meters, byId),
    dwellingMeters: sorted(all.dwellingMeters, ({ dwelling, meter }) => `${dwelling} ${meter}`),
    tariffs: [...plan.tariffs].sort((a, b) => byText(a.label, b.label)),
    consents: sorted(all.consents, byId),
    moveOuts: sorted(all.moveOuts, ({ dwelling, out }) => `${dwelling} ${out}`),
    films: sorted(all.films, byId),
    rolls: sorted(all.rolls, byId),
    readings: sorted(all.readings, (of) => `${readingKey(of)} ${of.repeat ?? 1}`),
    locks: sorted(all.locks, ({ subject, azimuth_deg }) => `${subject} ${azimuth_deg ?? ''}`),
    bills: billRecords(all, to),
    siteRecords: sorted(recordsOfWindows(all.siteRecords, { windows: beside(kept?.windows, windows), dwellings: beside(kept?.dwellings, sorted(all.dwellings, byId)) }, findings), byId),
    ledger: sorted(ledgerInPlace(all.ledger, { phases: new Set([...(kept?.phases ?? []), ...plan.phases].map(byId)), kept: kept?.ledger ?? [] }, findings), byId),
    rebates: sorted(all.rebates, byId),
  };
  lookForGaps({
    buildings: beside(kept?.buildings, records.buildings), dwellings: beside(kept?.dwellings, records.dwellings), planTypes: beside(kept?.planTypes, records.planTypes),
    windows: beside(kept?.windows, records.windows), meters: beside(kept?.meters, records.meters), dwellingMeters: [...(kept?.dwellingMeters ?? []), ...records.dwellingMeters],
  }, findings);
  return records;
}
