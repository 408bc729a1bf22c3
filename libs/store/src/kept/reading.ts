import type { Known, SolarReading } from '#calc';
import { Check, Entity, ForeignKey, Index } from 'typeorm';
import { Key, Real, Text, Whole, blank } from '../columns.js';
import { FromFile, placeColumns, placeOf } from '../inventory-place.js';
import type { KeptKind } from '../kept-kind.js';
import { BuildingRow } from './building.js';

/** A meter reading behind the glass. It has no mark of its own: place, glass, film and time make its key. */
@Entity('readings')
@Index('readings_by_building', ['building', 'glazing'])
@Check('readings_not_negative', 'bare_w_m2 >= 0 AND filmed_w_m2 >= 0 AND outdoors_w_m2 >= 0')
export class ReadingRow extends FromFile implements Omit<SolarReading, 'inventoryRow' | 'repeat'> {
  @Key() id: string;
  @Text() @ForeignKey(() => BuildingRow) building: string;
  @Real() azimuth_deg: number;
  @Text() glazing: string;
  @Real(blank) bare_W_m2: Known<number>;
  @Real(blank) filmed_W_m2: Known<number>;
  @Real(blank) outdoors_W_m2: Known<number>;
  @Text(blank) film: Known<string>;
  @Text() taken: string;
  @Whole(blank) repeat: Known<number>;
}

export const keptReadings: KeptKind<SolarReading, ReadingRow> = {
  entity: ReadingRow,
  toRow: ({ inventoryRow, ...fields }) => ({
    ...fields,
    repeat: fields.repeat ?? 1,
    id: JSON.stringify([fields.building, fields.azimuth_deg, fields.glazing, fields.film, fields.taken, ...((fields.repeat ?? 1) === 1 ? [] : [fields.repeat])]),
    ...placeColumns(inventoryRow),
  }),
  toRecord: ({ id: _key, inventoryFile, inventoryRow, repeat, ...fields }) => ({
    ...fields,
    repeat: repeat ?? 1,
    inventoryRow: placeOf({ inventoryFile, inventoryRow }) as SolarReading['inventoryRow'],
  }),
};
