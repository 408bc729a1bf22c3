import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { IsArray, IsNumber, IsOptional, IsString, Min, ValidateNested } from 'class-validator';
import type { RelaidPlan, RelaidRoll } from '#planning';
import { SentNumber } from '../problem/sent-number.js';

export class CutToQuery {
  @ApiProperty({ description: 'name of a roll of the plan’s cut list' })
  @IsString({ message: 'roll must be the name of a roll' })
  roll: string;

  @ApiProperty({ minimum: 0, example: 914.4, description: 'how far the roll has been run off, mm; nothing before it moves' })
  @SentNumber()
  @IsNumber({}, { message: 'cut_mm must be a length in mm' })
  @Min(0, { message: 'cut_mm must be 0 or more' })
  cut_mm: number;
}

export class RelayQuery {
  @ApiPropertyOptional({ type: () => [CutToQuery], description: 'opened rolls; a roll not named is whole. In a form: cutTo[0][roll], cutTo[0][cut_mm]' })
  @IsOptional()
  @IsArray({ message: 'cutTo must be a list' })
  @ValidateNested({ each: true })
  @Type(() => CutToQuery)
  cutTo?: CutToQuery[];
}

export class ReMeasuredAnswer {
  @ApiProperty({ example: 'EC/101/W01/1' }) pane: string;
  @ApiProperty() dwelling: string;
  @ApiProperty({ description: 'piece as planned, inches' }) planned: string;
  @ApiProperty({ description: 'piece the measured glass needs, inches' }) needed: string;
  @ApiProperty({ description: 'the planned piece still covers the glass and keeps its place' }) keeps: boolean;
}

export class RelaidRollAnswer {
  @ApiProperty() phase: string;
  @ApiProperty() film: string;
  @ApiProperty() roll: string;
  @ApiProperty({ description: 'straight cut before which nothing moved, mm' }) line_mm: number;
  @ApiProperty({ type: 'array', items: { type: 'object', additionalProperties: true }, description: 'every piece of the roll with its place, mm, and its cut size in inches' })
  pieces: RelaidRoll['pieces'];
  @ApiProperty({ type: [String], description: 'panes whose piece lies elsewhere than planned' }) moved: readonly string[];
  @ApiProperty({ description: 'left at the end of the roll, mm' }) left_mm: number;
  @ApiProperty({ type: 'object', additionalProperties: true, description: 'what a check apart from the cutting says of the layout' }) check: RelaidRoll['check'];
}

export class NoRoomAnswer {
  @ApiProperty() pane: string;
  @ApiProperty({ description: 'inches' }) size: string;
  @ApiProperty() why: string;
}

/** What field sizes make of the rolls of a plan. */
export class RelayAnswer implements RelaidPlan {
  @ApiProperty() plan: string;
  @ApiProperty({ type: [ReMeasuredAnswer] }) measured: readonly ReMeasuredAnswer[];
  @ApiProperty({ type: [RelaidRollAnswer], description: 'rolls laid out again; a roll not listed stays as planned' }) rolls: readonly RelaidRollAnswer[];
  @ApiProperty({ type: [NoRoomAnswer] }) unplaced: readonly NoRoomAnswer[];
  @ApiProperty({ type: [String], description: 'measured windows the plan does not cut' }) notInPlan: readonly string[];
}
