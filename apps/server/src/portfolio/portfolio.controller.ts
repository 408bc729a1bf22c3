import { Controller, Get, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProperty, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { PortfolioStore, type StoreContents } from '#store';
import { portfolioTag } from './if-match.js';

export class PortfolioAnswer {
  @ApiProperty({ type: String, nullable: true, description: 'null before the first import' }) name: string | null;
  @ApiProperty({ type: String, nullable: true, example: 'USD' }) currency: string | null;
  @ApiProperty({ type: String, nullable: true, format: 'date' }) studyStart: string | null;
  @ApiProperty({ description: 'grows with every change of the portfolio' }) portfolioRevision: number;
  @ApiProperty({ type: 'object', additionalProperties: { type: 'integer' }, example: { buildings: 6, dwellings: 118, windows: 804 } })
  counts: StoreContents['counts'];
}

@ApiTags('portfolio')
@Controller('api/portfolio')
export class PortfolioController {
  constructor(private readonly store: PortfolioStore) {}

  @Get()
  @ApiOperation({ summary: 'What is in the database' })
  @ApiOkResponse({ type: PortfolioAnswer, headers: { ETag: { description: 'the state of the portfolio, for If-Match', schema: { type: 'string' } } } })
  async contents(@Res({ passthrough: true }) response: Response): Promise<PortfolioAnswer> {
    const { settings, counts, portfolioRevision } = await this.store.contents();
    response.setHeader('ETag', portfolioTag(portfolioRevision));
    return { name: settings?.name ?? null, currency: settings?.currency ?? null, studyStart: settings?.studyStart ?? null, portfolioRevision, counts };
  }
}
