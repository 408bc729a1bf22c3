import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { IsArray, IsIn, IsInt, IsOptional, IsString, Length, Max, Min, NotEquals, ValidateNested } from 'class-validator';
import type { View } from '#calc';
import type { CutRule, LotRule, Plan } from '#planning';
import type { PlanHeading } from '#store';
import type { PlanRequest } from '../work/plan-maker.js';

/** Ten thousand million dollars: above it is a slip of the hand. */
const MOST_CENTS = 1e12;

export class CapQuery {
  @ApiProperty({ example: 'OWNER1/2026-27', description: 'id of a phase of the portfolio' })
  @IsString()
  phase: string;

  @ApiProperty({ type: 'integer', example: 1400000, description: 'what may be spent in it, in cents' })
  @IsInt({ message: 'cap_cents must be a whole number of cents' })
  @Min(0, { message: 'cap_cents must be 0 or more' })
  @Max(MOST_CENTS, { message: `cap_cents must be ${MOST_CENTS} or less` })
  cap_cents: number;
}

/** Beyond it whole numbers run together. */
const MOST_SEED = Number.MAX_SAFE_INTEGER;

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
  @IsArray({ message: 'caps must be a list' })
  @ValidateNested({ each: true })
  @Type(() => CapQuery)
  caps?: CapQuery[];

  @ApiPropertyOptional({ type: 'integer', minimum: 0, description: 'one cap for each owner in place of all phases, cents' })
  @IsOptional()
  @IsInt({ message: 'oneCap_cents must be a whole number of cents' })
  @Min(0, { message: 'oneCap_cents must be 0 or more' })
  @Max(MOST_CENTS, { message: `oneCap_cents must be ${MOST_CENTS} or less` })
  oneCap_cents?: number;

  @ApiPropertyOptional({ type: 'integer', default: 10, minimum: 1, maximum: 600, description: 'seconds the choice may take; what it reached is said with its bound' })
  @IsOptional()
  @IsInt({ message: 'timeLimit_s must be a whole number of seconds' })
  @Min(1, { message: 'timeLimit_s must be 1 or more' })
  @Max(600, { message: 'timeLimit_s must be 600 or less' })
  timeLimit_s?: number;

  @ApiPropertyOptional({ type: 'integer', default: 200, minimum: 0, maximum: 10000, description: 'draws of what is not known; 0 for none, and then the plan says nothing of its chances' })
  @IsOptional()
  @IsInt({ message: 'draws must be a whole number' })
  @Min(0, { message: 'draws must be 0 or more' })
  @NotEquals(1, { message: 'draws must be 0 or 2 and more' })
  @Max(10_000, { message: 'draws must be 10000 or less' })
  draws?: number;

  @ApiPropertyOptional({ type: 'integer', default: 1, description: 'seed of the draws: the same seed, the same draws' })
  @IsOptional()
  @IsInt({ message: 'seed must be a whole number' })
  @Min(-MOST_SEED, { message: `seed must be −${MOST_SEED} to ${MOST_SEED}` })
  @Max(MOST_SEED, { message: `seed must be −${MOST_SEED} to ${MOST_SEED}` })
  seed?: number;

  @ApiPropertyOptional({ type: 'integer', minimum: 1, maximum: 3600, description: 'go on until the choice is proved, for up to so many seconds' })
  @IsOptional()
  @IsInt({ message: 'prove_s must be a whole number of seconds' })
  @Min(1, { message: 'prove_s must be 1 or more' })
  @Max(3600, { message: 'prove_s must be 3600 or less' })
  prove_s?: number;

  @ApiPropertyOptional({ enum: ['middle', 'nine-in-ten'], default: 'middle', description: 'what the choice aims at: the middle, or the plan of which nine draws in ten reach most' })
  @IsOptional()
  @IsIn(['middle', 'nine-in-ten'], { message: 'aim must be middle or nine-in-ten' })
  aim?: 'middle' | 'nine-in-ten';

  @ApiPropertyOptional({ enum: ['pooled', 'dwelling together', 'crew order'], default: 'pooled', description: 'how the pieces of a phase share its rolls: pooled takes the least film' })
  @IsOptional()
  @IsIn(['pooled', 'dwelling together', 'crew order'], { message: 'cutRule must be pooled, dwelling together or crew order' })
  cutRule?: CutRule;

  @ApiPropertyOptional({ enum: ['one lot an elevation', 'any lot'], default: 'one lot an elevation', description: 'whether a side of a building may be cut from film of several lots' })
  @IsOptional()
  @IsIn(['one lot an elevation', 'any lot'], { message: 'lotRule must be one lot an elevation or any lot' })
  lotRule?: LotRule;

  @ApiPropertyOptional({ description: 'id of a kept plan to follow as a new revision: done work stands and is paid, the rest is planned again around what was recorded' })
  @IsOptional()
  @IsString()
  replan?: string;
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
