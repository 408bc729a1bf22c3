// Example Lofts: 1931, made into 16 lofts in 2012, steel windows of twelve divided lites, historic listing, mini-splits.
// 112 openings: 16 × 7, less 4 where a stair passes, plus 4 in the lobby. One opening of 4 rows × 3 columns is 12 panes to cut.
import { mark, PLACE, sizes, turn } from './survey.mjs';

const EL = { building: 'EL' };
const steel = { glazing: 'single clear 1/8 in', frame_share: 0.25, lite_rows: 4, lite_columns: 3, blind: 'none', reveal_in: 6, sill_height_ft: 3, reach: 'ladder', existing_film: 'none' };
const PLANS = {
  'EL-A': { name: 'end loft', sides: ['front', 'front', 'front', 'front', 'right', 'right', 'right'] },
  'EL-B': { name: 'middle loft', sides: ['front', 'front', 'front', 'front', 'back', 'back', 'back'] },
  'EL-C': { name: 'top loft', sides: ['front', 'front', 'front', 'back', 'back', 'right', 'right'] },
};
// The lites over the old loading bay are wired; some were renewed in laminated glass.
const flagsOf = (plan_type, i) => (plan_type === 'EL-B' && i >= 5 ? 'wired' : plan_type === 'EL-A' && i === 6 ? 'laminated' : '');

const planWindows = Object.entries(PLANS).flatMap(([plan_type, { sides }], p) =>
  sides.map((facade, i) => ({ ...EL, plan_type, mark: mark(i + 1), room: facade === 'front' ? 'studio' : 'sleeping alcove', facade, ...sizes(13.5, 17, p * 7 + i), ...steel, flags: flagsOf(plan_type, i) })),
);

// Even places look south-south-east, odd ones north-north-west; end lofts have the gable on their right, two top lofts lie mirrored.
const homes = [1, 2, 3].flatMap((storey) =>
  Array.from({ length: storey === 3 ? 4 : 6 }, (_, i) => ({
    storey, place: i, dwelling: `${storey}${String(i + 1).padStart(2, '0')}`, plan_type: storey === 3 ? 'EL-C' : i === 0 || i === 5 ? 'EL-A' : 'EL-B',
  })),
);

export const lofts = {
  building: [{ ...EL, building_name: 'Example Lofts', owner_entity: 'OWNER2', ...PLACE, built_year: 1931, storeys: 3, max_outside_visible_reflectance: 0.15, one_film: 'yes', whole_elevations: 'yes', notice_h: 24, visit_cost: 80, visit_minutes: 60, widest_roll_in: 48, turnover_1_yr: 0.3 }],
  planTypes: Object.entries(PLANS).map(([plan_type, { name }]) => ({ ...EL, plan_type, plan_name: name, floor_area_ft2: 820, ceiling_height_ft: 11, exposed_wall_ft2: plan_type === 'EL-B' ? 380 : 560 })),
  planWindows,
  dwellings: [
    ...homes.map(({ dwelling, storey, place, plan_type }, n) => ({
      ...EL, dwelling, kind: 'dwelling', plan_type, front: place % 2 === 0 ? 165 : 345, mirrored: plan_type === 'EL-C' && place >= 2 ? 'yes' : 'no', floor_area_ft2: 780 + 40 * (n % 3), storey, ceiling_height_ft: 11,
      exposed_wall_ft2: plan_type === 'EL-B' ? 380 : 560, exposed_roof_ft2: storey === 3 ? 820 : 0, thermal_class: 'heavy', cooling_set_point_degF: turn([74, 75, 76], n), heating_set_point_degF: 68, occupants: turn([1, 2], n),
      cooling_kind: 'mini-split', cooling_capacity_tons: 2, cooling_efficiency: 'SEER2 18', cooling_age_yr: 7, cooling_replacement_year: 2034, efficiency_after: 'SEER2 20', heating_kind: 'heat pump', heating_efficiency: 3,
    })),
    {
      ...EL, dwelling: 'LOBBY', kind: 'common area', floor_area_ft2: 700, storey: 1, ceiling_height_ft: 12, exposed_wall_ft2: 300, exposed_roof_ft2: 0, thermal_class: 'heavy', cooling_set_point_degF: 75, heating_set_point_degF: 66, occupants: 0,
      cooling_kind: 'mini-split', cooling_capacity_tons: 2, cooling_efficiency: 'SEER2 18', cooling_age_yr: 7, cooling_replacement_year: 2034, efficiency_after: 'SEER2 20', heating_kind: 'heat pump', heating_efficiency: 3,
    },
  ],
  windows: [
    ...['102', '103', '202', '203'].map((dwelling) => ({ ...EL, dwelling, mark: 'W07', room: 'sleeping alcove', facade: Number(dwelling) % 2 === 0 ? 165 : 345, width_in: '13 1/2', height_in: '17', glazing: steel.glazing, dropped: 'yes' })),
    ...[165, 165, 345, 345].map((facade, i) => ({ ...EL, dwelling: 'LOBBY', mark: mark(i + 1), room: 'lobby', facade, ...sizes(13.5, 17, i + 40), ...steel })),
  ],
  meters: [
    ...homes.map(({ dwelling, place }) => ({ ...EL, meter: `EL-${dwelling}`, tariff: 'FLAT', use: 'all', payer_rule: 'tenant', owner_share: 0, tenant_share: 1, vacancy_share: 0.06, base_load_kwh_yr: 2900 + 100 * (place % 3) })),
    { ...EL, meter: 'EL-COMMON', tariff: 'FLAT', use: 'common', payer_rule: 'common', owner_share: 1, tenant_share: 0, base_load_kwh_yr: 8000 },
  ],
  dwellingMeters: [...homes.map(({ dwelling }) => ({ ...EL, dwelling, meter: `EL-${dwelling}` })), { ...EL, dwelling: 'LOBBY', meter: 'EL-COMMON' }],
};
