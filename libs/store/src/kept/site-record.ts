import type { Known, SiteRecord } from '#calc';
import { Check, Entity, ForeignKey, Index } from 'typeorm';
import { Day, Key, LongText, Real, Text, Whole, blank } from '../columns.js';
import { FromFile, placeColumns, placeOf } from '../inventory-place.js';
import type { KeptKind } from '../kept-kind.js';
import { DwellingRow } from './dwelling.js';

/** What the crew found or did on a day. The window is named by its mark in the plan, which may come from a plan type: no key of another table. */
@Entity('site_records')
@Index('site_records_by_dwelling', ['dwelling', 'day'])
@Check('site_records_kind', "kind IN ('field-size', 'done', 'no-access', 'defect', 'broken-pane', 'minutes', 'film-used')")
@Check('site_records_not_negative', 'width_mm >= 0 AND height_mm >= 0 AND person_minutes >= 0 AND roll_width_mm >= 0 AND roll_length_mm >= 0')
export class SiteRecordRow extends FromFile implements Omit<SiteRecord, 'inventoryRow' | 'width' | 'height'> {
  @Key() id: string;
  @Day() day: string;
  @Text() kind: SiteRecord['kind'];
  @Text(blank) @ForeignKey(() => DwellingRow) dwelling: Known<string>;
  @Text({ blank: true, name: 'window_id' }) window: Known<string>;
  @Whole(blank) pane: Known<number>;
  @Text(blank) film: Known<string>;
  @Text(blank) widthEntered: Known<string>;
  @Real(blank) width_mm: Known<number>;
  @Text(blank) heightEntered: Known<string>;
  @Real(blank) height_mm: Known<number>;
  @Real(blank) personMinutes: Known<number>;
  @Real(blank) rollWidth_mm: Known<number>;
  @Real(blank) rollLength_mm: Known<number>;
  @LongText(blank) defect: Known<string>;
  @LongText(blank) note: Known<string>;
}

const lengthOf = (entered: Known<string>, mm: Known<number>): SiteRecord['width'] => (entered === null || mm === null ? null : { entered, mm });

export const keptSiteRecords: KeptKind<SiteRecord, SiteRecordRow> = {
  entity: SiteRecordRow,
  toRow: ({ width, height, inventoryRow, ...fields }) => ({
    ...fields,
    widthEntered: width?.entered ?? null,
    width_mm: width?.mm ?? null,
    heightEntered: height?.entered ?? null,
    height_mm: height?.mm ?? null,
    ...placeColumns(inventoryRow),
  }),
  toRecord: ({ widthEntered, width_mm, heightEntered, height_mm, inventoryFile, inventoryRow, ...fields }) => ({
    ...fields,
    width: lengthOf(widthEntered, width_mm),
    height: lengthOf(heightEntered, height_mm),
    inventoryRow: placeOf({ inventoryFile, inventoryRow }) as SiteRecord['inventoryRow'],
  }),
};
