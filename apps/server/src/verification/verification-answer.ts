import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { IsOptional, IsString } from 'class-validator';
import type { MeterFit, VerifyReview } from '#planning';

export class VerificationQuery {
  @ApiPropertyOptional({ description: 'the plan the work was done by; the newest by default' })
  @IsOptional()
  @IsString()
  plan?: string;
}

export class MeterFitQuery {
  @ApiPropertyOptional({ description: 'one meter' })
  @IsOptional()
  @IsString()
  meter?: string;
}

/** A figure with the ends of its interval. */
export class IntervalAnswer {
  @ApiProperty() low: number;
  @ApiProperty() middle: number;
  @ApiProperty() high: number;
}

/** Did it pay: the answer in words, its interval, and what was learned. */
export class VerificationAnswer {
  @ApiProperty({ type: String, nullable: true, description: 'the plan it is held against' }) plan: string | null;
  @ApiProperty({ enum: ['use fell', 'cannot be told from these bills', 'use rose'] }) answer: string;
  @ApiProperty() words: string;
  @ApiProperty({ type: IntervalAnswer, nullable: true, description: 'share of use saved on the filmed meters, less the comparison; 80 % interval' }) savingShare: IntervalAnswer | null;
  @ApiProperty({ type: IntervalAnswer, nullable: true, description: 'kWh a year of the filmed meters' }) yearly_kWh: IntervalAnswer | null;
  @ApiProperty({ type: IntervalAnswer, nullable: true, description: 'measured over modelled saving' }) realisation: IntervalAnswer | null;
  @ApiProperty({ type: [String], description: 'what to mind' }) cautions: readonly string[];
  @ApiProperty({ type: [String], description: 'what the next phase takes from it, rule by rule' }) learned: readonly string[];
  @ApiProperty({ type: Object, description: 'every meter, building and figure' }) review: VerifyReview;
}

export function verificationAnswer(review: VerifyReview): VerificationAnswer {
  const { verification } = review;
  const { saving, realisation } = verification;
  return {
    plan: review.plan,
    answer: verification.answer,
    words: verification.words,
    savingShare: 'why' in saving ? null : { low: saving.low, middle: saving.share, high: saving.high },
    yearly_kWh: verification.yearly_kWh,
    realisation: realisation === null ? null : { low: realisation.low, middle: realisation.factor, high: realisation.high },
    cautions: verification.cautions,
    learned: review.learned.words,
    review,
  };
}

/** The split of one meter. */
export class MeterFitAnswer {
  @ApiProperty() meter: string;
  @ApiProperty() building: string;
  @ApiProperty({ type: Object, description: 'base load, cooling and heating of a typical year with standard errors and the model they come from; or why there is none' }) split: MeterFit['split'];
  @ApiProperty({ description: 'which weather the bills were held against' }) weather: string;
  @ApiProperty({ type: [Object], description: 'bills used' }) used: MeterFit['used'];
  @ApiProperty({ type: [Object], description: 'bills left out, with the reason' }) leftOut: MeterFit['leftOut'];
}
