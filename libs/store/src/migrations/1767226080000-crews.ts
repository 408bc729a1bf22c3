import type { MigrationInterface, QueryRunner } from 'typeorm';

const COLUMNS = [
  ['crew', 'varchar'],
  ['contractor_cents_m2', 'double precision'],
  ['contractor_visit_cents', 'bigint'],
] as const;

/** Who puts the film on in a building. Plain statements: both databases know them, and the table of buildings need not be copied. */
export class Crews1767226080000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    for (const [name, type] of COLUMNS) await runner.query(`ALTER TABLE buildings ADD COLUMN ${name} ${type}`);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const [name] of [...COLUMNS].reverse()) await runner.query(`ALTER TABLE buildings DROP COLUMN ${name}`);
  }
}
