import { Controller, Get } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProperty, ApiTags } from '@nestjs/swagger';
import { PortfolioStore, type StoreContents } from '#store';

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
  @ApiOkResponse({ type: PortfolioAnswer })
  async contents(): Promise<PortfolioAnswer> {
    const { settings, counts, portfolioRevision } = await this.store.contents();
    return { name: settings?.name ?? null, currency: settings?.currency ?? null, studyStart: settings?.studyStart ?? null, portfolioRevision, counts };
  }
}
