// Example Tower: 1974, nine storeys, 36 dwellings, sliding doors of two panes, central chilled water, demand tariff.
// 180 openings: 36 × 5, less 4 ground-floor doors lost to the entrance canopy, plus 4 in the lobby. Balconies from storey 5 up.
import { mark, PLACE, sizes, turn } from './survey.mjs';

const ET = { building: 'ET' };
const door = { glazing: 'single clear 3/16 in', frame_share: 0.12, lite_rows: 1, lite_columns: 2, blind: 'medium', sill_height_ft: 0, reach: 'floor', existing_film: 'none' };
const DOORS = [['living room', 'front'], ['living room', 'front'], ['bedroom', 'front'], ['dining room', 'right'], ['main bedroom', 'right']];
const balcony = { overhang_depth_ft: 5, overhang_gap_ft: 1.5, fin_depth_ft: 4, fin_gap_ft: 1 };

// The doors to the front carry the tempered mark; of those to the side nobody found one.
const planWindows = ['ET-L', 'ET-U'].flatMap((plan_type, p) =>
  DOORS.map(([room, facade], i) => ({
    ...ET, plan_type, mark: mark(i + 1), room, facade, ...sizes(34, 76, p * 5 + i), ...door,
    flags: facade === 'front' ? 'tempered-mark-seen' : '', ...(plan_type === 'ET-U' && balcony),
  })),
);

const homes = Array.from({ length: 9 }, (_, s) => s + 1).flatMap((storey) =>
  [1, 2, 3, 4].map((corner) => ({ storey, corner, dwelling: `${storey}${String(corner).padStart(2, '0')}`, plan_type: storey >= 5 ? 'ET-U' : 'ET-L' })),
);
// Corners: 1 east/south, 2 east/north (mirrored), 3 west/north, 4 west/south (mirrored).
const FRONT = { 1: 'E', 2: 'E', 3: 'W', 4: 'W' };

export const tower = {
  building: [{ ...ET, building_name: 'Example Tower', owner_entity: 'OWNER1', ...PLACE, built_year: 1974, storeys: 9, one_film: 'yes', whole_elevations: 'no', notice_h: 48, visit_cost: 60, visit_minutes: 90, widest_roll_in: 60, turnover_1_yr: 0.25 }],
  planTypes: [
    { ...ET, plan_type: 'ET-L', plan_name: 'corner, no balcony', floor_area_ft2: 880, ceiling_height_ft: 8, exposed_wall_ft2: 290 },
    { ...ET, plan_type: 'ET-U', plan_name: 'corner with balcony', floor_area_ft2: 880, ceiling_height_ft: 8, exposed_wall_ft2: 290 },
  ],
  planWindows,
  dwellings: [
    ...homes.map(({ dwelling, storey, corner, plan_type }, n) => ({
      ...ET, dwelling, kind: 'dwelling', plan_type, front: FRONT[corner], mirrored: corner === 2 || corner === 4 ? 'yes' : 'no', floor_area_ft2: 880, storey, ceiling_height_ft: 8,
      exposed_wall_ft2: 290, exposed_roof_ft2: storey === 9 ? 880 : 0, thermal_class: 'heavy', cooling_set_point_degF: turn([75, 76, 74, 76], n), heating_set_point_degF: 69, occupants: turn([2, 1, 2, 3], n),
      cooling_kind: 'chilled water', cooling_capacity_tons: 2.5, cooling_efficiency: 'kW/ton 1.05', cooling_age_yr: 17, cooling_replacement_year: 2036, efficiency_after: 'kW/ton 0.75',
      heating_kind: 'electric resistance', heating_efficiency: 1,
    })),
    {
      ...ET, dwelling: 'LOBBY', kind: 'common area', floor_area_ft2: 1400, storey: 1, ceiling_height_ft: 10, exposed_wall_ft2: 420, exposed_roof_ft2: 0, thermal_class: 'heavy', cooling_set_point_degF: 75, heating_set_point_degF: 68, occupants: 0,
      cooling_kind: 'chilled water', cooling_capacity_tons: 4, cooling_efficiency: 'kW/ton 1.05', cooling_age_yr: 17, cooling_replacement_year: 2036, efficiency_after: 'kW/ton 0.75', heating_kind: 'electric resistance', heating_efficiency: 1,
    },
  ],
  windows: [
    ...['101', '102', '103', '104'].map((dwelling) => ({ ...ET, dwelling, mark: 'W03', room: 'bedroom', facade: Number(dwelling) <= 102 ? 'E' : 'W', width_in: '34', height_in: '76', glazing: door.glazing, dropped: 'yes' })),
    ...['W', 'W', 'E', 'E'].map((facade, i) => ({ ...ET, dwelling: 'LOBBY', mark: mark(i + 1), room: 'lobby', facade, ...sizes(34, 76, i + 30), ...door, flags: 'tempered-mark-seen', overhang_depth_ft: 6, overhang_gap_ft: 2 })),
  ],
  // One house meter on the demand tariff; 60 % of it is billed back by ratio and follows lower use after a year.
  meters: [
    { ...ET, meter: 'ET-M1', tariff: 'DEMAND', use: 'all', payer_rule: 'ratio', owner_share: 0.4, tenant_share: 0.6, reset_lag_yr: 1, vacancy_share: 0.05, base_load_kwh_yr: 2700 },
  ],
  dwellingMeters: [...homes.map(({ dwelling }) => ({ ...ET, dwelling, meter: 'ET-M1' })), { ...ET, dwelling: 'LOBBY', meter: 'ET-M1' }],
};
