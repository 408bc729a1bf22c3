import { splitEfficiencyKey } from '#catalogue';
import type { Building, CoolingPlant, Dwelling, Efficiency, HeatingKind, PayerRule, PlantAgeing, PlantKind, Setback, Setbacks, TariffText, ThermalClass } from '#calc';
import type { AssumptionBook, DefaultOf } from '../job/assumption-book.js';
import type { PlacedWindow } from './placed-windows.js';

/** Set points by the hour of the day. */
export interface DaySetPoints {
  readonly cooling: readonly number[];
  readonly heating: readonly number[];
}

/** A dwelling with every gap filled: what the physics and the bill need, in one place. */
export interface KnownDwelling {
  readonly id: string;
  readonly building: string;
  readonly kind: 'dwelling' | 'common area';
  /** Floor of the cooled rooms, which the zone is made of. */
  readonly cooledFloor_m2: number;
  readonly floor_m2: number;
  readonly ceilingHeight_m: number;
  readonly exposedWall_m2: number;
  readonly exposedRoof_m2: number;
  readonly wallU_W_m2K: number;
  readonly roofU_W_m2K: number;
  readonly opaqueAbsorptance: number;
  readonly thermalClass: ThermalClass;
  readonly airChange_1_h: number;
  readonly coolingSetPoint_degC: number;
  readonly heatingSetPoint_degC: number;
  /** Set points of the 24 hours of a day where they change; null: the same all day. */
  readonly setPoints_degC: DaySetPoints | null;
  /** Twelve shares 0…1 of the month somebody lives there. */
  readonly occupied: readonly number[];
  readonly occupants: number;
  readonly baseLoad_kWh_yr: number;
  readonly plantKind: PlantKind;
  /** Null: large enough for every hour. */
  readonly plantCapacity_W: number | null;
  readonly plantNow: Efficiency;
  readonly plantAfter: Efficiency;
  /** Share of the cooling that the ducts bring to the rooms. */
  readonly ductEfficiency: number;
  /** What the present machine has lost with age, where the plan asks for it. */
  readonly plantAgeing: { readonly age_yr: number; readonly loss_1_yr: number } | null;
  /** Null: not replaced within the study. */
  readonly plantReplacementYear: number | null;
  readonly heatingKind: HeatingKind;
  readonly heatingEfficiency: number;
  readonly heatingFuel_cents_kWh: number;
  /** Share of the surveyed glass the sun really reaches in use: open windows, furniture, what the survey missed; the same bare and filmed. */
  readonly useFactor: number;
  readonly meter: KnownMeter;
  readonly windows: readonly PlacedWindow[];
  /** Windows of rooms that are not cooled: no saving, no option. */
  readonly uncooledWindows: readonly PlacedWindow[];
}

/** The meter a dwelling hangs on. */
export interface KnownMeter {
  readonly id: string;
  readonly tariff: TariffText;
  readonly payerRule: PayerRule;
  /** Dwellings it serves; a shared meter is valued on the sum of all. */
  readonly dwellings: readonly string[];
}

/** What is needed to fill a dwelling's gaps. */
export interface Filling {
  readonly book: AssumptionBook;
  readonly defaultOf: DefaultOf;
}

/**
 * Share of the floor that the plant cools: cooled rooms over rooms that have a window, since rooms are surveyed by their windows.
 * Blank means all.
 */
export function cooledShare(cooledRooms: readonly string[] | null, windows: readonly PlacedWindow[]): number {
  if (cooledRooms === null) return 1;
  const rooms = new Set(windows.map((w) => w.room ?? ''));
  if (rooms.size === 0) return 1;
  const cooled = [...rooms].filter((room) => cooledRooms.includes(room)).length;
  return cooled / rooms.size;
}

/** A building's plant: what is filled in for it, and the calendar year the study starts in. */
export interface PlantFilling extends Filling {
  readonly group: string;
  readonly studyYear: number;
  readonly plantAgeing: PlantAgeing;
}

const SPLITS: readonly PlantKind[] = ['single-speed', 'two-speed', 'heat-pump'];

/** Key of the efficiency of a machine without a label: a split unit by the year it was put in, others by kind. */
function efficiencyKey(plant: CoolingPlant, kind: PlantKind, studyYear: number): string {
  const byYear = SPLITS.includes(kind) && plant.age_yr !== null ? splitEfficiencyKey(studyYear - plant.age_yr) : null;
  return byYear ?? `presentEfficiency.${kind}`;
}

/** Efficiency of a machine with its scale; of one without a label the default of its kind. */
function efficiencyOf(given: Efficiency | null, kind: PlantKind, of: PlantFilling & { readonly key: string; readonly isNew: boolean }): Efficiency {
  if (given !== null) return given;
  const scale = kind === 'central' ? 'kW_ton' : kind === 'room-unit' ? 'eer' : of.isNew ? 'seer2' : 'seer';
  const field = `${of.isNew ? 'cooling efficiency after replacement' : 'present cooling efficiency'} (${scale})`;
  return { scale, value: of.book.take({ group: of.group, field }, null, of.defaultOf<number>(of.key)) };
}

/** Year a machine is replaced: as given; else at the end of its usual life by its age; of unknown age half a life from now. */
function replacementYearOf(plant: CoolingPlant, kind: PlantKind, of: PlantFilling): number {
  const life = of.defaultOf<number>(`plantLife_yr.${kind}`);
  const left = plant.age_yr === null ? Math.ceil(life.value / 2) : Math.max(1, Math.round(life.value - plant.age_yr));
  const source = `${life.source}; ${plant.age_yr === null ? 'age not known: half a life from the study start' : 'life less age, at least one year from the study start'}`;
  return of.book.take({ group: of.group, field: 'year the cooling plant is replaced' }, plant.replacementYear, { ...life, value: of.studyYear + left, unit: 'calendar year', source });
}

/** The plant of a dwelling with its gaps filled. */
export function knownPlant(plant: CoolingPlant, fill: PlantFilling): Pick<KnownDwelling, 'plantKind' | 'plantCapacity_W' | 'plantNow' | 'plantAfter' | 'plantReplacementYear' | 'ductEfficiency' | 'plantAgeing'> {
  const plantKind = fill.book.take({ group: fill.group, field: 'cooling kind' }, plant.kind, fill.defaultOf<PlantKind>('coolingKind'));
  return {
    plantKind,
    plantCapacity_W: plant.ratedCapacity_W,
    plantNow: efficiencyOf(plant.efficiency, plantKind, { ...fill, isNew: false, key: efficiencyKey(plant, plantKind, fill.studyYear) }),
    plantAfter: efficiencyOf(plant.efficiencyAfter, plantKind, { ...fill, isNew: true, key: `newEfficiency.${plantKind}` }),
    plantReplacementYear: replacementYearOf(plant, plantKind, fill),
    ...plantLosses(plant, plantKind, fill),
  };
}

/** Set points of the hours of a day; null where nothing changes. Heating is never set above cooling. */
export function daySetPoints(setbacks: Setbacks | null | undefined, usual: { readonly cooling: number; readonly heating: number }): DaySetPoints | null {
  if (setbacks == null) return null;
  const day = (of: Setback | null, base: number): number[] => Array.from({ length: 24 }, (_, hour) => (of?.hours.includes(hour) === true ? of.setPoint_degC : base));
  const cooling = day(setbacks.cooling, usual.cooling);
  return { cooling, heating: day(setbacks.heating, usual.heating).map((t, hour) => Math.min(t, cooling[hour]!)) };
}

const DUCTED: readonly PlantKind[] = ['single-speed', 'two-speed', 'heat-pump'];

/** Ducts and age of a dwelling's machine; machines without ducts lose nothing in them. */
function plantLosses(plant: CoolingPlant, kind: PlantKind, fill: PlantFilling): Pick<KnownDwelling, 'ductEfficiency' | 'plantAgeing'> {
  const ducts = DUCTED.includes(kind) ? fill.book.take({ group: fill.group, field: 'share of the cooling that the ducts bring to the rooms' }, plant.ductEfficiency ?? null, fill.defaultOf<number>('ductEfficiency')) : (plant.ductEfficiency ?? 1);
  if (fill.plantAgeing === 'off' || plant.age_yr === null) return { ductEfficiency: ducts, plantAgeing: null };
  const loss = fill.defaultOf<number>(`plantAgeing.${fill.plantAgeing}`);
  return { ductEfficiency: ducts, plantAgeing: { age_yr: plant.age_yr, loss_1_yr: fill.book.take({ group: fill.group, field: `efficiency a machine loses a year (${fill.plantAgeing})` }, null, loss) } };
}

/** U-value class of walls and roofs by the year a building was built. */
export function builtClass(building: Building): 'before-1980' | '1980-2005' | 'after-2005' {
  if (building.builtYear === null || building.builtYear < 1980) return 'before-1980';
  return building.builtYear <= 2005 ? '1980-2005' : 'after-2005';
}

/** Months 1…12 as twelve shares. */
export function occupiedShares(months: readonly number[] | null): number[] {
  return Array.from({ length: 12 }, (_, m) => (months === null || months.includes(m + 1) ? 1 : 0));
}

/** Why a dwelling cannot be computed, or null. */
export function missingFor(dwelling: Dwelling, floorArea_m2: number | null, windows: readonly PlacedWindow[]): string | null {
  if (floorArea_m2 === null) return 'floor area is not known: give floor_area of the dwelling or of its plan type';
  if (windows.length === 0) return 'no window that can be placed: check its windows, plan type and front azimuth';
  if (dwelling.occupiedMonths !== null && dwelling.occupiedMonths.length === 0) return 'no occupied month';
  return null;
}
