import type { BillFitness, Realisation } from '#calc';
import type { MeasuredRealisation, Verification } from './did-it-pay.js';
import type { MeterFit } from './meter-fit.js';

/** What a saving rests on. */
export type RealisationBasis = 'model, not calibrated' | 'calibrated to bills' | 'measured after the work';

/** How much of a modelled saving is expected in bills, with what that rests on. */
export interface StatedRealisation extends Realisation {
  readonly basis: RealisationBasis;
  readonly words: string;
}

/** A parameter that was moved for a group of dwellings. */
export interface MovedParameter {
  readonly field: string;
  readonly before: string;
  readonly after: string;
  readonly unit: string;
  readonly atLimit: boolean;
}

/** Dwellings of one plan type in one building, brought towards the bills together. */
export interface CalibratedGroup {
  readonly building: string;
  readonly planType: string;
  readonly dwellings: number;
  readonly meters: number;
  /** Billed over modelled cooling as the meters say it, all alike, before any pooling; null where the group has no meter of its own. */
  readonly seenRatio: number | null;
  /** The same after pooling: what the group is brought to. */
  readonly pooledRatio: number;
  /** How far the bills decide, 0 none … 1 all. */
  readonly weight: number;
  readonly moved: readonly MovedParameter[];
  readonly modelledBefore_kWh: number;
  readonly modelledAfter_kWh: number;
  readonly why: string | null;
}

/** Bills of a building against the model, month by month. */
export interface BuildingFitness {
  readonly building: string;
  readonly meters: number;
  readonly before: BillFitness;
  readonly after: BillFitness;
  readonly isWithinLimits: boolean;
}

/** What became of the bills before the plan was made. */
export interface CalibrationReview {
  readonly meters: readonly MeterFit[];
  readonly notCompared: readonly { readonly meter: string; readonly why: string }[];
  readonly groups: readonly CalibratedGroup[];
  readonly buildings: readonly BuildingFitness[];
  readonly limits: { readonly cvRmse: number; readonly nmbe: number };
  readonly words: string;
}

/** What the work so far taught, and what the next plan makes of it. */
export interface Learned {
  readonly realisation: { readonly before: StatedRealisation; readonly measured: MeasuredRealisation; readonly after: StatedRealisation } | null;
  /** Person-minutes of timed visits over those planned, and what the next plan takes: the rule a re-plan uses. */
  readonly minutes: { readonly factor: number; readonly recorded: number; readonly visits: number };
  readonly defects: { readonly panes: number; readonly defects: number; readonly expected: number; readonly share: number };
  /** One sentence a rule, with its figures. */
  readonly words: readonly string[];
}

/** What bills do to a plan: the calibration, and how much of each saving is expected to be found. */
export interface BillsReview {
  readonly calibration: CalibrationReview;
  readonly plan: StatedRealisation;
  /** By dwelling; a dwelling that is not listed has `uncalibrated`. */
  readonly byDwelling: Readonly<Record<string, StatedRealisation>>;
  readonly uncalibrated: StatedRealisation;
  /** What bills after the work say, and what was learned of it; null where no film went on a dwelling with bills. */
  readonly verification: Verification | null;
  readonly learned: Learned | null;
  /** How it enters the value of the plan. */
  readonly setting: 'as-modelled' | 'as-found';
}
