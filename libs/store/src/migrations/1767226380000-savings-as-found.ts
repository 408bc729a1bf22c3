import type { MigrationInterface, QueryRunner } from 'typeorm';

const COLUMNS = [
  ['realisation', 'varchar'],
  ['draw_seed', 'integer'],
] as const;

/** Whether savings count as found, and the seed that draws who goes first. */
export class SavingsAsFound1767226380000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    for (const [name, type] of COLUMNS) await runner.query(`ALTER TABLE settings ADD COLUMN ${name} ${type}`);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const [name] of [...COLUMNS].reverse()) await runner.query(`ALTER TABLE settings DROP COLUMN ${name}`);
  }
}
