import type { Bill } from './bill.js';
import type { Building, OwnerEntity } from './building.js';
import type { Consent, Lock } from './consent.js';
import type { Dwelling, MoveOut, PlanType } from './dwelling.js';
import type { Film, Roll } from './film.js';
import type { LedgerEntry } from './ledger.js';
import type { DwellingMeter, Meter, TariffText } from './meter.js';
import type { Rebate } from './rebate.js';
import type { Known } from './row.js';
import type { SiteRecord } from './site-record.js';
import type { SolarReading, Window } from './window.js';

export type PlantAgeing = 'off' | 'kept' | 'neglected';
export type View = 'whole' | 'owner';

/** A fiscal year of an owner entity with what may be spent and worked in it. */
export interface Phase {
  /** `owner entity/name`, for example `OWNER1/2027`. */
  readonly id: string;
  readonly ownerEntity: string;
  readonly name: string;
  /** ISO dates, both included. */
  readonly firstDay: string;
  readonly lastDay: string;
  readonly cap_cents: number;
  readonly crewMinutes: Known<number>;
}

/** Rates and rules of the plan; blank takes the assumption of the catalogue, shown as assumed. */
export interface PlanSettings {
  readonly name: string;
  readonly currency: string;
  readonly studyStart: string;
  readonly view: View;
  readonly realDiscountRate: Known<number>;
  readonly realEscalation: Known<number>;
  readonly labour_cents_h: Known<number>;
  /** Own crew's time is paid whether they film or not: then it is not cash. */
  readonly labourIsCash: Known<boolean>;
  readonly contingencyShare: Known<number>;
  readonly materialTaxShare: Known<number>;
  readonly labourTaxShare: Known<number>;
  readonly consumables_cents_m2: Known<number>;
  readonly trimPerEdge_mm: Known<number>;
  /** Taking film off at the end of its life, by its area; blank: it stays on until the window goes. */
  readonly endRemoval_cents_m2?: Known<number>;
  readonly crewSize: Known<number>;
  readonly crewDays_wk: Known<number>;
  readonly crewHours_day: Known<number>;
  /** Crews that work side by side. */
  readonly crews?: Known<number>;
  /** The crew has not put film on before: its first day takes longer. */
  readonly crewIsNew?: Known<boolean>;
  /** Whether old machines count as worse than new by a share for each year; off by default. */
  readonly plantAgeing?: PlantAgeing;
  readonly mixedFilm: boolean;
  /** Whether savings count as modelled, the default, or with the middle of what studies and bills found. */
  readonly realisation?: 'as-modelled' | 'as-found';
  /** Seed that draws who goes first among near-equal dwellings of several phases; blank leaves the order to the choice. */
  readonly drawSeed?: Known<number>;
  readonly noWork: readonly { readonly firstDay: string; readonly lastDay: string; readonly reason: string }[];
}

/** All that was taken in: what the store keeps and the plan reads. Lists are sorted by id. */
export interface Portfolio {
  readonly settings: PlanSettings;
  readonly ownerEntities: readonly OwnerEntity[];
  readonly phases: readonly Phase[];
  readonly buildings: readonly Building[];
  readonly planTypes: readonly PlanType[];
  readonly dwellings: readonly Dwelling[];
  readonly windows: readonly Window[];
  readonly meters: readonly Meter[];
  readonly dwellingMeters: readonly DwellingMeter[];
  readonly tariffs: readonly TariffText[];
  readonly consents: readonly Consent[];
  readonly moveOuts: readonly MoveOut[];
  readonly films: readonly Film[];
  readonly rolls: readonly Roll[];
  readonly readings: readonly SolarReading[];
  readonly locks: readonly Lock[];
  readonly bills: readonly Bill[];
  readonly siteRecords: readonly SiteRecord[];
  readonly ledger: readonly LedgerEntry[];
  readonly rebates: readonly Rebate[];
}

/** A gap filled by a default; shown wherever its figure is shown. */
export interface AssumedValue {
  readonly subject: string;
  readonly field: string;
  readonly value: string;
  readonly unit: string;
  readonly source: string;
  readonly basis: 'measured' | 'published' | 'assumed';
}
