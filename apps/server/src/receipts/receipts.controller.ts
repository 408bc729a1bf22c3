import { Controller, Get, Param } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiProperty, ApiTags } from '@nestjs/swagger';
import { type Receipt, receiptFigures } from '#planning';
import { KeptPlans } from '../plans/kept-plans.js';
import { ApiProblem } from '../problem/api-problem.js';
import { OpenReceipts } from './open-receipts.js';

export class ReceiptFigureAnswer {
  @ApiProperty({ example: 'plan/npv' }) id: string;
  @ApiProperty() title: string;
}

@ApiTags('plans')
@ApiProblem(404, 'There is no such plan, or no such figure')
@Controller('api/plans')
export class ReceiptsController {
  constructor(
    private readonly plans: KeptPlans,
    private readonly receipts: OpenReceipts,
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
    return this.receipts.open(await this.plans.plan(id), figure);
  }
}
