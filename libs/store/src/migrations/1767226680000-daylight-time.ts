import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Whether clocks go on daylight time where a building stands. */
export class DaylightTime1767226680000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE buildings ADD COLUMN daylight_time boolean');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE buildings DROP COLUMN daylight_time');
  }
}
