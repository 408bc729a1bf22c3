import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { IsIn, IsInt, IsOptional, IsString, Length, Max, Min, ValidateNested } from 'class-validator';
import type { View } from '#calc';
import type { Plan } from '#planning';
import type { PlanHeading } from '#store';
import type { PlanRequest } from '../work/plan-maker.js';

export class CapQuery {
  @ApiProperty({ example: 'OWNER1/2026-27', description: 'id of a phase of the portfolio' })
  @IsString()
  phase: string;

  @ApiProperty({ type: 'integer', example: 1400000, description: 'what may be spent in it, in cents' })
  @IsInt({ message: 'cap_cents must be a whole number of cents' })
  @Min(0, { message: 'cap_cents must be 0 or more' })
  cap_cents: number;
}

export class PlanQuery implements PlanRequest {
  @ApiPropertyOptional({ maxLength: 120 })
  @IsOptional()
  @IsString()
  @Length(1, 120, { message: 'name must have 1 to 120 characters' })
  name?: string;

  @ApiPropertyOptional({ enum: ['whole', 'owner'], description: 'whose money counts; as in the portfolio by default' })
  @IsOptional()
  @IsIn(['whole', 'owner'], { message: 'view must be whole or owner' })
  view?: View;

  @ApiPropertyOptional({ type: () => [CapQuery], description: 'caps of phases for this plan; phases not named keep theirs' })
  @IsOptional()
  @ValidateNested({ each: true })
  @Type(() => CapQuery)
  caps?: CapQuery[];

  @ApiPropertyOptional({ type: 'integer', default: 10, minimum: 1, maximum: 600, description: 'seconds the choice may take; what it reached is said with its bound' })
  @IsOptional()
  @IsInt({ message: 'timeLimit_s must be a whole number of seconds' })
  @Min(1, { message: 'timeLimit_s must be 1 or more' })
  @Max(600, { message: 'timeLimit_s must be 600 or less' })
  timeLimit_s?: number;
}

export class PlanHeadingAnswer {
  @ApiProperty() id: string;
  @ApiProperty() title: string;
  @ApiProperty({ type: 'integer' }) revision: number;
  @ApiProperty({ type: String, nullable: true }) parent: string | null;
  @ApiProperty({ format: 'date-time' }) made: string;
  @ApiProperty() programVersion: string;
  @ApiProperty({ description: 'hash of the portfolio it was made from' }) inputsHash: string;
  @ApiProperty({ description: 'SHA-256 of its content' }) hash: string;
  @ApiProperty() signed: boolean;
  @ApiProperty() self: string;
  @ApiProperty({ description: 'address of the workbook' }) workbook: string;
}

export class PlanAnswer {
  @ApiProperty() id: string;
  @ApiProperty() self: string;
  @ApiProperty() workbook: string;
  @ApiProperty({ type: 'object', additionalProperties: true, description: 'the whole plan: lines, phases, proof, ranks, cuts, work orders, payback, assumptions, findings' })
  plan: Plan;
}

export const planAddress = (id: string): string => `/api/plans/${encodeURIComponent(id)}`;

export function planHeadingAnswer(heading: PlanHeading): PlanHeadingAnswer {
  const self = planAddress(heading.id);
  return { ...heading, self, workbook: `${self}/workbook` };
}
