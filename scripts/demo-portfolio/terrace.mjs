// Example Terrace: 2019, four storeys, 20 dwellings, double low-e known by its label, variable-speed machines. It should rank last.
// 120 openings: 20 × 6, less 2 behind a plant screen, plus 2 in the lobby.
import { mark, PLACE, sizes, turn } from './survey.mjs';

const EX = { building: 'EX' };
const label = { glazing: 'double low-e', shgc: 0.25, u_factor: 0.3, frame_share: 0.2, blind: 'light', reveal_in: 4, sill_height_ft: 2, reach: 'floor', warranty_end: '2029-06-30', existing_film: 'none' };
const PLANS = {
  'EX-A': { name: 'through apartment', rooms: [['living room', 'front'], ['living room', 'front'], ['study', 'front'], ['bedroom', 'back'], ['bedroom', 'back'], ['kitchen', 'back']] },
  'EX-B': { name: 'corner apartment', rooms: [['living room', 'front'], ['living room', 'front'], ['living room', 'right'], ['bedroom', 'right'], ['bedroom', 'back'], ['kitchen', 'back']] },
};
const homes = [1, 2, 3, 4].flatMap((storey) =>
  Array.from({ length: 5 }, (_, i) => ({ storey, place: i, dwelling: `${storey}${String(i + 1).padStart(2, '0')}`, plan_type: i === 0 || i === 4 ? 'EX-B' : 'EX-A' })),
);
const plant = { cooling_kind: 'variable speed', cooling_efficiency: 'SEER2 16', cooling_age_yr: 7, cooling_replacement_year: 2037, efficiency_after: 'SEER2 17', heating_kind: 'heat pump', heating_efficiency: 3.1 };

export const terrace = {
  building: [{ ...EX, building_name: 'Example Terrace', owner_entity: 'OWNER2', ...PLACE, built_year: 2019, storeys: 4, one_film: 'no', whole_elevations: 'no', notice_h: 24, visit_cost: 80, visit_minutes: 60, widest_roll_in: 60, turnover_1_yr: 0.25 }],
  planTypes: Object.entries(PLANS).map(([plan_type, { name }]) => ({ ...EX, plan_type, plan_name: name, floor_area_ft2: 940, ceiling_height_ft: 9, exposed_wall_ft2: plan_type === 'EX-B' ? 520 : 330 })),
  planWindows: Object.entries(PLANS).flatMap(([plan_type, { rooms }], p) =>
    rooms.map(([room, facade], i) => ({ ...EX, plan_type, mark: mark(i + 1), room, facade, ...sizes(38, 66, p * 6 + i), ...label, ...(facade === 'front' && { overhang_depth_ft: 4, overhang_gap_ft: 1 }) })),
  ),
  dwellings: [
    ...homes.map(({ dwelling, storey, place, plan_type }, n) => ({
      ...EX, dwelling, kind: 'dwelling', plan_type, front: 'SSW', mirrored: place === 0 ? 'yes' : 'no', floor_area_ft2: 940, storey, ceiling_height_ft: 9, exposed_wall_ft2: plan_type === 'EX-B' ? 520 : 330,
      exposed_roof_ft2: storey === 4 ? 940 : 0, thermal_class: 'medium', cooling_set_point_degF: turn([75, 76], n), heating_set_point_degF: 69, occupants: turn([2, 3, 1], n), cooling_capacity_tons: 2, ...plant,
    })),
    { ...EX, dwelling: 'LOBBY', kind: 'common area', floor_area_ft2: 600, storey: 1, ceiling_height_ft: 10, exposed_wall_ft2: 200, exposed_roof_ft2: 0, thermal_class: 'medium', cooling_set_point_degF: 75, heating_set_point_degF: 68, occupants: 0, cooling_capacity_tons: 1.5, ...plant },
  ],
  windows: [
    ...['101', '105'].map((dwelling) => ({ ...EX, dwelling, mark: 'W06', room: 'kitchen', facade: 'NNE', width_in: '38', height_in: '66', glazing: label.glazing, dropped: 'yes' })),
    ...['SSW', 'SSW'].map((facade, i) => ({ ...EX, dwelling: 'LOBBY', mark: mark(i + 1), room: 'lobby', facade, ...sizes(38, 66, i + 50), ...label, overhang_depth_ft: 6, overhang_gap_ft: 1 })),
  ],
  meters: [
    ...homes.map(({ dwelling, place }) => ({ ...EX, meter: `EX-${dwelling}`, tariff: 'TOU', use: 'all', payer_rule: 'tenant', owner_share: 0, tenant_share: 1, vacancy_share: 0.05, base_load_kwh_yr: 3200 + 120 * (place % 3) })),
    { ...EX, meter: 'EX-COMMON', tariff: 'TOU', use: 'common', payer_rule: 'common', owner_share: 1, tenant_share: 0, base_load_kwh_yr: 7000 },
  ],
  dwellingMeters: [...homes.map(({ dwelling }) => ({ ...EX, dwelling, meter: `EX-${dwelling}` })), { ...EX, dwelling: 'LOBBY', meter: 'EX-COMMON' }],
};
