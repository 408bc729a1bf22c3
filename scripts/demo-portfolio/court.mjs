// Example Court: 1968, two storeys, 24 dwellings in two slabs back to back, single clear aluminium sliders, master meter.
// 144 openings: 24 × 6, less 4 bathroom windows that were walled up, plus 2 in the laundry and 2 in the office.
import { mark, PLACE, sizes, turn } from './survey.mjs';

const EC = { building: 'EC' };
const glass = { glazing: 'single clear 1/8 in', frame_share: 0.15, insect_screen_share: 0.5, blind: 'light' };
const old = { existing_film: 'present', existing_film_condition: 'peeling' };
const bare = { existing_film: 'none' };

// Living rooms look to the front; bedrooms have the old peeling film, living rooms and kitchens have none.
const ROOMS = {
  'EC-A': [['living room', 'front'], ['living room', 'front'], ['kitchen', 'front'], ['bedroom', 'back'], ['bedroom', 'back'], ['bathroom', 'back']],
  'EC-B': [['living room', 'front'], ['living room', 'front'], ['kitchen', 'front'], ['bedroom', 'back'], ['bedroom', 'right'], ['bathroom', 'back']],
  'EC-C': [['living room', 'front'], ['living room', 'front'], ['living room', 'front'], ['bedroom', 'back'], ['bedroom', 'back'], ['bathroom', 'back']],
};

const planWindows = Object.entries(ROOMS).flatMap(([plan_type, rooms], p) =>
  rooms.map(([room, facade], i) => ({
    ...EC, plan_type, mark: mark(i + 1), room, facade, ...sizes(46, 46, p * 6 + i), ...glass, ...(room === 'bedroom' || room === 'bathroom' ? old : bare),
    // The roof edge and the gallery slab stand out a little over the front; the back has a shallow eave.
    overhang_depth_ft: facade === 'front' ? 2 : 1, overhang_gap_ft: 1, reveal_in: 2, sill_height_ft: room === 'bathroom' ? 4 : 3, reach: 'floor',
  })),
);

const numbers = [1, 2].flatMap((storey) => Array.from({ length: 12 }, (_, i) => ({ storey, number: String(storey * 100 + i + 1), place: i })));
const planOf = (place) => ([0, 5, 6, 11].includes(place) ? 'EC-B' : [2, 3, 8, 9].includes(place) ? 'EC-C' : 'EC-A');

// Half have window units in the living room, half old splits; of some nobody knows the rating, and half are due in year 2.
function cooling(n) {
  const windowUnit = n % 2 === 0;
  const unknown = n % 7 === 3;
  return {
    cooling_kind: windowUnit ? 'window unit' : 'split',
    cooling_capacity_tons: windowUnit ? 1 : 1.5,
    cooling_efficiency: unknown ? '' : windowUnit ? turn(['EER 8.5', 'EER 9'], n / 2) : turn(['SEER 9', 'SEER 10'], (n - 1) / 2),
    cooling_age_yr: unknown ? '' : 12 + (n % 9),
    cooling_replacement_year: n % 4 < 2 ? 2027 : 2033,
    efficiency_after: windowUnit ? 'EER 11' : 'SEER2 14.3',
    // A bedroom with no unit of its own is not cooled; splits reach all rooms.
    cooled_rooms: windowUnit ? (n % 4 === 0 ? 'living room;bedroom' : 'living room') : '',
  };
}

const homes = numbers.map(({ storey, number, place }, n) => {
  const plan_type = planOf(place);
  return {
    ...EC, dwelling: number, kind: 'dwelling', plan_type, front: place < 6 ? 'W' : 'E', mirrored: place === 0 || place === 6 ? 'yes' : 'no',
    floor_area_ft2: { 'EC-A': 610, 'EC-B': 680, 'EC-C': 650 }[plan_type], storey, ceiling_height_ft: 8,
    exposed_wall_ft2: plan_type === 'EC-B' ? 470 : 300, exposed_roof_ft2: storey === 2 ? { 'EC-A': 610, 'EC-B': 680, 'EC-C': 650 }[plan_type] : 0,
    thermal_class: 'medium', cooling_set_point_degF: turn([76, 75, 77], n), heating_set_point_degF: 68, occupants: turn([1, 2, 2, 3], n),
    ...cooling(n), heating_kind: 'electric resistance', heating_efficiency: 1,
  };
});

const shared = (dwelling, area) => ({
  ...EC, dwelling, kind: 'common area', floor_area_ft2: area, storey: 1, ceiling_height_ft: 8, exposed_wall_ft2: 260, exposed_roof_ft2: 0, thermal_class: 'medium',
  cooling_set_point_degF: 76, heating_set_point_degF: 66, occupants: 0, cooling_kind: 'split', cooling_capacity_tons: 1.5, cooling_efficiency: 'SEER 10', cooling_age_yr: 15,
  cooling_replacement_year: 2027, efficiency_after: 'SEER2 14.3', heating_kind: 'electric resistance', heating_efficiency: 1,
});
const sharedWindow = (dwelling, n, facade) => ({ ...EC, dwelling, mark: mark(n), room: dwelling.toLowerCase(), facade, ...sizes(46, 46, n + 20), ...glass, ...bare, reveal_in: 2, sill_height_ft: 3, reach: 'floor' });
const walledUp = (dwelling) => ({ ...EC, dwelling, mark: 'W06', room: 'bathroom', facade: Number(dwelling) % 100 <= 6 ? 'E' : 'W', width_in: '46', height_in: '46', glazing: glass.glazing, dropped: 'yes' });

export const court = {
  building: [{ ...EC, building_name: 'Example Court', owner_entity: 'OWNER1', ...PLACE, built_year: 1968, storeys: 2, one_film: 'no', whole_elevations: 'no', notice_h: 24, visit_cost: 60, visit_minutes: 60, widest_roll_in: 72, turnover_1_yr: 0.35 }],
  planTypes: [
    { ...EC, plan_type: 'EC-A', plan_name: 'one bedroom, middle', floor_area_ft2: 610, ceiling_height_ft: 8, exposed_wall_ft2: 300 },
    { ...EC, plan_type: 'EC-B', plan_name: 'one bedroom, end', floor_area_ft2: 680, ceiling_height_ft: 8, exposed_wall_ft2: 470 },
    { ...EC, plan_type: 'EC-C', plan_name: 'one bedroom, large living room', floor_area_ft2: 650, ceiling_height_ft: 8, exposed_wall_ft2: 300 },
  ],
  planWindows,
  dwellings: [...homes, shared('LAUNDRY', 320), shared('OFFICE', 280)],
  windows: [
    ...['102', '105', '108', '111'].map(walledUp),
    // One living-room slider of 204 was replaced by thicker glass of another size.
    { ...EC, dwelling: '204', mark: 'W01', room: 'living room', facade: 'W', width_in: '45 1/2', height_in: '46 3/8', ...glass, glazing: 'single clear 1/4 in', ...bare, overhang_depth_ft: 2, overhang_gap_ft: 1, reveal_in: 2, sill_height_ft: 3, reach: 'floor' },
    sharedWindow('LAUNDRY', 1, 'W'), sharedWindow('LAUNDRY', 2, 'N'), sharedWindow('OFFICE', 1, 'S'), sharedWindow('OFFICE', 2, 'W'),
  ],
  meters: [
    { ...EC, meter: 'EC-M1', tariff: 'FLAT', use: 'all', payer_rule: 'owner', owner_share: 1, tenant_share: 0, base_load_kwh_yr: 2400 },
    { ...EC, meter: 'EC-M2', tariff: 'FLAT', use: 'common', payer_rule: 'common', owner_share: 1, tenant_share: 0, base_load_kwh_yr: 6000 },
  ],
  dwellingMeters: [
    ...homes.map(({ dwelling }) => ({ ...EC, dwelling, meter: 'EC-M1' })),
    ...['LAUNDRY', 'OFFICE'].map((dwelling) => ({ ...EC, dwelling, meter: 'EC-M2' })),
  ],
};
