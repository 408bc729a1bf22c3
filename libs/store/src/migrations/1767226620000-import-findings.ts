import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What was found in each file taken in. */
export class ImportFindings1767226620000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE imports ADD COLUMN findings text');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE imports DROP COLUMN findings');
  }
}
