import type { Known } from '#calc';
import { Check, Entity, Index } from 'typeorm';
import { Key, LongText, Text, Whole, blank } from '../columns.js';

/** One file taken in: what it was, when, and what became of its rows. */
@Entity('imports')
@Index('imports_by_hash', ['sha256'])
@Check('imports_counts', 'rows_read >= 0 AND created >= 0 AND updated >= 0 AND unchanged >= 0 AND rejected >= 0')
export class ImportRow {
  @Key() id: string;
  @Text() file: string;
  @Text() sha256: string;
  @Text() at: string;
  @Text(blank) encoding: Known<string>;
  @Whole() rowsRead: number;
  @Whole() created: number;
  @Whole() updated: number;
  @Whole() unchanged: number;
  @Whole() rejected: number;
  /** As JSON; blank for files taken in before findings were kept. */
  @LongText(blank) findings: Known<string>;
}
