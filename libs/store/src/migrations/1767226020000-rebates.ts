import { Table, type MigrationInterface, type QueryRunner } from 'typeorm';
import { day, flag, json, key, place, real, table, text, wholeCents } from './table-columns.js';

const REBATES = table('rebates', {
  columns: [
    key('id'),
    text('building', 'blank'),
    real('rate_cents_m2'),
    wholeCents('cap_cents', 'blank'),
    real('cost_share', 'blank'),
    json('sectors', 'blank'),
    real('solar_heat_gain_before_at_least', 'blank'),
    real('solar_heat_gain_after_at_most', 'blank'),
    real('area_at_least_m2', 'blank'),
    flag('needs_pre_approval'),
    day('pre_approved_on', 'blank'),
    day('deadline', 'blank'),
    ...place,
  ],
  checks: { rebates_shares: 'rate_cents_m2 >= 0 AND cost_share BETWEEN 0 AND 1' },
  names: { building: 'buildings' },
});

/** Money that funds give towards film. */
export class Rebates1767226020000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.createTable(new Table(REBATES));
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.dropTable(REBATES.name);
  }
}
