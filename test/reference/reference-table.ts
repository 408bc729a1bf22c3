/** How a published value was seen: in the document itself, quoted by another source, recalled, or worked out from the stated formula. */
export type Seen = 'in the source' | 'quoted elsewhere' | 'from memory' | 'computed from the stated formula';

/** One published value with the place it stands at. */
export interface ReferenceRow<Given, Expect> {
  readonly given: Given;
  readonly expect: Expect;
  /** Table, row, page or case id in the source. */
  readonly place: string;
}

/** Values from outside the project that one calc file must meet; a table without source and reason for its tolerance does not compile. */
export interface ReferenceTable<Given, Expect> {
  /** The calc file, for example `calc/sun/position`. */
  readonly of: string;
  readonly source: string;
  readonly seen: Seen;
  readonly tolerance: { readonly abs?: number; readonly rel?: number; readonly why: string };
  readonly rows: readonly ReferenceRow<Given, Expect>[];
}
