import type { Known, Lock } from '#calc';
import { Check, Entity, Index } from 'typeorm';
import { Day, Key, Real, Text, blank } from '../columns.js';
import type { KeptKind } from '../kept-kind.js';

/** A choice fixed by hand; a newer one on the same subject, side, phase and film takes its place. */
@Entity('locks')
@Index('locks_by_subject', ['subject'])
@Check('locks_direction', "direction IN ('in', 'out')")
export class LockRow implements Lock {
  @Key() id: string;
  @Text() subject: string;
  @Text() direction: Lock['direction'];
  @Real(blank) azimuth_deg: Known<number>;
  @Text(blank) phase: Known<string>;
  @Text(blank) film: Known<string>;
  @Text() reason: string;
  @Text() role: string;
  @Day() date: string;
}

export const keptLocks: KeptKind<Lock, LockRow> = {
  entity: LockRow,
  toRow: (lock) => ({ ...lock, id: JSON.stringify([lock.subject, lock.azimuth_deg, lock.phase, lock.film]) }),
  toRecord: ({ id: _key, ...lock }) => lock,
};
