/** One step of working a figure out by hand. */
export interface ReceiptStep {
  readonly label: string;
  /** The formula with its numbers in: `2 × 1.1938 m × 1.1938 m × 12.92 × 1.132 = 41.68`. */
  readonly substituted: string;
  readonly value: number;
  readonly unit: string;
}

/** A row of a file of the survey that the figure stands on. */
export interface ReceiptRow {
  readonly file: string;
  readonly row: number;
  /** Columns of the row that are used, by their names in the file. */
  readonly columns: readonly string[];
  /** What the row is of. */
  readonly of: string;
}

/** A value that does not come from a row of the survey. */
export interface ReceiptAssumption {
  readonly name: string;
  readonly value: string;
  readonly unit: string;
  readonly source: string;
  readonly basis: 'measured' | 'published' | 'assumed' | 'given';
}

/** Part of a sum: the number at an RFC 6901 pointer into the kernel's result, times a factor; `*` stands for every entry of a list, added up. */
export interface ReceiptPart {
  readonly pointer: string;
  readonly times: number;
}

/** How a kernel of `rollout compute` gives the same digits. */
export interface ReceiptCompute {
  readonly kernel: string;
  /** One JSON value, as the kernel takes it. */
  readonly input: unknown;
  /** The figure is the sum of these, … */
  readonly result: readonly ReceiptPart[];
  /** … over the sum of these, where there are any, … */
  readonly over?: readonly ReceiptPart[];
  /** … plus this, … */
  readonly plus?: number;
  /** … rounded to whole cents, half away from zero. */
  readonly isRounded?: true;
  /** Which number of the result it is, in words. */
  readonly words: string;
}

/** A figure opened to one page: how it is worked out, from what, and how to work it again outside the program. */
export interface Receipt {
  readonly figure: string;
  readonly title: string;
  /** As it stands in the plan. */
  readonly value: number | string;
  readonly unit: string;
  /** In words and symbols. */
  readonly formula: string;
  readonly steps: readonly ReceiptStep[];
  readonly rows: readonly ReceiptRow[];
  readonly assumptions: readonly ReceiptAssumption[];
  readonly compute: ReceiptCompute | null;
  /** Why no kernel gives it, or what must be known when it is worked again; null where there is nothing to say. */
  readonly computeWhy: string | null;
  /** What the steps come to, and whether that is the figure of the plan. */
  readonly worked: { readonly value: number | string; readonly agrees: boolean; readonly why: string | null };
  /** Receipts of the figures it is made of. */
  readonly see: readonly string[];
}

/** Why a sum has no kernel. */
export const BY_HAND = 'a sum to be added by hand: every number of it stands above';

/** Digits that two ways of adding the same numbers may differ by, over the larger of them. */
const SAME = 1e-9;

/** Holds what the steps come to against the figure of the plan. */
export function workedOut(stated: number | string, found: number | string, why: string): Receipt['worked'] {
  const agrees = typeof stated === 'number' && typeof found === 'number' ? Math.abs(stated - found) <= SAME * Math.max(1, Math.abs(stated)) : stated === found;
  return { value: found, agrees, why: agrees ? null : why };
}
