import type { Bill, Dwelling, LedgerEntry, Portfolio, SiteRecord, Window } from '#calc';
import type { Finding, FindingList } from './finding.js';
import type { Gathered, Placed } from './gathered.js';
import { holderOf } from './window-marks.js';

type Trouble = Pick<Finding, 'column' | 'value' | 'code' | 'expected' | 'whatToDo'>;


const orphan = (column: string, value: string, what: string): Trouble => ({
  column,
  value,
  code: 'orphan',
  expected: `a ${what} that is in the files or was imported before`,
  whatToDo: `"${value}" is not there, or its own row was not taken; correct the id or add the ${what}`,
});

function keep<R>(list: readonly Placed<R>[], trouble: (record: R) => Trouble | null, findings: FindingList): readonly Placed<R>[] {
  return list.filter(({ record, row }) => {
    const found = trouble(record);
    if (found !== null) findings.add({ ...row, severity: 'error', ...found });
    return found === null;
  });
}

const idsOf = (list: readonly Placed<{ readonly id: string }>[], kept: readonly { readonly id: string }[] | undefined): Set<string> =>
  new Set([...(kept ?? []).map(({ id }) => id), ...list.map(({ record }) => record.id)]);

/** Takes out every record that names something which is not there, from the top down, so that nothing hangs in the air. */
export function withoutOrphans(all: Gathered, others: { readonly kept: Portfolio | null; readonly tariffs: readonly string[] }, findings: FindingList): Gathered {
  const { kept } = others;
  const buildings = idsOf(all.buildings, kept?.buildings);
  const inBuilding = (record: { readonly building: string | null }): Trouble | null =>
    record.building === null || buildings.has(record.building) ? null : orphan('building', record.building, 'building');
  const planTypes = keep(all.planTypes, inBuilding, findings);
  const plans = idsOf(planTypes, kept?.planTypes);
  const dwellings = keep(all.dwellings, (record) => inBuilding(record) ?? (record.planType === null || plans.has(record.planType) ? null : orphan('plan_type', record.planType, 'plan type')), findings);
  const homes = idsOf(dwellings, kept?.dwellings);
  const inDwelling = ({ dwelling }: { readonly dwelling: string }): Trouble | null => (homes.has(dwelling) ? null : orphan('dwelling', dwelling, 'dwelling'));
  const meters = keep(all.meters, inBuilding, findings);
  const meterIds = idsOf(meters, kept?.meters);
  const films = idsOf(all.films, kept?.films);
  const withFilm = ({ film }: { readonly film: string | null }): Trouble | null => (film === null || films.has(film) ? null : orphan('film', film, 'film'));
  return {
    ...all,
    planTypes,
    dwellings,
    meters: withTariffs(meters, new Set([...others.tariffs, ...(kept?.tariffs ?? []).map(({ label }) => label)]), findings),
    horizons: keep(all.horizons, inBuilding, findings),
    windows: keep(all.windows, (window) => {
      if (window.dwelling !== null) return inDwelling({ dwelling: window.dwelling });
      return plans.has(holderOf(window)) ? null : orphan('plan_type', holderOf(window), 'plan type');
    }, findings),
    dwellingMeters: keep(all.dwellingMeters, (record) => inDwelling(record) ?? (meterIds.has(record.meter) ? null : orphan('meter', record.meter, 'meter')), findings),
    consents: keep(all.consents, (record) => inBuilding(record) ?? withFilm(record), findings),
    moveOuts: keep(all.moveOuts, inDwelling, findings),
    rolls: keep(all.rolls, withFilm, findings),
    readings: keep(all.readings, (record) => inBuilding(record) ?? withFilm(record), findings),
    siteRecords: keep(all.siteRecords, (record) => (record.dwelling === null ? null : inDwelling({ dwelling: record.dwelling })) ?? withFilm(record), findings),
    rebates: keep(all.rebates, inBuilding, findings),
    locks: keep(all.locks, (record) => inDwelling({ dwelling: record.subject.split('/').slice(0, 2).join('/') }) ?? withFilm(record), findings),
  };
}

/** Bills of meters that are there. */
export function billsOfMeters(bills: readonly Placed<Bill>[], meters: ReadonlySet<string>, findings: FindingList): readonly Placed<Bill>[] {
  return keep(bills, ({ meter }) => (meters.has(meter) ? null : orphan('meter', meter, 'meter')), findings);
}

/** Site records of windows that stand in their dwelling, by its own survey or by its plan type. */
export function recordsOfWindows(records: readonly Placed<SiteRecord>[], of: { readonly windows: readonly Window[]; readonly dwellings: readonly Dwelling[] }, findings: FindingList): readonly Placed<SiteRecord>[] {
  if (records.length === 0) return records;
  const windows = new Map(of.windows.map((w) => [w.id, w]));
  const plans = new Map(of.dwellings.map(({ id, planType }) => [id, planType]));
  return keep(records, ({ window, dwelling, pane }) => {
    if (window === null) return null;
    const plan = plans.get(dwelling ?? '') ?? null;
    const own = windows.get(window) ?? windows.get(`${plan ?? ''}/${window.slice(window.lastIndexOf('/') + 1)}`);
    if (own === undefined) return orphan('window', window, 'window of the dwelling');
    const panes = (own.liteRows ?? 1) * (own.liteColumns ?? 1);
    if (pane === null || pane <= panes) return null;
    return { column: 'pane', value: String(pane), code: 'out-of-range', expected: panes === 1 ? '1: the window has one pane' : `1…${String(panes)}: the window has ${String(panes)} panes`, whatToDo: 'count the panes from the top left, row by row, or leave the cell blank for all of them' };
  }, findings);
}

/** Lines of the ledger that name a fiscal year and a commitment which are there. */
export function ledgerInPlace(entries: readonly Placed<LedgerEntry>[], of: { readonly phases: ReadonlySet<string>; readonly kept: readonly LedgerEntry[] }, findings: FindingList): readonly Placed<LedgerEntry>[] {
  const inPhase = keep(entries, ({ phase }) => (of.phases.has(phase) ? null : orphan('phase', phase, 'phase of plan.json')), findings);
  const kinds = new Map([...of.kept, ...inPhase.map(({ record }) => record)].map(({ id, kind }) => [id, kind]));
  return keep(inPhase, ({ settles, kind }) => {
    if (settles === null) return null;
    const settled = kinds.get(settles);
    if (settled === undefined) return orphan('settles', settles, 'ledger entry');
    if ((kind === 'invoiced' && settled === 'committed') || (kind === 'paid' && (settled === 'committed' || settled === 'invoiced')) || (kind === 'committed' && settled === 'quote')) return null;
    return { column: 'settles', value: settles, code: 'ledger-settles', expected: 'a payment of an invoice or a commitment, an invoice of a commitment, or a commitment from a quote', whatToDo: `a ${kind} line cannot settle a ${settled} one; correct the kind or the entry` };
  }, findings);
}

/** A meter whose tariff is not there keeps its place with the tariff not known; a default is shown as assumed later. */
function withTariffs(meters: Gathered['meters'], tariffs: ReadonlySet<string>, findings: FindingList): Gathered['meters'] {
  return meters.map((meter) => {
    const { tariff } = meter.record;
    if (tariff === null || tariffs.has(tariff)) return meter;
    findings.add({ ...meter.row, column: 'tariff', value: tariff, severity: 'warning', code: 'tariff-unknown', expected: 'the label of a tariff in tariffs.json', whatToDo: 'taken as not known; add the tariff or correct the label' });
    return { ...meter, record: { ...meter.record, tariff: null } };
  });
}
