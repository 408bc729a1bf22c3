import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What taking film off at the end of its life costs by its area. */
export class FilmTakenOff1767226740000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE settings ADD COLUMN end_removal_cents_m2 double precision');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE settings DROP COLUMN end_removal_cents_m2');
  }
}
