import type { Known } from '#calc';
import { Check, Entity, Index } from 'typeorm';
import { Flag, Key, LongText, Text, Whole, blank } from '../columns.js';

/** A plan as it was made. It is never edited: a change makes a new revision that names its parent. */
@Entity('plans')
@Index('plans_by_parent', ['parent'])
@Check('plans_revision', 'revision >= 1')
export class PlanRow {
  @Key() id: string;
  @Text() title: string;
  @Whole() revision: number;
  @Text(blank) parent: Known<string>;
  @Text() made: string;
  @Text() programVersion: string;
  @Text() inputsHash: string;
  @Text() hash: string;
  @Flag() signed: boolean;
  @LongText() body: string;
}
