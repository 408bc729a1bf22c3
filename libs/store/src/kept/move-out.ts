import type { Known, MoveOut } from '#calc';
import { Check, Entity, ForeignKey } from 'typeorm';
import { Day, DayKey, Key } from '../columns.js';
import { FromFile } from '../inventory-place.js';
import { keptWithPlace } from '../kept-kind.js';
import { DwellingRow } from './dwelling.js';

/** When a dwelling stands empty. */
@Entity('move_outs')
@Check('move_outs_in_after_out', 'move_in >= move_out')
export class MoveOutRow extends FromFile implements Omit<MoveOut, 'inventoryRow'> {
  @Key() @ForeignKey(() => DwellingRow) dwelling: string;
  @DayKey('move_out') out: string;
  @Day({ blank: true, name: 'move_in' }) in: Known<string>;
}

export const keptMoveOuts = keptWithPlace<MoveOut, MoveOutRow>(MoveOutRow);
