import type { InventoryRow, Known, Portfolio } from '#calc';
import type { ObjectLiteral } from 'typeorm';
import { placeColumns, placeOf, type FromFile } from './inventory-place.js';

/** The lists of a portfolio: one kind of thing kept each. */
export type ListName = Exclude<keyof Portfolio, 'settings'>;
export type RecordOf<List extends ListName> = Portfolio[List][number];

/** How one kind of record lies in its table. */
export interface KeptKind<Kept, Row extends ObjectLiteral> {
  readonly entity: new () => Row;
  readonly toRow: (record: Kept) => Row;
  readonly toRecord: (row: Row) => Kept;
}

/** A kind whose columns are the record's own fields. */
export function keptAsItIs<Row extends object>(entity: new () => Row): KeptKind<Row, Row> {
  return { entity, toRow: (record) => record, toRecord: (row) => ({ ...row }) };
}

/** A kind whose columns are the record's own fields and the line of the file it came from. */
export function keptWithPlace<Kept extends { readonly inventoryRow: Known<InventoryRow> }, Row extends Omit<Kept, 'inventoryRow'> & FromFile>(
  entity: new () => Row,
): KeptKind<Kept, Row> {
  return {
    entity,
    toRow: ({ inventoryRow, ...fields }) => ({ ...fields, ...placeColumns(inventoryRow) }) as unknown as Row,
    toRecord: ({ inventoryFile, inventoryRow, ...fields }) =>
      ({ ...fields, inventoryRow: placeOf({ inventoryFile, inventoryRow }) }) as unknown as Kept,
  };
}
