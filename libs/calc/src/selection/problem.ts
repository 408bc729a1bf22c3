/** One way to film a group: which windows with which film is known to the caller, here it is a cost, a value and minutes. */
export interface SelectionOption {
  readonly id: string;
  /** Whole cents, ≥ 0. */
  readonly cost_cents: number;
  /** Whole number, may be negative; worth value × the phase's factor when taken in that phase. */
  readonly value: number;
  /** Whole person-minutes, ≥ 0, default 0. */
  readonly crewMinutes?: number;
  /** Film family; a building with `oneFamily` takes options of one family only. Without a family it goes with any. */
  readonly family?: string;
  /** Phases this option may be taken in (indices), for example from the date of its consent; default those of the group. */
  readonly phases?: readonly number[];
}

/** What is taken at most once: a dwelling with its options. */
export interface SelectionGroup {
  readonly id: string;
  readonly building?: string;
  /** Phases the group may be taken in (indices); default all. */
  readonly phases?: readonly number[];
  readonly options: readonly SelectionOption[];
}

/** A fiscal year: what may be spent and worked in it. */
export interface SelectionPhase {
  /** Whole cents, ≥ 0: options and visits of the phase. */
  readonly cap_cents: number;
  /** Whole person-minutes of options and visits of the phase; without it minutes are not limited. */
  readonly crewMinutes?: number;
  /** Whole number ≥ 0, default 1. */
  readonly valueFactor?: number;
}

/** A building is visited in every phase in which an option of it is taken. */
export interface SelectionBuilding {
  readonly id: string;
  readonly visit_cents: number;
  readonly visitMinutes: number;
  /** By phase: whole numbers ≥ 0 that come off the value for each phase the building is visited in; default 0. */
  readonly visitPrice?: readonly number[];
  readonly owner?: string;
  /** Options and visits of the building, all phases. */
  readonly cap_cents?: number;
  /** Least cost of options (visits apart) in each phase the building is visited in. */
  readonly minSpendIfVisited_cents?: number;
  readonly oneFamily?: boolean;
}

/** Options and visits in the owner's buildings, all phases. */
export interface SelectionOwner {
  readonly id: string;
  readonly cap_cents: number;
}

/** Groups that should be done in one phase or not at all; otherwise `price` comes off the value, once. */
export interface KeepTogether {
  readonly groups: readonly string[];
  readonly price: number;
}

/** Which option of which group in which phase: the whole question. */
export interface SelectionProblem {
  readonly groups: readonly SelectionGroup[];
  readonly phases: readonly SelectionPhase[];
  readonly buildings?: readonly SelectionBuilding[];
  readonly owners?: readonly SelectionOwner[];
  /** Exactly one option of each of these groups. */
  readonly must?: readonly string[];
  readonly mustNot?: readonly string[];
  /** At most one of the two groups. */
  readonly exclusive?: readonly (readonly [string, string])[];
  readonly keepTogether?: readonly KeepTogether[];
  /** Solving only; counts where the caller hands in a clock. */
  readonly timeLimit_s?: number;
}

/** One line of the choice. */
export interface ChosenOption {
  readonly group: string;
  readonly option: string;
  readonly phase: number;
}

/** Prices of the limits: with them anyone can work out in one pass a value no choice can pass. */
export interface SelectionMultipliers {
  /** Value per cent of each phase's cap. */
  readonly cap: readonly number[];
  /** Value per crew minute of each phase. */
  readonly crewMinutes: readonly number[];
  readonly owners: Readonly<Record<string, number>>;
  readonly buildingCap: Readonly<Record<string, number>>;
  /** Value per cent of least spend, by building and phase. */
  readonly minSpend: Readonly<Record<string, readonly number[]>>;
  /** In the order of `exclusive`. */
  readonly exclusive: readonly number[];
}

/** What was found, what cannot be passed, and why. */
export interface SelectionCertificate {
  readonly multipliers: SelectionMultipliers;
  /** Lagrangian value at the multipliers, rounded down to a whole number: no choice is worth more. */
  readonly bound: number;
  readonly found: number;
  /** (bound − found) / bound. */
  readonly gap: number;
  /** `bound`: the multipliers alone close the gap; `search`: every better choice was ruled out by search; `none`: not proved. */
  readonly provedBy: 'bound' | 'search' | 'none';
}

/** How far the work went, for reports; the same for the same input unless a clock ended it. */
export interface SelectionEffort {
  readonly independentParts: number;
  readonly searchStates: number;
  /** What ended the search: nothing was left to look for; the count of steps, the same everywhere; the clock, which depends on the machine. */
  readonly endedBy: 'proof' | 'steps' | 'clock';
}

/** A choice with the proof of how good it is, or why there is none. */
export type SelectionResult =
  | {
      readonly status: 'optimal' | 'bounded';
      readonly chosen: readonly ChosenOption[];
      readonly value: number;
      /** Options and visits, by phase. */
      readonly cost_cents: readonly number[];
      readonly crewMinutes: readonly number[];
      /** No choice is worth more; equal to value when proved. */
      readonly bound: number;
      readonly gap: number;
      readonly certificate: SelectionCertificate;
      readonly effort: SelectionEffort;
    }
  | {
      /** `infeasible`: ruled out; `bounded`: nothing found within the limits of the search, though not ruled out. */
      readonly status: 'infeasible' | 'bounded';
      readonly why: string;
      readonly chosen: readonly [];
      readonly value: null;
      readonly cost_cents: null;
      readonly crewMinutes: null;
      readonly bound: number | null;
      readonly gap: null;
      readonly certificate: null;
      readonly effort: SelectionEffort;
    };

/** A linear program: maximise objective · x, each row · x ≤ or = its right side, lower ≤ x ≤ upper; columns are sparse. */
export interface LinearProgram {
  readonly columns: readonly {
    readonly objective: number;
    readonly lower: number;
    readonly upper: number;
    readonly rows: readonly number[];
    readonly coefficients: readonly number[];
  }[];
  readonly rows: readonly { readonly sense: '<=' | '='; readonly right: number }[];
}

/** Answer of a linear program, or why there is none; duals are ≥ 0 for ≤ rows of a maximum. */
export type LinearAnswer = { readonly x: readonly number[]; readonly duals: readonly number[]; readonly objective: number } | { readonly why: string };

/** A linear-programming solver handed to calc, so that calc itself knows none. */
export type SolveLp = (program: LinearProgram) => LinearAnswer;

/** What a caller may hand in: all optional. */
export interface SelectionTools {
  readonly solveLp?: SolveLp;
  /** Seconds on any steady clock; with `timeLimit_s` it ends the search. Without it the search is limited by counts and repeats exactly. */
  readonly now_s?: () => number;
  /** Seconds of work of a reference machine, counted in steps: the same answer on every machine unless the clock strikes first. */
  readonly work_s?: number;
  /** Called with each better plan, its value and the bound of that moment. */
  readonly better?: (found: { readonly value: number; readonly bound: number }) => void;
}
