/** How the pieces of a phase share its rolls: the least film, a dwelling on one stretch, or dwellings in the order of work. */
export type CutRule = 'pooled' | 'dwelling together' | 'crew order';

/** Whether every elevation of a phase is cut from one lot of film, which is the default, or lots may be mixed to save film. */
export type LotRule = 'one lot an elevation' | 'any lot';

/** What cutting every elevation from one lot costs against cutting freely; `why` says where it is not in force. */
export interface LotPrice {
  readonly rule: LotRule;
  readonly extraArea_m2: number;
  readonly extraCost_cents: number;
  readonly why: string | null;
}

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
  /** Absent in plans kept before the rule was. */
  readonly oneLot?: LotPrice;
  /** Elevations whose pieces come from more than one lot. */
  readonly mixedLots: readonly { readonly elevation: string; readonly lots: readonly string[] }[];
}

/** A pane's piece on its roll. */
export interface PlacedPiece {
  readonly piece: string;
  readonly window: string;
  readonly dwelling: string;
  readonly paneNo: number;
  readonly roll: string;
  readonly x_mm: number;
  readonly y_mm: number;
  readonly width_mm: number;
  readonly length_mm: number;
  readonly cutWidth: string;
  readonly cutLength: string;
  readonly finishedWidth: string;
  readonly finishedLength: string;
}

/** The cutting of one film in one phase. */
export interface FilmCut {
  readonly phase: string;
  readonly ownerEntity: string;
  readonly film: string;
  readonly pieces: readonly PlacedPiece[];
  readonly unplaced: readonly { readonly piece: string; readonly why: string }[];
  readonly bought: readonly BoughtRoll[];
  readonly fromStock: readonly { readonly roll: string; readonly width_mm: number; readonly length_mm: number }[];
  readonly pieceArea_m2: number;
  readonly boughtArea_m2: number;
  readonly lowerBoundArea_m2: number;
  readonly cost_cents: number;
  readonly leftover: readonly { readonly roll: string; readonly width_mm: number; readonly length_mm: number }[];
  /** Every physical roll it is cut from. */
  readonly rolls: readonly OpenedFilmRoll[];
}

/** Rolls of one kind bought for a phase. */
export interface BoughtRoll {
  readonly roll: string;
  readonly width: string;
  readonly width_mm: number;
  readonly length_mm: number;
  readonly count: number;
  readonly price_cents: number;
  readonly cost_cents: number;
}
