import type { Known, LedgerEntry } from '#calc';
import { Check, Entity, Index } from 'typeorm';
import { Day, Key, LongText, Text, WholeCents, blank } from '../columns.js';
import { FromFile } from '../inventory-place.js';
import { keptWithPlace } from '../kept-kind.js';

/** One line of the money already spoken for. Amounts below zero are credits. */
@Entity('ledger')
@Index('ledger_by_phase', ['ownerEntity', 'phase'])
@Check('ledger_kind', "kind IN ('quote', 'committed', 'invoiced', 'paid', 'stock')")
export class LedgerEntryRow extends FromFile implements Omit<LedgerEntry, 'inventoryRow'> {
  @Key() id: string;
  @Text() ownerEntity: string;
  @Text() phase: string;
  @Text() kind: LedgerEntry['kind'];
  @Day() day: string;
  @Day(blank) expires: Known<string>;
  @WholeCents() amount_cents: number;
  @WholeCents(blank) freight_cents: Known<number>;
  @WholeCents(blank) minimumOrder_cents: Known<number>;
  @Text(blank) film: Known<string>;
  @Text(blank) settles: Known<string>;
  @LongText(blank) note: Known<string>;
}

export const keptLedger = keptWithPlace<LedgerEntry, LedgerEntryRow>(LedgerEntryRow);
