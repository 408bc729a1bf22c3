import type { MigrationInterface } from 'typeorm';
import { Buildings1767225600000 } from './1767225600000-buildings.js';
import { Dwellings1767225660000 } from './1767225660000-dwellings.js';
import { MetersAndFilms1767225720000 } from './1767225720000-meters-and-films.js';
import { Plans1767225780000 } from './1767225780000-plans.js';
import { Bills1767225840000 } from './1767225840000-bills.js';
import { SiteRecords1767225900000 } from './1767225900000-site-records.js';
import { Ledger1767225960000 } from './1767225960000-ledger.js';
import { Rebates1767226020000 } from './1767226020000-rebates.js';
import { Crews1767226080000 } from './1767226080000-crews.js';
import { UsagePoints1767226140000 } from './1767226140000-usage-points.js';
import { SurveyPhysics1767226260000 } from './1767226260000-survey-physics.js';
import { ImportMarks1767226320000 } from './1767226320000-import-marks.js';
import { SavingsAsFound1767226380000 } from './1767226380000-savings-as-found.js';
import { SeveralCrews1767226440000 } from './1767226440000-several-crews.js';
import { FilmByArea1767226500000 } from './1767226500000-film-by-area.js';
import { ImportFindings1767226620000 } from './1767226620000-import-findings.js';
import { DaylightTime1767226680000 } from './1767226680000-daylight-time.js';
import { FilmTakenOff1767226740000 } from './1767226740000-film-taken-off.js';

/** In the order they run; a migration that has run anywhere is never edited, a new one is added below. */
export const allMigrations: readonly (new () => MigrationInterface)[] = [
  Buildings1767225600000,
  Dwellings1767225660000,
  MetersAndFilms1767225720000,
  Plans1767225780000,
  Bills1767225840000,
  SiteRecords1767225900000,
  Ledger1767225960000,
  Rebates1767226020000,
  Crews1767226080000,
  UsagePoints1767226140000,
  SurveyPhysics1767226260000,
  ImportMarks1767226320000,
  SavingsAsFound1767226380000,
  SeveralCrews1767226440000,
  FilmByArea1767226500000,
  ImportFindings1767226620000,
  DaylightTime1767226680000,
  FilmTakenOff1767226740000,
];
