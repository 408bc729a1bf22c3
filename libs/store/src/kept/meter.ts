import type { Known, Meter } from '#calc';
import { Check, Entity, ForeignKey, Index } from 'typeorm';
import { Json, Key, Real, Text, blank } from '../columns.js';
import { FromFile } from '../inventory-place.js';
import { keptWithPlace } from '../kept-kind.js';
import { BuildingRow } from './building.js';

/** A meter with its tariff and who pays it. */
@Entity('meters')
@Index('meters_by_building', ['building'])
@Check('meters_use', "use IN ('all', 'cooling', 'heating', 'common')")
@Check('meters_base_load', 'base_load_kwh_yr >= 0')
export class MeterRow extends FromFile implements Omit<Meter, 'inventoryRow'> {
  @Key() id: string;
  @Text() @ForeignKey(() => BuildingRow) building: string;
  @Text(blank) tariff: Known<string>;
  @Json(blank) payerRule: Meter['payerRule'];
  @Text() use: Meter['use'];
  @Real(blank) baseLoad_kWh_yr: Known<number>;
  @Text(blank) usagePoint: Known<string>;
}

export const keptMeters = keptWithPlace<Meter, MeterRow>(MeterRow);
