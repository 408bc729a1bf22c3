import { Controller, Get, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProperty, ApiPropertyOptional, ApiTags } from '@nestjs/swagger';
import { IsBoolean, IsOptional, IsString } from 'class-validator';
import { shadowLine, type ShadowLine, shadowQuestion } from '#planning';
import { PortfolioStore } from '#store';
import { ApiProblem } from '../problem/api-problem.js';
import { IsClockTime } from '../problem/is-day.js';
import { refusedAsProblem } from '../problem/refused.js';
import { SentFlag } from '../problem/sent-number.js';

export class ShadowQuery {
  @ApiProperty({ example: 'EC/007' })
  @IsString({ message: 'dwelling must be the id of a dwelling' })
  dwelling: string;

  @ApiProperty({ example: 'W03', description: 'mark of the window' })
  @IsString({ message: 'window must be the mark of a window' })
  window: string;

  @ApiProperty({ example: '2026-07-01T15:30', description: 'on the clock of the place' })
  @IsClockTime('at must be a time as YYYY-MM-DDTHH:MM')
  at: string;

  @ApiPropertyOptional({ default: false, description: 'that clock showed summer time' })
  @IsOptional()
  @SentFlag()
  @IsBoolean({ message: 'summerTime must be true or false' })
  summerTime?: boolean;
}

export class TurnedAnswer {
  @ApiProperty({ description: 'clockwise from true north' }) azimuth_deg: number;
  @ApiProperty({ type: Number, nullable: true }) down_mm: number | null;
}

/** Where the shadow should fall on the glass. */
export class ShadowAnswer implements Omit<ShadowLine, 'told'> {
  @ApiProperty() sunAltitude_deg: number;
  @ApiProperty() sunAzimuth_deg: number;
  @ApiProperty({ type: Number, nullable: true, description: 'height of the sun in the plane square to the wall; null with the sun behind it' }) profile_deg: number | null;
  @ApiProperty({ type: Number, nullable: true, description: 'from the top of the glass down, mm; null without sun on the wall' }) down_mm: number | null;
  @ApiProperty({ type: Number, nullable: true, description: 'from the side of the glass inwards, mm' }) across_mm: number | null;
  @ApiProperty({ type: String, nullable: true, enum: ['left', 'right', null], description: 'as seen from outside' }) side: 'left' | 'right' | null;
  @ApiProperty({ minimum: 0, maximum: 1 }) sunlitShare: number;
  @ApiProperty({ type: [TurnedAnswer], description: 'the same with the wall turned' }) ifTurned: readonly TurnedAnswer[];
  @ApiProperty({ description: 'in words, with sizes in inches' }) text: string;
}

@ApiTags('portfolio')
@Controller('api/shadow-line')
export class ShadowLineController {
  constructor(private readonly store: PortfolioStore) {}

  @Get()
  @ApiOperation({ summary: 'Where the shadow should fall on a window at the time of a photograph: finds wrong bearings and overhangs' })
  @ApiOkResponse({ type: ShadowAnswer })
  @ApiProblem(409, 'There is no portfolio yet')
  @ApiProblem(422, 'Dwelling, window or time cannot be used')
  async line(@Query() { dwelling, window, at, summerTime = false }: ShadowQuery): Promise<ShadowAnswer> {
    const portfolio = await this.store.load();
    const { sunAltitude_deg, sunAzimuth_deg, profile_deg, down_mm, across_mm, side, sunlitShare, ifTurned, text } = await refusedAsProblem(
      () => shadowLine(shadowQuestion(portfolio, { dwelling, mark: window, at, isSummerTime: summerTime })),
      { building: '/dwelling' },
    );
    return { sunAltitude_deg, sunAzimuth_deg, profile_deg, down_mm, across_mm, side, sunlitShare, ifTurned, text };
  }
}
