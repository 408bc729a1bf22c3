import type { Known } from '#calc';
import { Entity, Index, PrimaryColumn } from 'typeorm';
import { Key, LongText, blank } from '../columns.js';

/** What an import did to one site record, so that it can be undone. */
@Entity('import_marks')
@Index('import_marks_by_record', ['recordId'])
export class ImportMarkRow {
  @Key() importId: string;
  @PrimaryColumn({ type: 'varchar' }) recordId: string;
  /** The record before, as JSON; blank where the import created it. */
  @LongText(blank) before: Known<string>;
  /** The record as the import left it, as JSON with its fields in order. */
  @LongText() after: string;
}
