import type { ObjectLiteral } from 'typeorm';
import type { KeptKind, ListName, RecordOf } from './kept-kind.js';
import { keptBills } from './kept/bill.js';
import { keptBuildings } from './kept/building.js';
import { keptConsents } from './kept/consent.js';
import { keptDwellingMeters } from './kept/dwelling-meter.js';
import { keptDwellings } from './kept/dwelling.js';
import { keptFilms } from './kept/film.js';
import { ImportRow } from './kept/import.js';
import { ImportMarkRow } from './kept/import-mark.js';
import { JobRow } from './kept/job.js';
import { keptLedger } from './kept/ledger-entry.js';
import { keptLocks } from './kept/lock.js';
import { keptMeters } from './kept/meter.js';
import { keptMoveOuts } from './kept/move-out.js';
import { keptOwnerEntities } from './kept/owner-entity.js';
import { keptPhases } from './kept/phase.js';
import { keptPlanTypes } from './kept/plan-type.js';
import { PlanRow } from './kept/plan.js';
import { keptReadings } from './kept/reading.js';
import { keptRebates } from './kept/rebate.js';
import { keptRolls } from './kept/roll.js';
import { SettingsRow } from './kept/settings.js';
import { keptSiteRecords } from './kept/site-record.js';
import { StoreCountRow } from './kept/store-count.js';
import { keptTariffs } from './kept/tariff.js';
import { keptWindows } from './kept/window.js';

type AllKept = { readonly [List in ListName]: KeptKind<RecordOf<List>, ObjectLiteral> };

/** Every list of a portfolio with its table, in the order they are written: what is named comes before what names it. */
export const allKept = {
  ownerEntities: keptOwnerEntities,
  phases: keptPhases,
  buildings: keptBuildings,
  planTypes: keptPlanTypes,
  dwellings: keptDwellings,
  windows: keptWindows,
  meters: keptMeters,
  dwellingMeters: keptDwellingMeters,
  tariffs: keptTariffs,
  consents: keptConsents,
  moveOuts: keptMoveOuts,
  films: keptFilms,
  rolls: keptRolls,
  readings: keptReadings,
  locks: keptLocks,
  bills: keptBills,
  siteRecords: keptSiteRecords,
  ledger: keptLedger,
  rebates: keptRebates,
} as unknown as AllKept;

export const listNames = Object.keys(allKept) as readonly ListName[];

/** Every table of the database. */
export const allEntities = [StoreCountRow, SettingsRow, ...listNames.map((list) => allKept[list].entity), PlanRow, ImportRow, ImportMarkRow, JobRow];
