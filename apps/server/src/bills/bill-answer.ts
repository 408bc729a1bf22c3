import { ApiProperty } from '@nestjs/swagger';
import type { Bill, UsableBills } from '#calc';

export class BillAnswer {
  @ApiProperty() meter: string;
  @ApiProperty({ format: 'date', description: 'both days are included' }) firstDay: string;
  @ApiProperty({ format: 'date' }) lastDay: string;
  @ApiProperty({ description: 'as it was sent; below zero is kept and said' }) use_kWh: number;
  @ApiProperty({ type: Number, nullable: true }) peak_kW: number | null;
  @ApiProperty({ type: 'integer', nullable: true }) amount_cents: number | null;
  @ApiProperty({ description: 'nobody read the meter' }) estimated: boolean;
  @ApiProperty({ description: 'whether it may be compared with the weather' }) used: boolean;
  @ApiProperty({ type: String, nullable: true, description: 'why it may not' }) why: string | null;
}

export class BillGapAnswer {
  @ApiProperty() meter: string;
  @ApiProperty({ format: 'date' }) firstDay: string;
  @ApiProperty({ format: 'date' }) lastDay: string;
  @ApiProperty({ type: 'integer', description: 'days no bill covers; nothing is filled in' }) days: number;
}

/** Bills kept, with what may be used of them. */
export class BillsAnswer {
  @ApiProperty({ type: [BillAnswer] }) bills: BillAnswer[];
  @ApiProperty({ type: [BillGapAnswer] }) gaps: BillGapAnswer[];
}

export function billsAnswer(bills: readonly Bill[], usable: UsableBills): BillsAnswer {
  const why = new Map(usable.leftOut.map((out) => [out.bill, out.why]));
  return {
    bills: bills.map((bill) => {
      const { meter, firstDay, lastDay, use_kWh, peak_kW, amount_cents, estimated } = bill;
      return { meter, firstDay, lastDay, use_kWh, peak_kW, amount_cents, estimated, used: !why.has(bill), why: why.get(bill) ?? null };
    }),
    gaps: usable.gaps.map((gap) => ({ ...gap })),
  };
}
