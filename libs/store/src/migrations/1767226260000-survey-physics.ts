import type { MigrationInterface, QueryRunner } from 'typeorm';

const COLUMNS = [
  ['buildings', 'declination_deg', 'double precision'],
  ['buildings', 'airtightness', 'varchar'],
  ['buildings', 'pane_replacement_cents', 'bigint'],
  ['dwellings', 'setbacks', 'text'],
  ['windows', 'screen_kind', 'varchar'],
  ['readings', 'repeat', 'integer'],
  ['settings', 'plant_ageing', 'varchar'],
] as const;

/** What a survey can say of compass, air, panes, set points and screens; readings that were repeated; machines that age. */
export class SurveyPhysics1767226260000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    for (const [table, name, type] of COLUMNS) await runner.query(`ALTER TABLE ${table} ADD COLUMN ${name} ${type}`);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const [table, name] of [...COLUMNS].reverse()) await runner.query(`ALTER TABLE ${table} DROP COLUMN ${name}`);
  }
}
