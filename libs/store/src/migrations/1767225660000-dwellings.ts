import { Table, type MigrationInterface, type QueryRunner } from 'typeorm';
import { day, flag, json, key, place, real, table, text, whole } from './table-columns.js';

const TABLES = [
  table('plan_types', {
    columns: [
      key('id'),
      text('building', 'blank'),
      text('name'),
      real('floor_area_m2', 'blank'),
      real('ceiling_height_m', 'blank'),
      real('exposed_wall_m2', 'blank'),
      ...place,
    ],
    indexes: { plan_types_by_building: ['building'] },
    names: { building: 'buildings' },
  }),
  table('dwellings', {
    columns: [
      key('id'),
      text('building'),
      text('kind'),
      text('plan_type', 'blank'),
      real('front_azimuth_deg', 'blank'),
      flag('mirrored', 'blank'),
      real('floor_area_m2', 'blank'),
      whole('storey', 'blank'),
      real('ceiling_height_m', 'blank'),
      real('exposed_wall_m2', 'blank'),
      real('exposed_roof_m2', 'blank'),
      text('thermal_class', 'blank'),
      real('cooling_set_point_degc', 'blank'),
      real('heating_set_point_degc', 'blank'),
      json('occupied_months', 'blank'),
      real('occupants', 'blank'),
      json('plant'),
      json('heating'),
      json('cooled_rooms', 'blank'),
      text('payer_rule', 'blank'),
      ...place,
    ],
    indexes: { dwellings_by_building: ['building'], dwellings_by_plan_type: ['plan_type'] },
    checks: { dwellings_kind: "kind IN ('dwelling', 'common area')", dwellings_floor_area: 'floor_area_m2 > 0' },
    names: { building: 'buildings', plan_type: 'plan_types' },
  }),
  table('windows', {
    columns: [
      key('id'),
      text('dwelling', 'blank'),
      text('plan_type', 'blank'),
      text('mark'),
      text('room', 'blank'),
      real('azimuth_deg', 'blank'),
      real('tilt_deg', 'blank'),
      text('width_entered'),
      real('width_mm'),
      text('height_entered'),
      real('height_mm'),
      whole('lite_rows', 'blank'),
      whole('lite_columns', 'blank'),
      real('frame_share', 'blank'),
      text('glazing', 'blank'),
      real('label_solar_heat_gain', 'blank'),
      real('label_ufactor_w_m2k', 'blank'),
      json('shade', 'blank'),
      real('insect_screen_share', 'blank'),
      text('blind', 'blank'),
      real('sill_height_m', 'blank'),
      text('reach', 'blank'),
      json('flags'),
      day('warranty_end', 'blank'),
      whole('replacement_year', 'blank'),
      text('existing_film', 'blank'),
      text('existing_film_condition', 'blank'),
      flag('dropped'),
      ...place,
    ],
    indexes: { windows_by_dwelling: ['dwelling'], windows_by_plan_type: ['plan_type'] },
    checks: {
      windows_of_one_place: 'dwelling IS NOT NULL OR plan_type IS NOT NULL',
      windows_size: 'width_mm >= 0 AND height_mm >= 0',
      windows_frame_share: 'frame_share >= 0 AND frame_share < 1',
    },
    names: { dwelling: 'dwellings', plan_type: 'plan_types' },
  }),
  table('readings', {
    columns: [
      key('id'),
      text('building'),
      real('azimuth_deg'),
      text('glazing'),
      real('bare_w_m2', 'blank'),
      real('filmed_w_m2', 'blank'),
      real('outdoors_w_m2', 'blank'),
      text('film', 'blank'),
      text('taken'),
      ...place,
    ],
    indexes: { readings_by_building: ['building', 'glazing'] },
    checks: { readings_not_negative: 'bare_w_m2 >= 0 AND filmed_w_m2 >= 0 AND outdoors_w_m2 >= 0' },
    names: { building: 'buildings' },
  }),
];

/** What stands in the buildings: plan types, dwellings, windows and what was measured at them. */
export class Dwellings1767225660000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    for (const each of TABLES) await runner.createTable(new Table(each));
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const each of [...TABLES].reverse()) await runner.dropTable(each.name);
  }
}
