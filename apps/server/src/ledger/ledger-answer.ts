import { ApiProperty } from '@nestjs/swagger';
import type { LedgerReport } from '#planning';

export class PhaseLedgerAnswer {
  @ApiProperty() ownerEntity: string;
  @ApiProperty() phase: string;
  @ApiProperty({ type: 'integer', nullable: true }) cap_cents: number | null;
  @ApiProperty({ type: 'integer', description: 'quotes that still hold; they bind nobody' }) quoted_cents: number;
  @ApiProperty({ type: 'integer' }) expiredQuotes_cents: number;
  @ApiProperty({ type: 'integer' }) committed_cents: number;
  @ApiProperty({ type: 'integer' }) invoiced_cents: number;
  @ApiProperty({ type: 'integer' }) paid_cents: number;
  @ApiProperty({ type: 'integer', description: 'ordered or invoiced and not yet paid' }) open_cents: number;
  @ApiProperty({ type: 'integer' }) stock_cents: number;
  @ApiProperty({ type: 'integer', nullable: true, description: 'cap less paid less open' }) remaining_cents: number | null;
}

export class QuoteAnswer {
  @ApiProperty() id: string;
  @ApiProperty() phase: string;
  @ApiProperty({ type: 'integer' }) amount_cents: number;
  @ApiProperty({ type: 'integer', nullable: true }) freight_cents: number | null;
  @ApiProperty({ type: 'integer', nullable: true }) minimumOrder_cents: number | null;
  @ApiProperty({ type: String, nullable: true, format: 'date' }) expires: string | null;
  @ApiProperty({ enum: ['open', 'expired', 'taken up'] }) state: 'open' | 'expired' | 'taken up';
}

export class StockRollAnswer {
  @ApiProperty() roll: string;
  @ApiProperty() width_mm: number;
  @ApiProperty() length_mm: number;
  @ApiProperty({ type: 'integer' }) count: number;
}

export class StockAnswer {
  @ApiProperty() film: string;
  @ApiProperty({ type: String, nullable: true }) ownerEntity: string | null;
  @ApiProperty({ type: 'integer' }) worth_cents: number;
  @ApiProperty({ type: [StockRollAnswer] }) rolls: StockRollAnswer[];
}

export class LedgerFindingAnswer {
  @ApiProperty({ enum: ['error', 'warning', 'note'] }) severity: 'error' | 'warning' | 'note';
  @ApiProperty() subject: string;
  @ApiProperty() text: string;
  @ApiProperty() whatToDo: string;
}

/** Money already spoken for, as it stands on a day. */
export class LedgerAnswer {
  @ApiProperty({ format: 'date' }) on: string;
  @ApiProperty({ type: [PhaseLedgerAnswer] }) phases: PhaseLedgerAnswer[];
  @ApiProperty({ type: [QuoteAnswer] }) quotes: QuoteAnswer[];
  @ApiProperty({ type: [StockAnswer] }) stock: StockAnswer[];
  @ApiProperty({ type: [LedgerFindingAnswer] }) findings: LedgerFindingAnswer[];
}

export function ledgerAnswer({ on, phases, quotes, stock, findings }: LedgerReport): LedgerAnswer {
  return {
    on,
    phases: phases.map((each) => ({ ...each })),
    quotes: quotes.map((each) => ({ ...each })),
    stock: stock.map((each) => ({ ...each, rolls: each.rolls.map((roll) => ({ ...roll })) })),
    findings: findings.map((each) => ({ ...each })),
  };
}
