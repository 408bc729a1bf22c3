import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Price of a film by its area, where it is sold by length. */
export class FilmByArea1767226500000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE films ADD COLUMN price_cents_m2 double precision');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE films DROP COLUMN price_cents_m2');
  }
}
