import { Table, type MigrationInterface, type QueryRunner } from 'typeorm';
import { day, key, longText, place, real, table, text, whole } from './table-columns.js';

const SITE_RECORDS = table('site_records', {
  columns: [
    key('id'),
    day('day'),
    text('kind'),
    text('dwelling', 'blank'),
    text('window_id', 'blank'),
    whole('pane', 'blank'),
    text('film', 'blank'),
    text('width_entered', 'blank'),
    real('width_mm', 'blank'),
    text('height_entered', 'blank'),
    real('height_mm', 'blank'),
    real('person_minutes', 'blank'),
    real('roll_width_mm', 'blank'),
    real('roll_length_mm', 'blank'),
    longText('defect', 'blank'),
    longText('note', 'blank'),
    ...place,
  ],
  indexes: { site_records_by_dwelling: ['dwelling', 'day'] },
  checks: {
    site_records_kind: "kind IN ('field-size', 'done', 'no-access', 'defect', 'broken-pane', 'minutes', 'film-used')",
    site_records_not_negative: 'width_mm >= 0 AND height_mm >= 0 AND person_minutes >= 0 AND roll_width_mm >= 0 AND roll_length_mm >= 0',
  },
  names: { dwelling: 'dwellings' },
});

/** What the crew found and did. */
export class SiteRecords1767225900000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.createTable(new Table(SITE_RECORDS));
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.dropTable(SITE_RECORDS.name);
  }
}
