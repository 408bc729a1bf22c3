import { Table, type MigrationInterface, type QueryRunner } from 'typeorm';
import { day, flag, json, key, place, real, table, text, whole, wholeCents } from './table-columns.js';

const TABLES = [
  table('meters', {
    columns: [key('id'), text('building'), text('tariff', 'blank'), json('payer_rule', 'blank'), text('use'), real('base_load_kwh_yr', 'blank'), ...place],
    indexes: { meters_by_building: ['building'] },
    checks: { meters_use: "use IN ('all', 'cooling', 'heating', 'common')", meters_base_load: 'base_load_kwh_yr >= 0' },
    names: { building: 'buildings' },
  }),
  table('dwelling_meters', {
    columns: [key('dwelling'), key('meter'), ...place],
    indexes: { dwelling_meters_by_meter: ['meter'] },
    names: { dwelling: 'dwellings', meter: 'meters' },
  }),
  table('tariffs', { columns: [key('label'), text('name', 'blank'), json('text')] }),
  table('consents', {
    columns: [
      key('id'),
      text('building'),
      text('kind'),
      text('glazing', 'blank'),
      text('film', 'blank'),
      text('window_id', 'blank'),
      text('state'),
      day('date', 'blank'),
      text('reference', 'blank'),
      ...place,
    ],
    indexes: { consents_by_building: ['building', 'glazing', 'film'] },
    checks: { consents_state: "state IN ('not-needed', 'needed', 'asked', 'given', 'refused')" },
    names: { building: 'buildings' },
  }),
  table('move_outs', {
    columns: [key('dwelling'), key('move_out', 'date'), day('move_in', 'blank'), ...place],
    checks: { move_outs_in_after_out: 'move_in >= move_out' },
    names: { dwelling: 'dwellings' },
  }),
  table('films', {
    columns: [
      key('id'),
      text('name'),
      text('film_class', 'blank'),
      real('solar_transmittance'),
      real('front_reflectance'),
      real('back_reflectance'),
      real('visible_transmittance', 'blank'),
      real('outside_visible_reflectance', 'blank'),
      real('inside_visible_reflectance', 'blank'),
      real('room_emissivity', 'blank'),
      text('side'),
      real('life_yr', 'blank'),
      flag('may_rotate', 'blank'),
      wholeCents('freight_cents', 'blank'),
      wholeCents('minimum_order_cents', 'blank'),
      day('quote_date', 'blank'),
      day('quote_ends', 'blank'),
      text('basis'),
      text('source'),
      ...place,
    ],
    checks: {
      films_side: "side IN ('room', 'outdoor')",
      films_basis: "basis IN ('measured', 'published', 'assumed')",
      films_optics: 'solar_transmittance BETWEEN 0 AND 1 AND front_reflectance BETWEEN 0 AND 1 AND back_reflectance BETWEEN 0 AND 1',
    },
  }),
  table('rolls', {
    columns: [
      key('id'),
      text('film'),
      text('width_entered'),
      real('width_mm'),
      real('length_mm'),
      wholeCents('price_cents', 'blank'),
      whole('in_stock'),
      text('lot', 'blank'),
      ...place,
    ],
    indexes: { rolls_by_film: ['film'] },
    checks: { rolls_size: 'width_mm > 0 AND length_mm >= 0 AND in_stock >= 0' },
  }),
];

/** What energy costs and who pays it, what may be put on the glass and when, and the film to put on it. */
export class MetersAndFilms1767225720000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    for (const each of TABLES) await runner.createTable(new Table(each));
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const each of [...TABLES].reverse()) await runner.dropTable(each.name);
  }
}
