import { Table, type MigrationInterface, type QueryRunner } from 'typeorm';
import { key, longText, table } from './table-columns.js';

const IMPORT_MARKS = table('import_marks', {
  columns: [key('import_id'), key('record_id'), longText('before', 'blank'), longText('after')],
  indexes: { import_marks_by_record: ['record_id'] },
});

/** What an import did to each site record. */
export class ImportMarks1767226320000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.createTable(new Table(IMPORT_MARKS));
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.dropTable(IMPORT_MARKS.name);
  }
}
