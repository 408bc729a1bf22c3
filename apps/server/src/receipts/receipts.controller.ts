import { basename, join } from 'node:path';
import { Controller, Get, Optional, Param } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiProperty, ApiTags } from '@nestjs/swagger';
import { PlanningService, type Receipt, receiptFigures } from '#planning';
import { PortfolioStore } from '#store';
import { workerPool } from '#workers';
import { KeptPlans } from '../plans/kept-plans.js';
import { ApiProblem } from '../problem/api-problem.js';
import { ProblemException } from '../problem/problem.js';
import { WeatherPlace } from '../verification/weather-place.js';

export class ReceiptFigureAnswer {
  @ApiProperty({ example: 'plan/npv' }) id: string;
  @ApiProperty() title: string;
}

@ApiTags('plans')
@ApiProblem(404, 'There is no such plan, or no such figure')
@Controller('api/plans')
export class ReceiptsController {
  constructor(
    private readonly store: PortfolioStore,
    private readonly plans: KeptPlans,
    @Optional() private readonly place?: WeatherPlace,
  ) {}

  @Get(':id/receipts')
  @ApiOperation({ summary: 'Figures of a plan that open to one page' })
  @ApiOkResponse({ type: [ReceiptFigureAnswer] })
  async list(@Param('id') id: string): Promise<ReceiptFigureAnswer[]> {
    return receiptFigures((await this.plans.plan(id)).body).map(({ id: figure, title }) => ({ id: figure, title }));
  }

  @Get(':id/receipts/:figure')
  @ApiOperation({ summary: 'One figure: formula, numbers, rows, sources, and the input of the kernel that gives the same digits' })
  @ApiParam({ name: 'figure', example: 'plan/npv', description: 'id of the figure, its slashes written as %2F' })
  @ApiOkResponse({ schema: { type: 'object', additionalProperties: true } })
  async one(@Param('id') id: string, @Param('figure') figure: string): Promise<Receipt> {
    const { body } = await this.plans.plan(id);
    const pool = workerPool();
    try {
      // Only the name of a weather file counts: a survey must not point at other files of this machine.
      const receipt = await new PlanningService(pool, this.store).receipt(body, figure, (file) => join(this.place?.folder ?? '.', basename(file)));
      if ('nearest' in receipt) throw new ProblemException(404, `There is no figure ${figure} in plan ${id}; nearest: ${receipt.nearest.join(', ')}.`);
      return receipt;
    } finally {
      await pool.end();
    }
  }
}
