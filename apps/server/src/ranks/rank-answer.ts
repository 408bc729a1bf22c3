import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { IsInt, IsOptional, IsString, Max, Min } from 'class-validator';

/** A dwelling in the asked order: yearly cooling-cost reduction per dollar of installed film. */
export class RankAnswer {
  @ApiProperty({ type: 'integer' }) rank: number;
  @ApiProperty({ description: 'dwellings of one band cannot be told apart; A is best' }) band: string;
  @ApiProperty({ example: 'EC/007' }) dwelling: string;
  @ApiProperty() building: string;
  @ApiProperty({ description: 'the option it ranks by: dwelling, facades, film' }) option: string;
  @ApiProperty({ description: 'yearly cooling-cost reduction per dollar of installed film, 1/yr' }) perDollar: number;
  @ApiProperty() perDollarLow: number;
  @ApiProperty() perDollarHigh: number;
  @ApiProperty({ description: 'cents' }) yearlyCooling_cents: number;
  @ApiProperty({ description: 'cents' }) cost_cents: number;
  @ApiProperty({ type: Number, nullable: true }) simplePayback_yr: number | null;
  @ApiProperty({ type: String, nullable: true, description: 'why there is no payback' }) paybackWhy: string | null;
  @ApiProperty({ description: 'the reason in one sentence' }) reason: string;
  @ApiProperty({ description: 'the phase it is planned in, or why it is not' }) inPlan: string;
  @ApiProperty({ type: String, nullable: true, description: 'why rank and plan differ' }) differs: string | null;
}

/** A facade of a dwelling in the same order. */
export class FacadeRankAnswer extends RankAnswer {
  @ApiProperty({ description: 'clockwise from true north' }) azimuth_deg: number;
}

class RankPage {
  @ApiProperty({ description: 'the plan the ranks belong to' }) plan: string;
  @ApiProperty({ type: 'integer', description: 'lines in all' }) total: number;
  @ApiProperty({ type: String, nullable: true, description: 'address of the next page' }) next: string | null;
}

export class DwellingRankPage extends RankPage {
  @ApiProperty({ type: [RankAnswer] }) items: RankAnswer[];
}

export class FacadeRankPage extends RankPage {
  @ApiProperty({ type: [FacadeRankAnswer] }) items: FacadeRankAnswer[];
}

export class RankQuery {
  @ApiPropertyOptional({ description: 'a kept plan; the newest by default' })
  @IsOptional()
  @IsString()
  plan?: string;

  @ApiPropertyOptional({ type: 'integer', default: 100, minimum: 1, maximum: 1000 })
  @IsOptional()
  @Type(() => Number)
  @IsInt({ message: 'limit must be a whole number' })
  @Min(1, { message: 'limit must be 1 or more' })
  @Max(1000, { message: 'limit must be 1000 or less' })
  limit?: number;

  @ApiPropertyOptional({ type: 'integer', default: 0, description: 'show lines after this one; a page names the next page itself' })
  @IsOptional()
  @Type(() => Number)
  @IsInt({ message: 'after must be a whole number' })
  @Min(0, { message: 'after must be 0 or more' })
  after?: number;
}
