import type { Known, ScreenKind, Window } from '#calc';
import { Check, Entity, ForeignKey, Index } from 'typeorm';
import { Day, Flag, Json, Key, Real, Text, Whole, blank } from '../columns.js';
import { FromFile, placeColumns, placeOf } from '../inventory-place.js';
import type { KeptKind } from '../kept-kind.js';
import { DwellingRow } from './dwelling.js';
import { PlanTypeRow } from './plan-type.js';

/** A window of a dwelling or of a plan type; a length keeps the text it was entered as beside its millimetres. */
@Entity('windows')
@Index('windows_by_dwelling', ['dwelling'])
@Index('windows_by_plan_type', ['planType'])
@Check('windows_of_one_place', 'dwelling IS NOT NULL OR plan_type IS NOT NULL')
@Check('windows_size', 'width_mm >= 0 AND height_mm >= 0')
@Check('windows_frame_share', 'frame_share >= 0 AND frame_share < 1')
export class WindowRow extends FromFile implements Omit<Window, 'inventoryRow' | 'width' | 'height'> {
  @Key() id: string;
  @Text(blank) @ForeignKey(() => DwellingRow) dwelling: Known<string>;
  @Text(blank) @ForeignKey(() => PlanTypeRow) planType: Known<string>;
  @Text() mark: string;
  @Text(blank) room: Known<string>;
  @Real(blank) azimuth_deg: Known<number>;
  @Real(blank) tilt_deg: Known<number>;
  @Text() widthEntered: string;
  @Real() width_mm: number;
  @Text() heightEntered: string;
  @Real() height_mm: number;
  @Whole(blank) liteRows: Known<number>;
  @Whole(blank) liteColumns: Known<number>;
  @Real(blank) frameShare: Known<number>;
  @Text(blank) glazing: Known<string>;
  @Real(blank) labelSolarHeatGain: Known<number>;
  @Real(blank) labelUFactor_W_m2K: Known<number>;
  @Json(blank) shade: Window['shade'];
  @Real(blank) insectScreenShare: Known<number>;
  @Text(blank) screenKind: Known<ScreenKind>;
  @Text(blank) blind: Window['blind'];
  @Real(blank) sillHeight_m: Known<number>;
  @Text(blank) reach: Window['reach'];
  @Json() flags: Window['flags'];
  @Day(blank) warrantyEnd: Known<string>;
  @Whole(blank) replacementYear: Known<number>;
  @Text(blank) existingFilm: Window['existingFilm'];
  @Text(blank) existingFilmCondition: Known<string>;
  @Flag() dropped: boolean;
}

export const keptWindows: KeptKind<Window, WindowRow> = {
  entity: WindowRow,
  toRow: ({ width, height, inventoryRow, ...fields }) => ({
    ...fields,
    screenKind: fields.screenKind ?? null,
    widthEntered: width.entered,
    width_mm: width.mm,
    heightEntered: height.entered,
    height_mm: height.mm,
    ...placeColumns(inventoryRow),
  }),
  toRecord: ({ widthEntered, width_mm, heightEntered, height_mm, inventoryFile, inventoryRow, ...fields }) => ({
    ...fields,
    width: { entered: widthEntered, mm: width_mm },
    height: { entered: heightEntered, mm: height_mm },
    inventoryRow: placeOf({ inventoryFile, inventoryRow }) as Window['inventoryRow'],
  }),
};
