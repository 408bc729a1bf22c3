/** How the pieces of a phase share its rolls: the least film, a dwelling on one stretch, or dwellings in the order of work. */
export type CutRule = 'pooled' | 'dwelling together' | 'crew order';

/** A physical roll with what was cut off it. */
export interface OpenedFilmRoll {
  readonly roll: string;
  readonly source: 'bought' | 'stock';
  readonly lot: string | null;
  readonly width_mm: number;
  readonly length_mm: number;
  readonly running_mm: number;
  readonly left_mm: number;
}

/** Panes that would fit a narrower roll if the trim allowance were a little smaller. */
export interface NearMissPanes {
  /** Cut size, width × length, in inches. */
  readonly size: string;
  readonly panes: number;
  readonly roll: string;
  readonly over: string;
}

/** An end of a roll that goes back to the store room. */
export interface OffCutKept {
  readonly roll: string;
  readonly width_mm: number;
  readonly length_mm: number;
  readonly lot: string | null;
  /** The later phase of the plan that cuts from it. */
  readonly usedIn: string | null;
}

/** What a rule of cutting costs against pooling all pieces. */
export interface RulePrice {
  readonly rule: CutRule;
  readonly extraArea_m2: number;
  readonly extraCost_cents: number;
  readonly why: string | null;
}

/** What is to be said of the cutting of one film in one phase. */
export interface CutReview {
  readonly phase: string;
  readonly ownerEntity: string;
  readonly film: string;
  readonly rule: CutRule;
  /** The independent check of the layout; any fault is an error finding too. */
  readonly check: { readonly ok: boolean; readonly faults: readonly string[] };
  readonly nearMisses: readonly NearMissPanes[];
  readonly offCuts: readonly OffCutKept[];
  readonly rules: readonly RulePrice[];
  /** Elevations whose pieces come from more than one lot. */
  readonly mixedLots: readonly { readonly elevation: string; readonly lots: readonly string[] }[];
}
