import type { Bill, Known } from '#calc';
import { Check, Entity, ForeignKey } from 'typeorm';
import { DayKey, Flag, Key, Real, WholeCents, blank } from '../columns.js';
import { FromFile } from '../inventory-place.js';
import { keptWithPlace } from '../kept-kind.js';
import { MeterRow } from './meter.js';

/** What a meter used between two readings. Use may be below zero: a bill is kept as it was sent, what is odd about it is a finding. */
@Entity('bills')
@Check('bills_days', 'last_day >= first_day')
export class BillRow extends FromFile implements Omit<Bill, 'inventoryRow'> {
  @Key() @ForeignKey(() => MeterRow) meter: string;
  @DayKey('first_day') firstDay: string;
  @DayKey('last_day') lastDay: string;
  @Real() use_kWh: number;
  @Real(blank) peak_kW: Known<number>;
  @WholeCents(blank) amount_cents: Known<number>;
  @Flag() estimated: boolean;
}

export const keptBills = keptWithPlace<Bill, BillRow>(BillRow);
