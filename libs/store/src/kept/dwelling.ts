import type { Dwelling, Known, Setbacks, ThermalClass } from '#calc';
import { Check, Entity, ForeignKey, Index } from 'typeorm';
import { Flag, Json, Key, Real, Text, Whole, blank } from '../columns.js';
import { FromFile } from '../inventory-place.js';
import { keptWithPlace } from '../kept-kind.js';
import { BuildingRow } from './building.js';
import { PlanTypeRow } from './plan-type.js';

/** A dwelling or a common area of a building; its machine and heating lie in one JSON column each. */
@Entity('dwellings')
@Index('dwellings_by_building', ['building'])
@Index('dwellings_by_plan_type', ['planType'])
@Check('dwellings_kind', "kind IN ('dwelling', 'common area')")
@Check('dwellings_floor_area', 'floor_area_m2 > 0')
export class DwellingRow extends FromFile implements Omit<Dwelling, 'inventoryRow'> {
  @Key() id: string;
  @Text() @ForeignKey(() => BuildingRow) building: string;
  @Text() kind: Dwelling['kind'];
  @Text(blank) @ForeignKey(() => PlanTypeRow) planType: Known<string>;
  @Real(blank) frontAzimuth_deg: Known<number>;
  @Flag(blank) mirrored: Known<boolean>;
  @Real(blank) floorArea_m2: Known<number>;
  @Whole(blank) storey: Known<number>;
  @Real(blank) ceilingHeight_m: Known<number>;
  @Real(blank) exposedWall_m2: Known<number>;
  @Real(blank) exposedRoof_m2: Known<number>;
  @Text(blank) thermalClass: Known<ThermalClass>;
  @Real(blank) coolingSetPoint_degC: Known<number>;
  @Real(blank) heatingSetPoint_degC: Known<number>;
  @Json(blank) setbacks: Known<Setbacks>;
  @Json(blank) occupiedMonths: Dwelling['occupiedMonths'];
  @Real(blank) occupants: Known<number>;
  @Json() plant: Dwelling['plant'];
  @Json() heating: Dwelling['heating'];
  @Json(blank) cooledRooms: Dwelling['cooledRooms'];
  @Text(blank) payerRule: Known<string>;
}

export const keptDwellings = keptWithPlace<Dwelling, DwellingRow>(DwellingRow);
