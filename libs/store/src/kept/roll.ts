import type { Known, Roll } from '#calc';
import { Check, Entity, Index } from 'typeorm';
import { Key, Real, Text, Whole, WholeCents, blank } from '../columns.js';
import { FromFile, placeColumns, placeOf } from '../inventory-place.js';
import type { KeptKind } from '../kept-kind.js';

/** A roll of film on offer, or in stock with a length left. */
@Entity('rolls')
@Index('rolls_by_film', ['film'])
@Check('rolls_size', 'width_mm > 0 AND length_mm >= 0 AND in_stock >= 0')
export class RollRow extends FromFile implements Omit<Roll, 'inventoryRow' | 'width'> {
  @Key() id: string;
  @Text() film: string;
  @Text() widthEntered: string;
  @Real() width_mm: number;
  @Real() length_mm: number;
  @WholeCents(blank) price_cents: Known<number>;
  @Whole() inStock: number;
  @Text(blank) lot: Known<string>;
}

export const keptRolls: KeptKind<Roll, RollRow> = {
  entity: RollRow,
  toRow: ({ width, inventoryRow, ...fields }) => ({ ...fields, widthEntered: width.entered, width_mm: width.mm, ...placeColumns(inventoryRow) }),
  toRecord: ({ widthEntered, width_mm, inventoryFile, inventoryRow, ...fields }) => ({
    ...fields,
    width: { entered: widthEntered, mm: width_mm },
    inventoryRow: placeOf({ inventoryFile, inventoryRow }) as Roll['inventoryRow'],
  }),
};
