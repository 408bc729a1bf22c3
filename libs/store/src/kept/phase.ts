import type { Known, Phase } from '#calc';
import { Check, Entity, Index } from 'typeorm';
import { Day, Key, Text, Whole, WholeCents, blank } from '../columns.js';
import { keptAsItIs, type KeptKind } from '../kept-kind.js';

/** A fiscal year of an owner entity with its cap. */
@Entity('phases')
@Index('phases_by_owner', ['ownerEntity', 'firstDay'])
@Check('phases_cap', 'cap_cents >= 0')
@Check('phases_days', 'last_day >= first_day')
export class PhaseRow implements Phase {
  @Key() id: string;
  @Text() ownerEntity: string;
  @Text() name: string;
  @Day() firstDay: string;
  @Day() lastDay: string;
  @WholeCents() cap_cents: number;
  @Whole(blank) crewMinutes: Known<number>;
}

export const keptPhases: KeptKind<Phase, PhaseRow> = keptAsItIs(PhaseRow);
