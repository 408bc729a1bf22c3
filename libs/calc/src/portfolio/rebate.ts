import type { InventoryRow, Known } from './row.js';

/** Money a fund gives towards film that meets its terms: the least of area × rate, the cap a project, and a share of the cost. */
export interface Rebate {
  readonly id: string;
  readonly building: Known<string>;
  readonly rate_cents_m2: number;
  readonly cap_cents: Known<number>;
  readonly costShare: Known<number>;
  /** Sides that count, as sectors clockwise from true north; blank allows all. */
  readonly sectors: Known<readonly { readonly from_deg: number; readonly to_deg: number }[]>;
  readonly solarHeatGainBeforeAtLeast: Known<number>;
  readonly solarHeatGainAfterAtMost: Known<number>;
  readonly areaAtLeast_m2: Known<number>;
  /** A letter the fund must give before the work. */
  readonly needsPreApproval: boolean;
  readonly preApprovedOn: Known<string>;
  /** Last day on which work may be done. */
  readonly deadline: Known<string>;
  readonly inventoryRow: InventoryRow;
}
