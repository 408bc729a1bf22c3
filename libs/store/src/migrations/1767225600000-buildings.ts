import { Table, type MigrationInterface, type QueryRunner } from 'typeorm';
import { day, flag, json, key, place, real, table, text, whole, wholeCents } from './table-columns.js';

const TABLES = [
  table('store_count', {
    columns: [key('line', 'integer'), whole('writes'), whole('portfolio_revision')],
    checks: { store_count_one_line: 'line = 1' },
  }),
  table('settings', {
    columns: [
      key('line', 'integer'),
      text('name'),
      text('currency'),
      day('study_start'),
      text('view'),
      real('real_discount_rate', 'blank'),
      real('real_escalation', 'blank'),
      real('labour_cents_h', 'blank'),
      flag('labour_is_cash', 'blank'),
      real('contingency_share', 'blank'),
      real('material_tax_share', 'blank'),
      real('labour_tax_share', 'blank'),
      real('consumables_cents_m2', 'blank'),
      real('trim_per_edge_mm', 'blank'),
      whole('crew_size', 'blank'),
      real('crew_days_wk', 'blank'),
      real('crew_hours_day', 'blank'),
      flag('mixed_film'),
      json('no_work'),
    ],
    checks: { settings_one_line: 'line = 1', settings_view: "view IN ('whole', 'owner')" },
  }),
  table('owner_entities', { columns: [key('id'), text('name'), ...place] }),
  table('phases', {
    columns: [key('id'), text('owner_entity'), text('name'), day('first_day'), day('last_day'), wholeCents('cap_cents'), whole('crew_minutes', 'blank')],
    indexes: { phases_by_owner: ['owner_entity', 'first_day'] },
    checks: { phases_cap: 'cap_cents >= 0', phases_days: 'last_day >= first_day' },
  }),
  table('buildings', {
    columns: [
      key('id'),
      text('name'),
      text('owner_entity'),
      real('latitude_deg', 'blank'),
      real('longitude_deg', 'blank'),
      real('time_zone_h', 'blank'),
      text('climate', 'blank'),
      text('weather_file', 'blank'),
      whole('built_year', 'blank'),
      whole('storeys', 'blank'),
      real('min_visible_transmittance', 'blank'),
      real('max_outside_visible_reflectance', 'blank'),
      json('allowed_films', 'blank'),
      flag('one_film', 'blank'),
      flag('whole_elevations', 'blank'),
      real('notice_h', 'blank'),
      wholeCents('visit_cents', 'blank'),
      real('visit_minutes', 'blank'),
      real('widest_roll_mm', 'blank'),
      real('turnover_1_yr', 'blank'),
      whole('end_year', 'blank'),
      json('horizons'),
      ...place,
    ],
    indexes: { buildings_by_owner: ['owner_entity'] },
    checks: {
      buildings_place: 'latitude_deg BETWEEN -90 AND 90 AND longitude_deg BETWEEN -180 AND 180',
      buildings_turnover: 'turnover_1_yr BETWEEN 0 AND 1',
    },
  }),
];

/** The portfolio itself: settings, owner entities with their yearly caps, buildings. */
export class Buildings1767225600000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    for (const each of TABLES) await runner.createTable(new Table(each));
    await runner.query('INSERT INTO store_count (line, writes, portfolio_revision) VALUES (1, 0, 0)');
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const each of [...TABLES].reverse()) await runner.dropTable(each.name);
  }
}
