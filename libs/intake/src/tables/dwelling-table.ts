import type { Dwelling, Efficiency, MoveOut, PlanType, Setback, Setbacks } from '#calc';
import { bearingCell } from '../cells/compass-cell.js';
import { dateCell, monthsCell, yearCell } from '../cells/date-cell.js';
import { efficiencyCell, efficiencyOf, scaleCell, type StatedEfficiency } from '../cells/efficiency-cell.js';
import { hoursCell } from '../cells/hours-cell.js';
import { lengthCell_m } from '../cells/length-cell.js';
import { numberCell, shareCell } from '../cells/number-cell.js';
import { quantityCell } from '../cells/quantity-cell.js';
import { idCell, textCell, textsCell, wordCell, yesNoCell } from '../cells/word-cell.js';
import { needed, optional, type RowValues, type Said } from '../columns/column.js';
import { defineTable, doubtful, type Say, wrong } from '../columns/table.js';
import { dwellingId, dwellingPlace } from './place.js';

const area = (name: string, said: Said) => optional(name, { ...said, unit: 'ft2', quantity: 'area', read: quantityCell('area', { min: 0, max: 5000 }) });
const degrees = (name: string, said: Said) => optional(name, { ...said, unit: 'degF', quantity: 'temperature', read: quantityCell('temperature', { min: 5, max: 35 }) });

export const dwellingColumns = {
  building: dwellingPlace.building,
  dwelling: needed('dwelling', { also: dwellingPlace.dwelling.also, about: 'number of the dwelling as on its door, kept as typed', example: '007', read: idCell }),
  kind: optional('kind', { also: ['dwelling kind', 'space kind', 'use of space'], about: 'dwelling or common area; blank is a dwelling', example: 'dwelling', read: wordCell({ dwelling: ['home', 'apartment', 'flat', 'unit', 'residential'], 'common area': ['common', 'common space', 'lobby', 'laundry', 'office', 'amenity'] }) }),
  planType: optional('plan_type', { also: ['unit type', 'layout', 'floor plan', 'plan'], about: 'plan type whose windows this dwelling has', example: 'EC-A', read: idCell }),
  frontAzimuth_deg: optional('front', { also: ['front azimuth', 'front faces', 'front azimuth deg'], about: 'side the plan\'s front looks to: compass word or degrees', example: 'W', read: bearingCell }),
  mirrored: optional('mirrored', { also: ['mirror', 'flipped'], about: 'yes when the plan lies mirrored', example: 'no', read: yesNoCell }),
  floorArea_m2: area('floor_area', { also: ['area', 'living area', 'size of dwelling'], about: 'heated and cooled floor', example: '740' }),
  storey: optional('storey', { also: ['story', 'level', 'floor', 'floor level', 'floor no'], about: 'storey it lies on, ground is 1', example: '2', read: numberCell({ min: -5, max: 200, whole: true }) }),
  ceilingHeight_m: optional('ceiling_height', { unit: 'ft', quantity: 'length', about: 'floor to ceiling', example: '8', read: lengthCell_m({ min_mm: 1800, max_mm: 8000 }) }),
  exposedWall_m2: area('exposed_wall', { also: ['exposed wall area'], about: 'opaque outside wall, windows not counted', example: '310' }),
  exposedRoof_m2: area('exposed_roof', { also: ['exposed roof area'], about: 'roof above it that faces the sky; 0 below another dwelling', example: '0' }),
  thermalClass: optional('thermal_class', { also: ['construction', 'thermal mass'], about: 'how heavy the building is', example: 'medium', read: wordCell({ 'very-light': [], light: ['wood frame'], medium: [], heavy: ['masonry'], 'very-heavy': ['concrete'] }) }),
  coolingSetPoint_degC: degrees('cooling_set_point', { also: ['cooling setpoint', 'summer set point'], about: 'thermostat in summer', example: '76' }),
  heatingSetPoint_degC: degrees('heating_set_point', { also: ['heating setpoint', 'winter set point'], about: 'thermostat in winter', example: '68' }),
  coolingAway_degC: degrees('cooling_set_point_away', { also: ['away set point', 'cooling setback'], about: 'thermostat in summer while nobody is there' }),
  awayHours: optional('away_hours', { also: ['hours away', 'setback hours'], about: 'hours of the day it is set so, standard time', example: '8-17', read: hoursCell }),
  heatingNight_degC: degrees('heating_set_point_night', { also: ['night set point', 'heating setback'], about: 'thermostat in winter at night' }),
  nightHours: optional('night_hours', { also: ['hours of night'], about: 'hours of the day it is set so, standard time', example: '22-6', read: hoursCell }),
  occupiedMonths: optional('occupied_months', { also: ['months occupied'], about: 'months in which somebody lives there; blank is all', example: '1-12', read: monthsCell }),
  occupants: optional('occupants', { also: ['people', 'residents'], about: 'people who live there', example: '2', read: numberCell({ min: 0, max: 40 }) }),
  coolingKind: optional('cooling_kind', { also: ['ac', 'ac type', 'cooling', 'cooling type', 'cooling system'], about: 'kind of cooling machine', example: 'single-speed', read: wordCell({ 'single-speed': ['split', 'split system', 'central air', 'old split'], 'two-speed': ['two stage'], 'heat-pump': ['heatpump'], 'room-unit': ['window unit', 'ptac', 'through wall', 'window ac'], 'mini-split': ['minisplit', 'ductless', 'variable speed'], central: ['chilled water', 'chiller', 'central plant'] }) }),
  ratedCapacity_W: optional('cooling_capacity', { also: ['tonnage', 'ac size', 'capacity'], unit: 'tons', quantity: 'power', about: 'rated cooling capacity', example: '2', read: quantityCell('power', { min: 500, max: 500_000 }) }),
  efficiency: optional('cooling_efficiency', { also: ['efficiency', 'seer rating'], about: 'rated efficiency, with its scale here or in the next column', example: 'SEER 10', read: efficiencyCell }),
  efficiencyScale: optional('efficiency_scale', { also: ['scale', 'rating scale'], about: 'SEER, SEER2, EER, COP or kW/ton', example: 'SEER', read: scaleCell }),
  coolingAge_yr: optional('cooling_age_yr', { also: ['ac age', 'cooling age'], about: 'age of the machine in years', example: '14', read: numberCell({ min: 0, max: 80 }) }),
  coolingReplacementYear: optional('cooling_replacement_year', { also: ['ac replacement year', 'replace ac'], about: 'year in which the machine is due to be replaced', example: '2028', read: yearCell }),
  efficiencyAfter: optional('efficiency_after', { about: 'efficiency of the machine after that', example: 'SEER2 14.3', read: efficiencyCell }),
  efficiencyAfterScale: optional('efficiency_after_scale', { about: 'its scale', example: 'SEER2', read: scaleCell }),
  ductEfficiency: optional('duct_efficiency', { also: ['duct share', 'distribution efficiency'], quantity: 'share', about: 'share of the cooling that the ducts bring to the rooms: 0.8 unsealed in an attic, 1 without ducts; blank is 1', example: '0.8', read: shareCell }),
  cooledRooms: optional('cooled_rooms', { also: ['rooms cooled'], about: 'rooms the machine cools, apart by ;; blank is all rooms', example: 'living room', read: textsCell }),
  heatingKind: optional('heating_kind', { also: ['heating', 'heat', 'heating type'], about: 'kind of heating', example: 'electric resistance', read: wordCell({ 'electric-resistance': ['electric', 'resistance', 'strip heat'], 'heat-pump': ['heatpump'], gas: ['gas furnace', 'furnace'], none: ['no heating'] }) }),
  heatingEfficiency: optional('heating_efficiency', { also: ['heating cop', 'afue'], about: 'useful heat over delivered energy', example: '1', read: numberCell({ min: 0.2, max: 7 }) }),
  fuel_cents_kWh: optional('fuel_cents_kwh', { also: ['fuel price cents kwh'], about: 'price of fuel where the heat is not electric, cents per kWh', example: '4.5', read: numberCell({ min: 0, max: 200 }) }),
  payerRule: optional('payer_class', { also: ['payer', 'who pays'], about: 'payer rule of this dwelling where it differs from its meter\'s', example: '', read: textCell }),
} as const;

const withoutFault = (of: Efficiency | null | { readonly why: string }): Efficiency | null => (of === null || 'why' in of ? null : of);

/** Set points by the hour; a set point without its hours, or hours without one, is said and left out. */
function setbacksOf(of: RowValues<typeof dwellingColumns>, say: Say<typeof dwellingColumns>): Setbacks | null {
  const one = (setPoint_degC: number | null, hours: readonly number[] | null, column: 'awayHours' | 'nightHours'): Setback | null => {
    if (setPoint_degC !== null && hours !== null) return { setPoint_degC, hours };
    if (setPoint_degC !== null || hours !== null) say(column, doubtful('setback-incomplete', 'a set point and its hours together', 'add the missing one; until then the thermostat is taken as unchanged all day'));
    return null;
  };
  const cooling = one(of.coolingAway_degC, of.awayHours, 'awayHours');
  const heating = one(of.heatingNight_degC, of.nightHours, 'nightHours');
  return cooling === null && heating === null ? null : { cooling, heating };
}

export const dwellingTable = defineTable({
  name: 'dwellings',
  about: 'One row per dwelling or common area.',
  columns: dwellingColumns,
  records: (of, inventoryRow, say): readonly Dwelling[] => {
    const place = dwellingId(of.building, of.dwelling);
    if (place === null) {
      say('building', wrong('missing-value', 'the code of the building', 'fill in the building'));
      return [];
    }
    const stated = (value: StatedEfficiency | null, scale: typeof of.efficiencyScale, column: 'efficiency' | 'efficiencyAfter'): Efficiency | null => {
      const found = efficiencyOf(value, scale);
      if (found !== null && 'why' in found) say(column, wrong('efficiency-unclear', 'a figure on one scale: SEER, SEER2, EER, COP or kW/ton', found.why));
      return withoutFault(found);
    };
    return [{
      id: place.id, building: place.building, kind: of.kind ?? 'dwelling', planType: of.planType, frontAzimuth_deg: of.frontAzimuth_deg, mirrored: of.mirrored,
      floorArea_m2: of.floorArea_m2, storey: of.storey, ceilingHeight_m: of.ceilingHeight_m, exposedWall_m2: of.exposedWall_m2, exposedRoof_m2: of.exposedRoof_m2,
      thermalClass: of.thermalClass, coolingSetPoint_degC: of.coolingSetPoint_degC, heatingSetPoint_degC: of.heatingSetPoint_degC,
      setbacks: setbacksOf(of, say), occupiedMonths: of.occupiedMonths, occupants: of.occupants,
      plant: {
        kind: of.coolingKind, ratedCapacity_W: of.ratedCapacity_W, efficiency: stated(of.efficiency, of.efficiencyScale, 'efficiency'),
        age_yr: of.coolingAge_yr, replacementYear: of.coolingReplacementYear, efficiencyAfter: stated(of.efficiencyAfter, of.efficiencyAfterScale, 'efficiencyAfter'), ductEfficiency: of.ductEfficiency,
      },
      heating: { kind: of.heatingKind, efficiency: of.heatingEfficiency, fuel_cents_kWh: of.fuel_cents_kWh },
      cooledRooms: of.cooledRooms, payerRule: of.payerRule, inventoryRow,
    }];
  },
});

export const planTypeTable = defineTable({
  name: 'plan-types',
  about: 'One row per floor plan that was surveyed once; its windows stand in windows.csv under plan_type.',
  columns: {
    planType: needed('plan_type', { also: ['unit type', 'layout', 'floor plan', 'plan'], about: 'short code of the plan type', example: 'EC-A', read: idCell }),
    building: optional('building', { also: ['building id', 'building code', 'bldg', 'property', 'site', 'block'], about: 'building it belongs to; blank: used in several', example: 'EC', read: idCell }),
    name: optional('plan_name', { also: ['name', 'description'], about: 'name people use', example: 'one bedroom, corner', read: textCell }),
    floorArea_m2: dwellingColumns.floorArea_m2,
    ceilingHeight_m: dwellingColumns.ceilingHeight_m,
    exposedWall_m2: dwellingColumns.exposedWall_m2,
  },
  records: (of, inventoryRow): readonly PlanType[] => {
    const id = of.planType ?? '';
    return [{ id, building: of.building, name: of.name ?? id, floorArea_m2: of.floorArea_m2, ceilingHeight_m: of.ceilingHeight_m, exposedWall_m2: of.exposedWall_m2, inventoryRow }];
  },
});

export const moveOutTable = defineTable({
  name: 'moveouts',
  about: 'One row per known move-out.',
  columns: {
    ...dwellingPlace,
    out: needed('out', { also: ['move out', 'move out date', 'empty from'], about: 'day it becomes empty', example: '2026-09-30', read: dateCell }),
    in: optional('in', { also: ['move in', 'move in date', 'empty until'], about: 'day somebody moves in', example: '2026-10-15', read: dateCell }),
  },
  records: (of, inventoryRow, say): readonly MoveOut[] => {
    const place = dwellingId(of.building, of.dwelling);
    if (place === null) say('dwelling', wrong('missing-value', 'building and dwelling', 'name the dwelling'));
    else if (of.in !== null && of.out !== null && of.in < of.out) say('in', wrong('date-before', 'a move-in on or after the move-out', 'correct one of the two dates'));
    else return [{ dwelling: place.id, out: of.out ?? '', in: of.in, inventoryRow }];
    return [];
  },
});
