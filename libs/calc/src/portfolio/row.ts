/** The line of a file a record came from; it travels with every figure to the last sheet. `row` counts the file's lines from 1. */
export interface InventoryRow {
  readonly file: string;
  readonly row: number;
}

/** A value a person may leave blank: `null` is "not known", never zero and never a default. */
export type Known<T> = T | null;
