import type { Consent, Known } from '#calc';
import { Check, Entity, ForeignKey, Index } from 'typeorm';
import { Day, Key, Text, blank } from '../columns.js';
import { FromFile } from '../inventory-place.js';
import { keptWithPlace } from '../kept-kind.js';
import { BuildingRow } from './building.js';

/** A letter or test that must be there before film goes on. */
@Entity('consents')
@Index('consents_by_building', ['building', 'glazing', 'film'])
@Check('consents_state', "state IN ('not-needed', 'needed', 'asked', 'given', 'refused')")
export class ConsentRow extends FromFile implements Omit<Consent, 'inventoryRow'> {
  @Key() id: string;
  @Text() @ForeignKey(() => BuildingRow) building: string;
  @Text() kind: string;
  @Text(blank) glazing: Known<string>;
  @Text(blank) film: Known<string>;
  @Text({ blank: true, name: 'window_id' }) window: Known<string>;
  @Text() state: Consent['state'];
  @Day(blank) date: Known<string>;
  @Text(blank) reference: Known<string>;
}

export const keptConsents = keptWithPlace<Consent, ConsentRow>(ConsentRow);
