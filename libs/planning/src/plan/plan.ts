import type { AssumedValue, Building, Dwelling, Phase, Roll, TariffText } from '#calc';
import type { PlanCalendar } from '../crew/calendar-types.js';
import type { SettledWork } from '../record/settled-work.js';
import type { CutReview, FilmCut } from '../rolls/cut-types.js';
import type { WorkOrder } from '../crew/work-order-types.js';
import type { Explanations } from '../choice/explanations.js';
import type { ProofRecord } from '../choice/proof-record.js';
import type { EnergyReview } from '../energy/energy-types.js';
import type { LineUse } from '../review/line-uses.js';
import type { Outlook } from '../uncertainty/outlook.js';
import type { PaybackReview } from '../review/payback.js';
import type { BillsReview, StatedRealisation } from '../bills/review.js';
import type { LedgerReport } from '../ledger/ledger-types.js';
import type { FilmOption, OptionWindow, PhaseValue, PricedFilm } from '../options/option.js';
import type { NotRanked, PlanFinding } from './plan-finding.js';
import type { PlanTerms } from './terms.js';

export type * from './plan-finding.js';
export type * from './terms.js';

export interface RankedDwelling {
  readonly rank: number;
  /** Dwellings of one band cannot be told apart; A is best. */
  readonly band: string;
  readonly dwelling: string;
  readonly building: string;
  readonly option: string;
  /** Yearly cooling-cost reduction per dollar of installed film, 1/yr. */
  readonly perDollar: number;
  readonly perDollarLow: number;
  readonly perDollarHigh: number;
  readonly yearlyCooling_cents: number;
  readonly cost_cents: number;
  readonly simplePayback_yr: number | null;
  readonly paybackWhy: string | null;
  readonly reason: string;
  /** What the plan does with it: the phase, or why it is not there. */
  readonly inPlan: string;
  readonly differs: string | null;
  /** How much of the modelled saving is expected in bills; absent in plans made before bills were looked at. */
  readonly realisation?: StatedRealisation;
}

export interface RankedFacade extends RankedDwelling {
  readonly azimuth_deg: number;
}

/** What is really paid in a phase. Whole cents; the parts add up to total_cents. */
export interface PhaseSpending {
  readonly film_cents: number;
  readonly labour_cents: number;
  readonly consumables_cents: number;
  readonly removal_cents: number;
  readonly visits_cents: number;
  readonly freight_cents: number;
  readonly tax_cents: number;
  readonly contingency_cents: number;
  readonly total_cents: number;
}

export interface PhaseResult {
  readonly phase: Phase;
  readonly spending: PhaseSpending;
  readonly left_cents: number;
  readonly minutes: { readonly low: number; readonly best: number; readonly high: number };
  readonly lines: number;
  readonly panes: number;
  readonly visits: readonly string[];
  /** Cap the selection worked with in the last round (lowered when whole rolls passed the real cap). */
  readonly workedCap_cents: number;
  readonly nothingLeftThatPays: boolean;
}

/** A line of the plan: one option of one dwelling in one phase. */
export interface PlanLine {
  readonly dwelling: string;
  readonly building: string;
  readonly ownerEntity: string;
  readonly phase: string;
  readonly option: FilmOption;
  readonly windows: readonly OptionWindow[];
  readonly value: PhaseValue;
  readonly simplePayback_yr: number | null;
  readonly paybackWhy: string | null;
  readonly sir: number;
  readonly reason: string;
  readonly differs: string | null;
  readonly realisation?: StatedRealisation;
}

/** How good the choice is and how anyone can check it. */
export interface Proof {
  readonly status: 'optimal' | 'bounded' | 'infeasible';
  readonly value_cents: number;
  readonly bound_cents: number;
  readonly gap: number;
  readonly certificate: unknown;
  readonly why: string | null;
  /** Question and answer of the last round; plans kept before this was recorded have none. */
  readonly record?: ProofRecord;
}

/** What the lines of the plan are worth in its view, and what no plan can pass before whole rolls are bought. */
export interface PlanWorth {
  /** After whole rolls, dropped and added lines; before visits, freight, film beyond the pieces and contingency. */
  readonly lines_cents: number;
  /** What the visits of the plan take off it, brought to the study start; the selection counts them. Plans kept before have none. */
  readonly visits_cents?: number;
  /** Bound of the first round: full caps, film priced by the piece. */
  readonly fullCapBound_cents: number;
}

/** A pass of the two loops: whole rolls against the cap, shared meters against first-in values. */
export interface RoundLog {
  readonly round: number;
  readonly kind: 'rolls' | 'shared meter';
  readonly subject: string;
  readonly text: string;
}

/** What waits behind a letter or test. */
export interface WaitingItem {
  readonly building: string;
  readonly subject: string;
  readonly kind: string;
  readonly state: string;
  readonly dwellings: number;
  readonly panes: number;
  readonly cost_cents: number;
  readonly value_cents: number;
  readonly yearlyCooling_cents: number;
  readonly reasons: readonly string[];
}

/** Money of one meter over a year, as found and with the plan, by month. */
export interface MeterMonth {
  readonly month: number;
  readonly asFound_cents: number;
  readonly planned_cents: number;
  readonly asFound_kWh: number;
  readonly planned_kWh: number;
}

/** What the saved kWh of a meter are worth and who keeps them in the first year; owner and tenant sum to the meter's saving. */
export interface MeterPrices {
  /** Money saved over kWh saved: weighted by when the film saves. Null where nothing is saved. */
  readonly saved_cents_kWh: number | null;
  /** The whole bill as found over its kWh. */
  readonly average_cents_kWh: number | null;
  readonly why: string | null;
  readonly owner_cents: number;
  readonly tenant_cents: number;
}

export interface MeterResult {
  readonly meter: string;
  readonly building: string;
  readonly tariff: string;
  readonly payerRule: string;
  readonly ownerShare: number;
  readonly dwellings: number;
  readonly months: readonly MeterMonth[];
  readonly firstInSaving_cents: number;
  readonly togetherSaving_cents: number;
  /** Absent in plans kept before it was worked out. */
  readonly prices?: MeterPrices;
}

/** The plan: made once, never edited; a change makes a new revision that names its parent. */
export interface Plan {
  readonly id: string;
  readonly revision: number;
  readonly parent: string | null;
  readonly madeOn: string;
  readonly program: string;
  readonly inputHash: string;
  readonly name: string;
  readonly terms: PlanTerms;
  readonly buildings: readonly Building[];
  readonly dwellings: readonly Dwelling[];
  readonly weather: readonly { readonly building: string; readonly label: string; readonly source: string }[];
  readonly films: readonly PricedFilm[];
  readonly rolls: readonly Roll[];
  readonly rankedDwellings: readonly RankedDwelling[];
  readonly rankedFacades: readonly RankedFacade[];
  readonly notRanked: readonly NotRanked[];
  readonly lines: readonly PlanLine[];
  readonly phases: readonly PhaseResult[];
  /** Of the choice under the worked caps of the last round. */
  readonly proof: Proof;
  readonly worth: PlanWorth;
  readonly rounds: readonly RoundLog[];
  readonly waiting: readonly WaitingItem[];
  readonly cuts: readonly FilmCut[];
  readonly cutReviews: readonly CutReview[];
  readonly workOrders: readonly WorkOrder[];
  readonly calendar: PlanCalendar;
  /** Work done since the revision before; null for a first plan. */
  readonly settled: SettledWork | null;
  readonly meters: readonly MeterResult[];
  /** Seasons, design day, run hours, moisture, and the film on each glass: of the lines and of each ranked dwelling's best option. */
  readonly energy: EnergyReview;
  readonly payback: PaybackReview;
  /** Tariffs of the meters of the plan's lines, by label. */
  readonly tariffs: readonly TariffText[];
  /** The monthly use behind each line's saving, so that it can be billed again. */
  readonly uses: readonly LineUse[];
  /** What the choice aimed at. */
  readonly aim: 'middle' | 'nine-in-ten';
  /** What draws of all that is not known say; null where none were asked for. */
  readonly outlook: Outlook | null;
  /** What bills do to the plan: calibration, and how much of the savings is expected; absent in older plans. */
  readonly bills?: BillsReview;
  /** Money already spoken for when the plan was made; absent where no ledger is kept. */
  readonly ledger?: LedgerReport;
  /** Why the plan is as it is; plans kept before this was recorded have none. */
  readonly explanations?: Explanations;
  /** Everything eligible costs this; the caps buy that share of it. */
  readonly eligible: { readonly cost_cents: number; readonly panes: number; readonly boughtShare: number; readonly payingCost_cents: number; readonly payingBoughtShare: number };
  readonly assumed: readonly AssumedValue[];
  readonly findings: readonly PlanFinding[];
}
