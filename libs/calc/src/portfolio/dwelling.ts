import type { InventoryRow, Known } from './row.js';

export type ThermalClass = 'very-light' | 'light' | 'medium' | 'heavy' | 'very-heavy';
export type PlantKind = 'single-speed' | 'two-speed' | 'heat-pump' | 'room-unit' | 'mini-split' | 'central';
/** The scale an efficiency is stated in; the scales are kept apart and never mixed. */
export type EfficiencyScale = 'seer' | 'seer2' | 'eer' | 'cop' | 'kW_ton';
export type HeatingKind = 'electric-resistance' | 'heat-pump' | 'gas' | 'none';

/** A cooling efficiency in the scale it was stated in. */
export interface Efficiency {
  readonly scale: EfficiencyScale;
  readonly value: number;
}

/** The machine that cools a dwelling, now and after its expected replacement. */
export interface CoolingPlant {
  readonly kind: Known<PlantKind>;
  readonly ratedCapacity_W: Known<number>;
  readonly efficiency: Known<Efficiency>;
  readonly age_yr: Known<number>;
  readonly replacementYear: Known<number>;
  readonly efficiencyAfter: Known<Efficiency>;
  /** Share of the cooling that the ducts bring to the rooms; blank is all of it. */
  readonly ductEfficiency?: Known<number>;
}

export interface Heating {
  readonly kind: Known<HeatingKind>;
  /** Useful heat over delivered energy: 1 for resistance, about 0.8 for gas, the seasonal COP of a heat pump. */
  readonly efficiency: Known<number>;
  /** Price of a kWh of fuel where the heat is not electric. */
  readonly fuel_cents_kWh: Known<number>;
}

/** Another set point in some hours of every day. */
export interface Setback {
  readonly setPoint_degC: number;
  /** Hours of the day 0…23, standard time. */
  readonly hours: readonly number[];
}

/** Set points that change with the hour. */
export interface Setbacks {
  readonly cooling: Known<Setback>;
  readonly heating: Known<Setback>;
}

/** A dwelling or a common area of a building. */
export interface Dwelling {
  /** `building/dwelling`, for example `EC/007`. */
  readonly id: string;
  readonly building: string;
  readonly kind: 'dwelling' | 'common area';
  readonly planType: Known<string>;
  /** The way the plan's own front looks, clockwise from true north. */
  readonly frontAzimuth_deg: Known<number>;
  readonly mirrored: Known<boolean>;
  readonly floorArea_m2: Known<number>;
  readonly storey: Known<number>;
  readonly ceilingHeight_m: Known<number>;
  /** Opaque outside wall facing outdoors, windows not counted. */
  readonly exposedWall_m2: Known<number>;
  readonly exposedRoof_m2: Known<number>;
  readonly thermalClass: Known<ThermalClass>;
  readonly coolingSetPoint_degC: Known<number>;
  readonly heatingSetPoint_degC: Known<number>;
  readonly setbacks?: Known<Setbacks>;
  /** Months (1…12) in which somebody lives there; blank means all. */
  readonly occupiedMonths: Known<readonly number[]>;
  readonly occupants: Known<number>;
  readonly plant: CoolingPlant;
  readonly heating: Heating;
  /** Rooms the plant cools; blank means all rooms. */
  readonly cooledRooms: Known<readonly string[]>;
  readonly payerRule: Known<string>;
  readonly inventoryRow: InventoryRow;
}

/** A floor plan surveyed once; its windows are placed by the plan's own front. */
export interface PlanType {
  readonly id: string;
  readonly building: Known<string>;
  readonly name: string;
  readonly floorArea_m2: Known<number>;
  readonly ceilingHeight_m: Known<number>;
  readonly exposedWall_m2: Known<number>;
  readonly inventoryRow: InventoryRow;
}

/** When a dwelling stands empty. */
export interface MoveOut {
  readonly dwelling: string;
  /** ISO dates. */
  readonly out: string;
  readonly in: Known<string>;
  readonly inventoryRow: InventoryRow;
}
