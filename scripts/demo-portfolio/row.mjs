// Example Row: 1984, twelve two-storey row houses, single bronze tint, tenants pay a block tariff. 108 openings: 12 × 9.
// Houses 01-06 look south-west, houses 07-12 west with tall trees along that side. Surveyed window by window.
import { mark, PLACE, sizes, turn } from './survey.mjs';

const ER = { building: 'ER' };
const SIDES = { SW: 'NE', W: 'E' };
const STAIR = { reach: 'ladder', sill_height_ft: 11 };

// Room, whether on the front, sight size, and what is special.
const WINDOWS = [
  ['living room', true, 34, 58, {}], ['living room', true, 34, 58, {}], ['stair', true, 34, 58, STAIR], ['main bedroom', true, 34, 58, {}], ['main bedroom', true, 34, 58, {}],
  ['kitchen', false, 34, 58, { reach: 'over furniture' }], ['back bedroom', false, 34, 58, {}], ['back bedroom', false, 34, 58, { flags: 'escape' }], ['bathroom', false, 34, 58, { flags: 'patterned' }],
];

const houses = Array.from({ length: 12 }, (_, i) => ({ dwelling: String(i + 1).padStart(2, '0'), front: i < 6 ? 'SW' : 'W', n: i }));

export const row = {
  building: [{ ...ER, building_name: 'Example Row', owner_entity: 'OWNER1', ...PLACE, built_year: 1984, storeys: 2, one_film: 'no', whole_elevations: 'no', notice_h: 24, visit_cost: 60, visit_minutes: 60, widest_roll_in: 72, turnover_1_yr: 0.2 }],
  dwellings: houses.map(({ dwelling, n }) => ({
    ...ER, dwelling, kind: 'dwelling', floor_area_ft2: 1180 + 20 * (n % 3), storey: 1, ceiling_height_ft: 8,
    exposed_wall_ft2: [0, 5, 6, 11].includes(n) ? 1050 : 620, exposed_roof_ft2: 600, thermal_class: 'medium',
    cooling_set_point_degF: turn([76, 77, 75, 76], n), heating_set_point_degF: 68, occupants: turn([3, 2, 4], n),
    cooling_kind: 'split', cooling_capacity_tons: 2.5, cooling_efficiency: turn(['SEER 10', 'SEER 12', 'SEER 13', 'SEER 14'], n), cooling_age_yr: turn([21, 14, 11, 8], n),
    cooling_replacement_year: turn([2029, 2031, 2033, 2035], n), efficiency_after: 'SEER2 14.3', heating_kind: 'electric resistance', heating_efficiency: 1,
  })),
  windows: houses.flatMap(({ dwelling, front, n }) =>
    WINDOWS.map(([room, onFront, width, height, more], i) => ({
      ...ER, dwelling, mark: mark(i + 1), room, facade: onFront ? front : SIDES[front], ...sizes(width, height, n * 9 + i), glazing: 'single bronze 3/16 in', frame_share: 0.18,
      insect_screen_share: 0.5, blind: turn(['light', 'medium'], n), reveal_in: 3, sill_height_ft: 2.5, reach: 'floor', existing_film: 'none', ...more,
    })),
  ),
  // Trees west of houses 07-12: the crowns let a quarter of the beam through.
  horizons: [[215, 8], [235, 20], [255, 26], [270, 28], [290, 26], [310, 18], [325, 8]].map(([azimuth_deg, altitude_deg]) => ({ ...ER, facade: 'W', azimuth_deg, altitude_deg, passes: 0.25 })),
  meters: houses.map(({ dwelling, n }) => ({ ...ER, meter: `ER-${dwelling}`, tariff: 'BLOCK', use: 'all', payer_rule: 'tenant', owner_share: 0, tenant_share: 1, vacancy_share: 0.04, base_load_kwh_yr: 4000 + 150 * (n % 4) })),
  dwellingMeters: houses.map(({ dwelling }) => ({ ...ER, dwelling, meter: `ER-${dwelling}` })),
};
