import type { DwellingMeter } from '#calc';
import { Entity, ForeignKey, Index } from 'typeorm';
import { Key } from '../columns.js';
import { FromFile } from '../inventory-place.js';
import { keptWithPlace } from '../kept-kind.js';
import { DwellingRow } from './dwelling.js';
import { MeterRow } from './meter.js';

/** Which meter serves which dwelling. */
@Entity('dwelling_meters')
@Index('dwelling_meters_by_meter', ['meter'])
export class DwellingMeterRow extends FromFile implements Omit<DwellingMeter, 'inventoryRow'> {
  @Key() @ForeignKey(() => DwellingRow) dwelling: string;
  @Key() @ForeignKey(() => MeterRow) meter: string;
}

export const keptDwellingMeters = keptWithPlace<DwellingMeter, DwellingMeterRow>(DwellingMeterRow);
