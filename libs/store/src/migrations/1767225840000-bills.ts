import { Table, type MigrationInterface, type QueryRunner } from 'typeorm';
import { flag, key, place, real, table, wholeCents } from './table-columns.js';

const BILLS = table('bills', {
  columns: [key('meter'), key('first_day', 'date'), key('last_day', 'date'), real('use_kwh'), real('peak_kw', 'blank'), wholeCents('amount_cents', 'blank'), flag('estimated'), ...place],
  checks: { bills_days: 'last_day >= first_day' },
  names: { meter: 'meters' },
});

/** What meters really used. */
export class Bills1767225840000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.createTable(new Table(BILLS));
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.dropTable(BILLS.name);
  }
}
