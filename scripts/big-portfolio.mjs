// A generated portfolio for measurements of speed: seeded, invented, written as the survey files a person would send.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Numbers 0…1 from a seed (mulberry32): the same portfolio on every machine. */
function draws(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const PER_BUILDING = 200;
const SIDES = ['N', 'E', 'S', 'W'];
const hours = (priceOf) => Array.from({ length: 12 }, () => Array.from({ length: 24 }, (_, h) => priceOf(h)));
const always = hours(() => 0);
const tariff = (label, energyratestructure, weekday = always) => ({ label, utility: 'made up', name: label, sector: 'Residential', energyratestructure, energyweekdayschedule: weekday, energyweekendschedule: always, fixedchargefirstmeter: 10, fixedchargeunits: '$/month', clock: 'standard' });
const TARIFFS = [
  tariff('FLAT', [[{ rate: 0.19 }]]),
  tariff('BLOCK', [[{ rate: 0.14, max: 500 }, { rate: 0.21, max: 1000 }, { rate: 0.27 }]]),
  tariff('TOU', [[{ rate: 0.12 }], [{ rate: 0.31 }]], hours((h) => (h >= 14 && h < 20 ? 1 : 0))),
];
const COOLING = [['single-speed', 'SEER 10'], ['heat-pump', 'SEER 13'], ['window unit', 'EER 9.5'], ['mini-split', 'SEER2 18']];
const HEATING = [['electric resistance', 1], ['heat pump', 2.5], ['gas', 0.8]];
const GLAZING = ['single clear 1/8 in', 'single bronze 3/16 in', 'double clear'];

/** One dwelling's rows by its draws: what varies in a survey. */
function dwellingOf(next, byBuilding) {
  const pick = (list) => list[Math.floor(next() * list.length)];
  const between = (low, high, step) => low + step * Math.floor((next() * (high - low)) / step);
  const [kind, efficiency] = pick(COOLING);
  const [heating, heatingEfficiency] = pick(HEATING);
  const row = [between(550, 1400, 1), 1 + Math.floor(next() * 3), 8, between(250, 500, 1), pick(['light', 'medium']), between(74, 79, 1), between(66, 70, 1), between(1, 5, 1), kind, pick([1.5, 2, 2.5, 3]), efficiency, between(4, 16, 1), heating, heatingEfficiency];
  const windows = [];
  for (const side of [...SIDES, pick(SIDES), pick(SIDES)]) {
    windows.push([`W0${windows.length + 1}`, `room ${windows.length + 1}`, side, between(28, 60, 0.125), between(36, 60, 0.125), byBuilding.glazing, byBuilding.overhang_ft, byBuilding.overhang_ft === '' ? '' : 1, 'none']);
  }
  return { row, windows, tariff: pick(TARIFFS).label, base: between(1800, 5200, 10) };
}

/**
 * Writes the folder.
 *
 * @param folder where to
 * @param of dwellings; distinct: how many different ones among them (all by default); overhangs: share of buildings with a depth of their own before the glass
 */
export function writeBigPortfolio(folder, { dwellings, distinct = dwellings, overhangs = 1 / 3, seed = 1 }) {
  mkdirSync(folder, { recursive: true });
  const buildings = Math.ceil(dwellings / PER_BUILDING);
  const atHome = draws(seed);
  const kinds = Array.from({ length: buildings }, (_, b) => ({ glazing: GLAZING[b % 3], overhang_ft: atHome() < overhangs ? 1 + Math.floor(atHome() * 4) : '' }));
  const rows = { buildings: [], dwellings: [], windows: [], meters: [], dwellingMeters: [] };
  for (let b = 0; b < buildings; b++) {
    rows.buildings.push([`B${String(b + 1).padStart(3, '0')}`, `Building ${b + 1}`, `OWNER${1 + (b % 2)}`, 25.82, -80.3, -5, 'miami-fl', 1974, 3, 24, 60, 60, 72]);
  }
  for (let n = 0; n < dwellings; n++) {
    const building = rows.buildings[Math.floor(n / PER_BUILDING)][0];
    const variant = n % distinct;
    const { row, windows, tariff: label, base } = dwellingOf(draws(seed * 1_000_003 + variant), kinds[Math.floor(variant / PER_BUILDING)]);
    const door = String(1 + (n % PER_BUILDING)).padStart(3, '0');
    rows.dwellings.push([building, door, 'dwelling', ...row]);
    for (const window of windows) rows.windows.push([building, door, ...window]);
    rows.meters.push([`${building}-M${door}`, building, label, 'all', 'tenant', base]);
    rows.dwellingMeters.push([building, door, `${building}-M${door}`]);
  }
  const write = (name, header, body) => writeFileSync(join(folder, `${name}.csv`), `${header}\n${body.map((cells) => cells.join(',')).join('\n')}\n`);
  write('buildings', 'building,building_name,owner_entity,latitude_deg,longitude_deg,time_zone_h,climate,built_year,storeys,notice_h,visit_cost,visit_minutes,widest_roll_in', rows.buildings);
  write('dwellings', 'building,dwelling,kind,floor_area_ft2,storey,ceiling_height_ft,exposed_wall_ft2,thermal_class,cooling_set_point_degF,heating_set_point_degF,occupants,cooling_kind,cooling_capacity_tons,cooling_efficiency,cooling_age_yr,heating_kind,heating_efficiency', rows.dwellings);
  write('windows', 'building,dwelling,mark,room,facade,width_in,height_in,glazing,overhang_depth_ft,overhang_gap_ft,existing_film', rows.windows);
  write('meters', 'meter,building,tariff,use,payer_rule,base_load_kwh_yr', rows.meters);
  write('dwelling-meters', 'building,dwelling,meter', rows.dwellingMeters);
  write('films', 'film,film_name,film_class,solar_transmittance,solar_reflectance_outside,solar_reflectance_inside,visible_transmittance,visible_reflectance_outside,visible_reflectance_inside,room_emissivity,side,life_yr,may_rotate,freight,minimum_order,basis,source', [
    ['A', 'Neutral A', 'neutral', 0.4, 0.16, 0.16, 0.45, 0.12, 0.12, 0.8, 'room', 12, 'yes', 85, 500, 'assumed', 'made up'],
    ['B', 'Reflective B', 'reflective medium', 0.24, 0.38, 0.36, 0.3, 0.32, 0.28, 0.75, 'room', 12, 'no', 85, 500, 'assumed', 'made up'],
  ]);
  write('rolls', 'roll,film,width_in,length_ft,price,in_stock', ['A', 'B'].flatMap((film, f) => [36, 48, 60, 72].map((width) => [`${film}-${width}`, film, width, 100, Math.round(width * 12 * (1 + f / 3)), 0])));
  writeFileSync(join(folder, 'tariffs.json'), JSON.stringify(TARIFFS));
  const phases = ['OWNER1', 'OWNER2'].flatMap((owner_entity) => [2026, 2027, 2028].map((year) => ({ owner_entity, name: `${year}-${String(year + 1).slice(2)}`, first_day: `${year}-07-01`, last_day: `${year + 1}-06-30`, cap: dwellings * 40, crew_minutes: null })));
  writeFileSync(join(folder, 'plan.json'), JSON.stringify({
    name: 'Generated portfolio', currency: 'USD', study_start: '2026-07-01', view: 'whole', real_discount_rate: 0.03, real_escalation: 0, labour_per_hour: 34, labour_is_cash: true,
    contingency_share: 0.08, material_tax_share: 0.065, labour_tax_share: 0, consumables_per_m2: 1.5, trim_per_edge_mm: 12.7, crew_size: 2, crew_days_wk: 3, crew_hours_day: 8,
    mixed_film: false, owner_entities: [{ id: 'OWNER1', name: 'Owner One' }, { id: 'OWNER2', name: 'Owner Two' }], phases, no_work: [],
  }, null, 1));
  return { buildings, dwellings, windows: rows.windows.length };
}
