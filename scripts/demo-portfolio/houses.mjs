// Example Houses: 2006, ten detached one-storey houses, double clear, heat pumps, time-of-use tariff. 140 openings: 10 × 14.
// Nine sealed units are fogged; two were renewed and are still in warranty; one house has solar panels and net billing.
import { mark, PLACE, sizes, turn } from './survey.mjs';

const EH = { building: 'EH' };
const ROUND = ['N', 'E', 'S', 'W'];
// Room and side counted clockwise from the front.
const WINDOWS = [
  ['living room', 0], ['living room', 0], ['living room', 0], ['dining room', 0], ['main bedroom', 2], ['main bedroom', 2], ['family room', 2],
  ['family room', 2], ['kitchen', 1], ['kitchen', 1], ['bedroom 2', 3], ['bedroom 2', 3], ['bedroom 3', 3], ['bathroom', 1],
];
const FOGGED = new Set(['01 W02', '01 W09', '03 W05', '04 W11', '05 W01', '06 W12', '08 W03', '08 W13', '10 W06']);
const RENEWED = new Map([['02 W04', '2028-03-31'], ['09 W07', '2029-09-30']]);

const houseNumbers = Array.from({ length: 10 }, (_, i) => ({ dwelling: String(i + 1).padStart(2, '0'), front: i % 4, n: i }));

export const houses = {
  building: [{ ...EH, building_name: 'Example Houses', owner_entity: 'OWNER2', ...PLACE, built_year: 2006, storeys: 1, one_film: 'no', whole_elevations: 'no', notice_h: 24, visit_cost: 80, visit_minutes: 60, widest_roll_in: 72, turnover_1_yr: 0.15 }],
  dwellings: houseNumbers.map(({ dwelling, n }) => ({
    ...EH, dwelling, kind: 'dwelling', floor_area_ft2: 1650 + 50 * (n % 4), storey: 1, ceiling_height_ft: 9, exposed_wall_ft2: 1400, exposed_roof_ft2: 1650 + 50 * (n % 4), thermal_class: 'light',
    cooling_set_point_degF: turn([76, 75, 77], n), heating_set_point_degF: 68, occupants: turn([4, 3, 2, 5], n),
    cooling_kind: 'heat pump', cooling_capacity_tons: 4, cooling_efficiency: 'SEER 13', cooling_age_yr: 10 + (n % 3), cooling_replacement_year: turn([2030, 2032, 2034], n), efficiency_after: 'SEER2 15.2',
    heating_kind: 'heat pump', heating_efficiency: 2.6,
  })),
  windows: houseNumbers.flatMap(({ dwelling, front, n }) =>
    WINDOWS.map(([room, side], i) => {
      const at = `${dwelling} ${mark(i + 1)}`;
      return {
        ...EH, dwelling, mark: mark(i + 1), room, facade: ROUND[(front + side) % 4], ...sizes(30, 62, n * 14 + i), glazing: 'double clear', frame_share: 0.2, insect_screen_share: 0.5,
        overhang_depth_ft: 2, overhang_gap_ft: 1.5, reveal_in: 3, sill_height_ft: 2, reach: i % 7 === 5 ? 'over furniture' : 'floor', blind: turn(['light', 'medium', 'none'], n),
        flags: FOGGED.has(at) ? 'fogged;old-seal' : RENEWED.has(at) ? '' : 'old-seal', warranty_end: RENEWED.get(at) ?? '', existing_film: 'none',
      };
    }),
  ),
  meters: houseNumbers.map(({ dwelling, n }) => ({ ...EH, meter: `EH-${dwelling}`, tariff: dwelling === '07' ? 'TOU-NET' : 'TOU', use: 'all', payer_rule: 'tenant', owner_share: 0, tenant_share: 1, vacancy_share: 0.03, base_load_kwh_yr: 6200 + 250 * (n % 4) })),
  dwellingMeters: houseNumbers.map(({ dwelling }) => ({ ...EH, dwelling, meter: `EH-${dwelling}` })),
};
