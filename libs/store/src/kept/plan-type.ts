import type { Known, PlanType } from '#calc';
import { Entity, ForeignKey, Index } from 'typeorm';
import { Key, Real, Text, blank } from '../columns.js';
import { FromFile } from '../inventory-place.js';
import { keptWithPlace } from '../kept-kind.js';
import { BuildingRow } from './building.js';

/** A floor plan surveyed once. */
@Entity('plan_types')
@Index('plan_types_by_building', ['building'])
export class PlanTypeRow extends FromFile implements Omit<PlanType, 'inventoryRow'> {
  @Key() id: string;
  @Text(blank) @ForeignKey(() => BuildingRow) building: Known<string>;
  @Text() name: string;
  @Real(blank) floorArea_m2: Known<number>;
  @Real(blank) ceilingHeight_m: Known<number>;
  @Real(blank) exposedWall_m2: Known<number>;
}

export const keptPlanTypes = keptWithPlace<PlanType, PlanTypeRow>(PlanTypeRow);
