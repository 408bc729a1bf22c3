import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What the supplier calls a meter. */
export class UsagePoints1767226140000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE meters ADD COLUMN usage_point varchar');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE meters DROP COLUMN usage_point');
  }
}
