import { Table, type MigrationInterface, type QueryRunner } from 'typeorm';
import { day, key, longText, place, table, text, wholeCents } from './table-columns.js';

const LEDGER = table('ledger', {
  columns: [
    key('id'),
    text('owner_entity'),
    text('phase'),
    text('kind'),
    day('day'),
    day('expires', 'blank'),
    wholeCents('amount_cents'),
    wholeCents('freight_cents', 'blank'),
    wholeCents('minimum_order_cents', 'blank'),
    text('film', 'blank'),
    text('settles', 'blank'),
    longText('note', 'blank'),
    ...place,
  ],
  indexes: { ledger_by_phase: ['owner_entity', 'phase'] },
  checks: { ledger_kind: "kind IN ('quote', 'committed', 'invoiced', 'paid', 'stock')" },
});

/** Money already spoken for. */
export class Ledger1767225960000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.createTable(new Table(LEDGER));
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.dropTable(LEDGER.name);
  }
}
