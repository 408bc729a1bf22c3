import type { Building, Consent, Dwelling, DwellingMeter, Film, InventoryRow, LedgerEntry, Lock, Meter, MoveOut, PlanType, Rebate, Roll, SiteRecord, SolarReading } from '#calc';
import type { Table } from './columns/table.js';
import { billTable, type BillLine } from './tables/bill-table.js';
import { buildingTable, horizonTable, type HorizonRow } from './tables/building-table.js';
import { consentTable, lockTable, readingTable } from './tables/consent-table.js';
import { dwellingTable, moveOutTable, planTypeTable } from './tables/dwelling-table.js';
import { filmTable, rollTable } from './tables/film-table.js';
import { ledgerTable } from './tables/ledger-table.js';
import { dwellingMeterTable, meterTable } from './tables/meter-table.js';
import { rebateTable } from './tables/rebate-table.js';
import { siteRecordTable } from './tables/site-record-table.js';
import { windowTable, type SurveyedWindow } from './tables/window-table.js';

/** A record with the line it came from. */
export interface Placed<R> {
  readonly record: R;
  readonly row: InventoryRow;
}

/** Everything read from the tables, before it is checked against itself. */
export interface Gathered {
  readonly buildings: readonly Placed<Building>[];
  readonly horizons: readonly Placed<HorizonRow>[];
  readonly planTypes: readonly Placed<PlanType>[];
  readonly dwellings: readonly Placed<Dwelling>[];
  readonly windows: readonly Placed<SurveyedWindow>[];
  readonly meters: readonly Placed<Meter>[];
  readonly dwellingMeters: readonly Placed<DwellingMeter>[];
  readonly consents: readonly Placed<Consent>[];
  readonly moveOuts: readonly Placed<MoveOut>[];
  readonly films: readonly Placed<Film>[];
  readonly rolls: readonly Placed<Roll>[];
  readonly readings: readonly Placed<SolarReading>[];
  readonly locks: readonly Placed<Lock>[];
  readonly bills: readonly Placed<BillLine>[];
  readonly siteRecords: readonly Placed<SiteRecord>[];
  readonly ledger: readonly Placed<LedgerEntry>[];
  readonly rebates: readonly Placed<Rebate>[];
}
export type GatheredList = keyof Gathered;

const table = (of: object): Table => of as Table; // the reader asks a table for its columns only while it runs

/** The table of each list, in the order people fill them in. */
export const TABLES: Readonly<Record<GatheredList, Table>> = {
  buildings: table(buildingTable),
  dwellings: table(dwellingTable),
  planTypes: table(planTypeTable),
  windows: table(windowTable),
  meters: table(meterTable),
  dwellingMeters: table(dwellingMeterTable),
  consents: table(consentTable),
  moveOuts: table(moveOutTable),
  films: table(filmTable),
  rolls: table(rollTable),
  readings: table(readingTable),
  locks: table(lockTable),
  horizons: table(horizonTable),
  bills: table(billTable),
  siteRecords: table(siteRecordTable),
  ledger: table(ledgerTable),
  rebates: table(rebateTable),
};
/** Tables that grow during the work; a survey goes without them and nothing is said. */
export const WORK_LISTS: readonly GatheredList[] = ['bills', 'siteRecords', 'ledger', 'rebates'];
export const LISTS = Object.keys(TABLES) as readonly GatheredList[];

/** Tables whose columns stand side by side in a flat inventory, one row per window. */
export const FLAT_LISTS = ['buildings', 'dwellings', 'windows'] as const;

/** The list a file holds by its name ("Plan types.csv" → planTypes), or null. */
export function listNamed(file: string): GatheredList | null {
  const bare = (text: string): string => text.toLowerCase().replace(/[^a-z]/g, '');
  const base = bare(file.replace(/(\.rejected)?\.[a-z]+$/i, ''));
  return LISTS.find((list) => [list, TABLES[list].name].some((name) => bare(name) === base)) ?? null;
}
