/** What one more of a limit would bring. */
export interface PhasePrice {
  readonly phase: string;
  /** Value of the next dollar of the phase's cap, contingency taken off, in dollars; 0 where the cap does not bind. */
  readonly nextDollar: number;
  /** Value of the next person-hour of crew in cents; null where the phase has no limit of minutes. */
  readonly nextCrewHour_cents: number | null;
}

/** A way to film a dwelling, at the prices of the limits. */
export interface ReasonedWay {
  readonly option: string;
  /** Film and sides in words; absent in plans kept before. */
  readonly words?: string;
  readonly phase: string;
  readonly value_cents: number;
  readonly cost_cents: number;
  /** Value less the price of all it uses; a visit counts where it would be new. */
  readonly ahead_cents: number;
}

/** Cost, film price or saving at which a way of filming enters; each alone is enough at the prices of this plan. */
export interface Closing {
  /** Installed cost at which it enters; null when no cost is low enough. */
  readonly cost_cents: number | null;
  /** Price of the film, as a share of today's, at which it enters; null when free film is not enough. */
  readonly filmShare: number | null;
  /** Multiple of the yearly saving (or of the energy price) at which it enters; null when it saves nothing. */
  readonly savingShare: number | null;
}

/** What the best way that waits for letters needs: all its letters, and where it is still short one of the rest. */
export interface WithLetters extends Closing {
  /** Film and sides in words. */
  readonly way: string;
  readonly letters: readonly string[];
  readonly phase: string;
  /** Net present value in the plan's view, once the letters are there. */
  readonly value_cents: number;
  /** How far it then still falls behind; 0: the letters are enough. */
  readonly short_cents: number;
  readonly visit_cents: number | null;
}

/** What would have to be true for a dwelling to enter. */
export interface ToEnter extends Closing {
  /** Film and sides in words; absent in plans kept before. */
  readonly way?: string;
  /** The year it would be done in; absent in plans kept before. */
  readonly phase?: string;
  /** A visit of the building to be paid beside, shared by all dwellings done on it; null where the plan goes there anyway or the gap holds it. */
  readonly visit_cents?: number | null;
  /** Cap from which the best plan holds it; null where no curve tells. */
  readonly cap: { readonly of: string; readonly cap_cents: number; readonly exact: boolean } | null;
  /** Better than what may go ahead without a letter; absent in plans kept before. */
  readonly withLetters?: WithLetters | null;
}

/** Why a dwelling is in the plan, or why not. */
export interface DwellingReason {
  readonly dwelling: string;
  readonly building: string;
  /** Phase it is done in, or null. */
  readonly phase: string | null;
  readonly why: string;
  readonly toEnter: ToEnter | null;
  /** Its best ways at the prices, best first, a few. */
  readonly ways: readonly ReasonedWay[];
}

/** Next best line if something drops out. */
export interface ReserveLine {
  readonly place: number;
  readonly dwelling: string;
  readonly building: string;
  readonly option: string;
  /** Film and sides in words; absent in plans kept before. */
  readonly words?: string;
  readonly phase: string;
  readonly cost_cents: number;
  readonly minutes: number;
  readonly value_cents: number;
  /** How far its value stays behind the price of what it uses; below zero it would pay, but does not fit as a whole. */
  readonly behind_cents: number;
  /** The building is not visited in that phase by the plan: the line brings a visit with it. */
  readonly newVisit: boolean;
}

export interface CapCurvePoint {
  /** Sum of the caps the point stands for, contingency inside. */
  readonly cap_cents: number;
  readonly value_cents: number;
  /** No plan is worth more at this cap; equal to the value at exact points. */
  readonly bound_cents: number;
  /** Dwellings that enter, change or leave at this point. */
  readonly changes: readonly string[];
}

/** Value against cap. */
export interface CapCurve {
  /** A phase, or all phases of an owner together. */
  readonly of: string;
  readonly phases: readonly string[];
  readonly basis: 'exact breakpoints' | 'solved again at other caps' | 'not drawn';
  readonly why: string;
  readonly points: readonly CapCurvePoint[];
}

/** Why the plan is as it is. */
export interface Explanations {
  readonly prices: readonly PhasePrice[];
  readonly dwellings: readonly DwellingReason[];
  readonly reserve: readonly ReserveLine[];
  readonly curves: readonly CapCurve[];
  /** What it costs to keep elevations whole, by the best plans found with and without the rule; null where no building asks for it. */
  readonly wholeElevations: { readonly price_cents: number; readonly text: string } | null;
}
