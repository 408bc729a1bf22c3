import { ApiProperty } from '@nestjs/swagger';
import type { DwellingReason, PhasePrice, ReserveLine } from '#planning';

export class ExplainAnswer {
  @ApiProperty({ description: 'id of the plan' }) plan: string;
  @ApiProperty({ type: 'object', additionalProperties: true, description: 'why it is in the plan or not, what would have to be true for it to enter, and its ways at the prices of the plan' })
  reason: DwellingReason;
  @ApiProperty({ type: 'object', additionalProperties: true, nullable: true, description: 'its place among the next best lines, or null' })
  reserve: ReserveLine | null;
  @ApiProperty({ type: 'array', items: { type: 'object', additionalProperties: true }, description: 'value of the next dollar and person-hour, by phase' })
  prices: readonly PhasePrice[];
}
