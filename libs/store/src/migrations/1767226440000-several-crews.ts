import type { MigrationInterface, QueryRunner } from 'typeorm';

const COLUMNS = [
  ['crews', 'integer'],
  ['crew_is_new', 'boolean'],
] as const;

/** How many crews work side by side, and whether they have their first day still before them. */
export class SeveralCrews1767226440000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    for (const [name, type] of COLUMNS) await runner.query(`ALTER TABLE settings ADD COLUMN ${name} ${type}`);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const [name] of [...COLUMNS].reverse()) await runner.query(`ALTER TABLE settings DROP COLUMN ${name}`);
  }
}
