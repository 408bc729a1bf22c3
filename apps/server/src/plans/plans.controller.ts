import { Body, Controller, Get, HttpCode, Param, Post, Res, StreamableFile } from '@nestjs/common';
import { ApiAcceptedResponse, ApiHeader, ApiOkResponse, ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { JobAnswer, jobAnswer, jobAddress } from '../jobs/job-answer.js';
import { ApiProblem } from '../problem/api-problem.js';
import { WorkbookMaker } from '../work/plan-maker.js';
import { IdempotencyKey } from './idempotency-key.js';
import { KeptPlans } from './kept-plans.js';
import { planAddress, PlanAnswer, PlanHeadingAnswer, planHeadingAnswer, PlanQuery } from './plan-answer.js';
import { PlanOrders } from './plan-orders.js';

const WORKBOOK = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

@ApiTags('plans')
@Controller('api/plans')
export class PlansController {
  constructor(
    private readonly orders: PlanOrders,
    private readonly plans: KeptPlans,
    private readonly workbooks: WorkbookMaker,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Kept plans, newest first' })
  @ApiOkResponse({ type: [PlanHeadingAnswer] })
  async list(): Promise<PlanHeadingAnswer[]> {
    return (await this.plans.headings()).map(planHeadingAnswer);
  }

  @Post()
  @HttpCode(202)
  @ApiOperation({ summary: 'Make a plan', description: 'Answers at once with a job; ask the job until it is done, then it names the plan.' })
  @ApiHeader({ name: 'Idempotency-Key', required: false, description: 'the same key and body again give the job of the first time' })
  @ApiAcceptedResponse({ type: JobAnswer, headers: { Location: { description: 'the job', schema: { type: 'string' } } } })
  @ApiProblem(409, 'There is no portfolio yet')
  @ApiProblem(422, 'A phase or plan that is not there, a value out of range, or a key sent with another request before')
  async make(@Body() query: PlanQuery, @IdempotencyKey() key: string | undefined, @Res({ passthrough: true }) response: Response): Promise<JobAnswer> {
    const job = await this.orders.order(query, key);
    response.setHeader('Location', jobAddress(job.id));
    response.setHeader('Retry-After', '1');
    return jobAnswer(job);
  }

  @Get(':id')
  @ApiOperation({ summary: 'A kept plan, whole' })
  @ApiOkResponse({ type: PlanAnswer })
  @ApiProblem(404)
  async one(@Param('id') id: string): Promise<PlanAnswer> {
    const self = planAddress(id);
    return { id, self, workbook: `${self}/workbook`, plan: (await this.plans.plan(id)).body };
  }

  @Post(':id/sign')
  @HttpCode(200)
  @ApiOperation({ summary: 'Sign a plan: it stands as the plan of record and is only followed by a new revision' })
  @ApiOkResponse({ type: PlanHeadingAnswer })
  @ApiProblem(404)
  @ApiProblem(409, 'It is signed already')
  async sign(@Param('id') id: string): Promise<PlanHeadingAnswer> {
    return planHeadingAnswer(await this.plans.sign(id));
  }

  @Get(':id/workbook')
  @ApiOperation({ summary: 'The rollout workbook of a plan' })
  @ApiProduces(WORKBOOK)
  @ApiOkResponse({ content: { [WORKBOOK]: { schema: { type: 'string', format: 'binary' } } } })
  @ApiProblem(404)
  async workbook(@Param('id') id: string): Promise<StreamableFile> {
    const { body } = await this.plans.plan(id);
    const bytes = await this.workbooks.workbook(body);
    return new StreamableFile(bytes, { type: WORKBOOK, disposition: `attachment; filename="rollout-${id.replace(/[^\w.-]/g, '_')}.xlsx"` });
  }
}
