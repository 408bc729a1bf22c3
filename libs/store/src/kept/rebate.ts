import type { Known, Rebate } from '#calc';
import { Check, Entity, ForeignKey } from 'typeorm';
import { Day, Flag, Json, Key, Real, Text, WholeCents, blank } from '../columns.js';
import { FromFile } from '../inventory-place.js';
import { keptWithPlace } from '../kept-kind.js';
import { BuildingRow } from './building.js';

/** Money a fund gives towards film that meets its terms. */
@Entity('rebates')
@Check('rebates_shares', 'rate_cents_m2 >= 0 AND cost_share BETWEEN 0 AND 1')
export class RebateRow extends FromFile implements Omit<Rebate, 'inventoryRow'> {
  @Key() id: string;
  @Text(blank) @ForeignKey(() => BuildingRow) building: Known<string>;
  @Real() rate_cents_m2: number;
  @WholeCents(blank) cap_cents: Known<number>;
  @Real(blank) costShare: Known<number>;
  @Json(blank) sectors: Rebate['sectors'];
  @Real(blank) solarHeatGainBeforeAtLeast: Known<number>;
  @Real(blank) solarHeatGainAfterAtMost: Known<number>;
  @Real(blank) areaAtLeast_m2: Known<number>;
  @Flag() needsPreApproval: boolean;
  @Day(blank) preApprovedOn: Known<string>;
  @Day(blank) deadline: Known<string>;
}

export const keptRebates = keptWithPlace<Rebate, RebateRow>(RebateRow);
