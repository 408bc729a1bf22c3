/** Pieces of one rough cut size, trim included. Without rotation the width lies across the roll. */
export interface CutPiece {
  readonly id: string;
  readonly width_mm: number;
  readonly length_mm: number;
  readonly count: number;
  readonly mayRotate: boolean;
}

/**
 * A kind of roll. With `length_mm` it is bought whole, without it is sold by length. With `stock` (number of such rolls, or true for one)
 * it lies in the store room and costs nothing; a row with stock can be bought as well only if it has a price.
 * `price_cents` is the price of a whole roll, or of a metre where the roll is sold by length; no price = priced by area.
 */
export interface CutRoll {
  readonly width_mm: number;
  readonly length_mm?: number | undefined;
  readonly price_cents?: number | undefined;
  readonly stock?: number | boolean | undefined;
}

/** What to cut from what. */
export interface CutJob {
  readonly pieces: readonly CutPiece[];
  readonly rolls: readonly CutRoll[];
  /** Film lost at each cut, mm; 0 for a knife. */
  readonly kerf_mm?: number | undefined;
  /** Rounds of the improving search, default 1000; 0 = one pass. The same job gives the same result. */
  readonly rounds?: number | undefined;
  /** Seed of the improving search, default 1. */
  readonly seed?: number | undefined;
  /** false where only the layout is wanted: the bounds are not worked out and stand at 0. */
  readonly bounds?: boolean | undefined;
}

/** A piece laid on a roll: x across from the left edge, y along from the roll's free end; width across, length along as laid. */
export interface Placement {
  readonly piece: string;
  /** Place of the roll in the result's `rolls`. */
  readonly roll: number;
  readonly x_mm: number;
  readonly y_mm: number;
  readonly width_mm: number;
  readonly length_mm: number;
  readonly rotated: boolean;
}

/** One physical roll (or one running stretch where film is sold by length). */
export interface UsedRoll {
  /** Place of its kind in the job's `rolls`. */
  readonly offer: number;
  readonly width_mm: number;
  /** Length of the whole roll; null where film is sold by length. */
  readonly length_mm: number | null;
  readonly source: 'bought' | 'stock';
  /** Film used from the free end, lost ends of shelves included. */
  readonly runningLength_mm: number;
  /** What is paid for: the whole roll, or the running length; 0 for stock. */
  readonly boughtLength_mm: number;
  /** Uncut end that stays on the roll. */
  readonly leftLength_mm: number;
}

/** A piece too wide for every roll, cut as strips with upright seams; the owner has to agree. */
export interface SeamProposal {
  readonly strips: number;
  readonly width_mm: number;
  readonly length_mm: number;
  readonly why: string;
}

/** Pieces that could not be laid. */
export interface Unplaced {
  readonly piece: string;
  readonly count: number;
  readonly why: string;
  readonly seam?: SeamProposal;
}

/** What one roll width gives in all. */
export interface WidthTotal {
  readonly width_mm: number;
  readonly boughtRolls: number;
  readonly stockRolls: number;
  readonly runningLength_mm: number;
  readonly boughtLength_mm: number;
}

/** The layout with what it buys and the least any layout must buy. */
export interface CutResult {
  readonly placements: readonly Placement[];
  readonly rolls: readonly UsedRoll[];
  readonly byWidth: readonly WidthTotal[];
  /** Area of the pieces laid. */
  readonly pieceArea_mm2: number;
  /** Running length × width of all rolls, stock too. */
  readonly usedArea_mm2: number;
  readonly boughtArea_mm2: number;
  /** No cutting of the pieces laid, guillotine or not, buys less. */
  readonly lowerBoundArea_mm2: number;
  /** bought / bound − 1; null where the bound is 0 and something is bought. */
  readonly overBound: number | null;
  /** Price of what is bought; null where rolls are priced by area. */
  readonly cost_cents: number | null;
  readonly lowerBoundCost_cents: number | null;
  readonly unplaced: readonly Unplaced[];
}
