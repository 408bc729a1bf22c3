import type { Told } from '../words/told.js';
import type { OptionRebate } from './rebates.js';
import type { Film, InventoryRow, PayerRule } from '#calc';

/** Cost of doing an option, before what belongs to the plan (visits, freight, whole rolls, contingency). Cents with fractions. */
export interface InstalledCost {
  readonly film_cents: number;
  readonly labour_cents: number;
  readonly consumables_cents: number;
  readonly removal_cents: number;
  readonly materialTax_cents: number;
  readonly labourTax_cents: number;
  readonly total_cents: number;
}

/** What one year of a meter-by-meter comparison gives: bill as found less bill with the option alone, all payers, base-date prices. */
export interface YearSaving {
  readonly coolingElectricity_kWh: number;
  readonly cooling_cents: number;
  /** Added heating, positive when the film costs heat, by any fuel. */
  readonly addedHeating_cents: number;
  readonly addedHeating_kWh: number;
}

/** Calendar years that share a plant state and the windows still standing. */
export interface LifeSegment {
  readonly firstYear: number;
  readonly plant: 'present' | 'after replacement';
  /** Windows of the option replaced before this segment; their film is gone. */
  readonly windowsGone: number;
  /** Glass of those windows; absent where none is gone, or in plans kept before. */
  readonly filmGone_m2?: number;
  readonly saving: YearSaving;
}

/** Equal panes of one window, as the crew and the cut list see them. */
export interface OptionWindow {
  readonly window: string;
  readonly mark: string;
  readonly room: string;
  readonly azimuth_deg: number;
  readonly film: string;
  readonly paneCount: number;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly enteredWidth: string;
  readonly enteredHeight: string;
  readonly glazing: string;
  readonly outcome: 'no-listed-trigger' | 'ask-first' | 'written-consent-needed';
  readonly reasons: readonly string[];
  /** Rules behind the reasons, in their order; plans kept before have none. */
  readonly rules?: readonly string[];
  readonly consent: string;
  readonly consentTold?: Told;
  readonly reach: string;
  readonly flags: readonly string[];
  readonly existingFilm: boolean;
  readonly fromPlanType: string | null;
  readonly inventoryRow: InventoryRow;
}

/** One set of facades of one dwelling with one film, or one a side, computed as a set. */
export interface FilmOption {
  /** `dwelling|facades|films`, for example `EC/007|180+270|A`, or `EC/007|180+270|A+B` with a film a side. */
  readonly id: string;
  readonly dwelling: string;
  readonly building: string;
  readonly facades: readonly number[];
  /** By facade, in the same order. */
  readonly films: readonly string[];
  /** The films in words: `A`, or `A+B` where the sides carry different ones. */
  readonly film: string;
  readonly paneCount: number;
  readonly glassArea_m2: number;
  readonly pieceArea_m2: number;
  readonly minutes: { readonly low: number; readonly best: number; readonly high: number };
  readonly cost: InstalledCost;
  /** In order of calendar years; the first holds from the study start. */
  readonly segments: readonly LifeSegment[];
  /** Share of the modelled saving its money and kWh count at; absent where they count as modelled. */
  readonly counted?: number;
  readonly filmLife_yr: number;
  readonly payer: PayerRule;
  /** Who puts the film on. */
  readonly crew: 'own' | 'contractor';
  /** Offers of funds the option meets. */
  readonly rebates: readonly OptionRebate[];
  /** ISO date from which every pane of the option may be filmed. */
  readonly from: string;
  /** Letters and tests without a date; while any is listed the option stands in no phase. */
  readonly waitsFor: readonly string[];
  /** Mean over the film's life of the yearly cooling-cost reduction, all payers, before added heating. */
  readonly yearlyCooling_cents: number;
  /** One standard deviation of `yearlyCooling_cents` from what is specific to this dwelling; see docs/method.md. */
  readonly yearlyCoolingSpread_cents: number;
  readonly asFoundCooling_kWh: number;
  /** Peak cooling electricity as found and with the option, kW. */
  readonly peak_kW: { readonly asFound: number; readonly filmed: number };
  readonly runHours_h: { readonly asFound: number; readonly filmed: number };
  readonly notes: readonly string[];
}

/** The value of an option installed in a phase: net present value at the study start, in both views. */
export interface PhaseValue {
  readonly phase: string;
  readonly whole_cents: number;
  readonly owner_cents: number;
}

/** What is known of a film when options are priced: its sheet and what a square metre of piece costs. */
export interface PricedFilm {
  readonly film: Film;
  readonly price_cents_m2: number;
  /** Film used up over piece area, less one, when all candidate panes are cut at once; uncut roll ends are stock. */
  readonly waste: number;
  readonly boughtArea_m2: number;
  readonly pieceArea_m2: number;
  readonly priceBasis: string;
}
