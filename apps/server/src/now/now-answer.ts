import { ApiProperty } from '@nestjs/swagger';
import { Transform } from 'class-transformer';
import { ArrayMaxSize, ArrayNotEmpty, IsArray, IsNumber, IsPositive, IsString, Max } from 'class-validator';
import type { NowAnswer, NowUse } from '#planning';
import { SentNumber } from '../problem/sent-number.js';

const MOST_DWELLINGS = 50;
const MOST_HOURS = 200;

export class NowQuery {
  @ApiProperty({ maximum: MOST_HOURS, example: 3, description: 'hours of the crew, h; above 0' })
  @SentNumber()
  @IsNumber({}, { message: 'hours must be a number' })
  @IsPositive({ message: 'hours must be above 0' })
  @Max(MOST_HOURS, { message: `hours must be ${MOST_HOURS} or less` })
  hours: number;

  @ApiProperty({ type: [String], maxItems: MOST_DWELLINGS, example: ['EC/101', 'EC/104'], description: 'dwellings that are open; in a form apart by commas' })
  @Transform(({ value }: { value: unknown }) => (typeof value === 'string' ? value.split(',').map((id) => id.trim()).filter((id) => id !== '') : value))
  @IsArray({ message: 'dwellings must be a list of ids' })
  @ArrayNotEmpty({ message: 'dwellings must name one or more' })
  @ArrayMaxSize(MOST_DWELLINGS, { message: `dwellings must be ${MOST_DWELLINGS} or less` })
  @IsString({ each: true, message: 'dwellings must be a list of ids' })
  dwellings: string[];
}

export class NowUseAnswer {
  @ApiProperty({ type: 'array', items: { type: 'object', additionalProperties: true }, description: 'one option of each dwelling: film, panes, person-minutes from low to high, cooling cost cut in cents a year' })
  options: NowUse['options'];
  @ApiProperty({ description: 'person-minutes' }) minutes: number;
  @ApiProperty({ description: 'net present value of all payers, cents; the film on the shelf counts as paid' }) value_cents: number;
  @ApiProperty({ type: 'array', items: { type: 'object', additionalProperties: true }, description: 'how the film on the shelf is cut for it' }) cuts: NowUse['cuts'];
}

/** The best uses of some hours, best first. */
export class NowAnswerBody implements NowAnswer {
  @ApiProperty({ description: 'person-minutes at the glass, once loading, parking and keys are taken off' }) personMinutes: number;
  @ApiProperty({ type: [NowUseAnswer] }) uses: readonly NowUseAnswer[];
  @ApiProperty({ type: String, nullable: true, description: 'why there is no use' }) why: string | null;
}
