import { Controller, Get, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiPropertyOptional, ApiTags } from '@nestjs/swagger';
import { IsOptional } from 'class-validator';
import { ledgerReport } from '#planning';
import { PortfolioStore } from '#store';
import { Edge } from '../edge.js';
import { ApiProblem } from '../problem/api-problem.js';
import { IsDay } from '../problem/is-day.js';
import { LedgerAnswer, ledgerAnswer } from './ledger-answer.js';

export class LedgerQuery {
  @ApiPropertyOptional({ format: 'date', description: 'the day on which quotes are looked at; today if left out' })
  @IsOptional()
  @IsDay('on must be a day as year-month-day')
  on?: string;
}

@ApiTags('ledger')
@Controller('api/ledger')
export class LedgerController {
  constructor(
    private readonly store: PortfolioStore,
    private readonly edge: Edge,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Money already spoken for by owner entity and fiscal year, and what the caps still leave' })
  @ApiOkResponse({ type: LedgerAnswer })
  @ApiProblem(422, 'The day cannot be read')
  async read(@Query() { on }: LedgerQuery): Promise<LedgerAnswer> {
    const kept = await this.store.find();
    return ledgerAnswer(ledgerReport(kept ?? { ledger: [], phases: [], rolls: [] }, on ?? this.edge.now().slice(0, 10)));
  }
}
