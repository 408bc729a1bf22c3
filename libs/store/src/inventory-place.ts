import type { InventoryRow, Known } from '#calc';
import { Text, Whole, blank } from './columns.js';

/** The two columns that say which line of which file a record came from. */
export abstract class FromFile {
  @Text(blank) inventoryFile: Known<string>;
  @Whole(blank) inventoryRow: Known<number>;
}

/** The columns of a record's place. */
export function placeColumns(place: Known<InventoryRow>): Pick<FromFile, 'inventoryFile' | 'inventoryRow'> {
  return { inventoryFile: place?.file ?? null, inventoryRow: place?.row ?? null };
}

/** The place back from its columns; null for a record that came from no file. */
export function placeOf(row: Pick<FromFile, 'inventoryFile' | 'inventoryRow'>): Known<InventoryRow> {
  return row.inventoryFile === null || row.inventoryRow === null ? null : { file: row.inventoryFile, row: row.inventoryRow };
}
