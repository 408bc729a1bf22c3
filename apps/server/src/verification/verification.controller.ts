import { basename, join } from 'node:path';
import { Controller, Get, Optional, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { type BillsJob, billsJobOf, fitBills, verifyPlan } from '#planning';
import { PortfolioStore } from '#store';
import { KeptPlans } from '../plans/kept-plans.js';
import { ApiProblem } from '../problem/api-problem.js';
import { ProblemException } from '../problem/problem.js';
import { MeterFitAnswer, MeterFitQuery, VerificationAnswer, verificationAnswer, VerificationQuery } from './verification-answer.js';
import { WeatherPlace } from './weather-place.js';

@ApiTags('bills')
@ApiProblem(409, 'There is no portfolio yet')
@Controller('api/verification')
export class VerificationController {
  constructor(
    private readonly store: PortfolioStore,
    private readonly plans: KeptPlans,
    @Optional() private readonly place?: WeatherPlace,
  ) {}

  @Get()
  @ApiOperation({ summary: 'Did it pay: bills after the film against bills before, beside meters without film' })
  @ApiOkResponse({ type: VerificationAnswer })
  @ApiProblem(404, 'The plan named is not kept')
  async verification(@Query() { plan }: VerificationQuery): Promise<VerificationAnswer> {
    const job = await this.#job();
    const kept = plan === undefined && (await this.plans.headings()).length === 0 ? null : await this.plans.whole(plan);
    return verificationAnswer(verifyPlan(job, kept));
  }

  @Get('meters')
  @ApiOperation({ summary: 'Each meter with bills split into base load, cooling and heating, from before any film' })
  @ApiOkResponse({ type: [MeterFitAnswer] })
  @ApiProblem(404, 'There is no such meter')
  async meters(@Query() { meter: wanted }: MeterFitQuery): Promise<MeterFitAnswer[]> {
    const job = await this.#job();
    if (wanted !== undefined && !job.portfolio.meters.some(({ id }) => id === wanted)) throw new ProblemException(404, `There is no meter ${wanted}.`);
    const bills = job.portfolio.bills.filter(({ meter }) => wanted === undefined || meter === wanted);
    return fitBills({ ...job, portfolio: { ...job.portfolio, bills } }).map(({ meter, building, split, weather, used, leftOut }) => ({ meter, building, split, weather, used, leftOut }));
  }

  async #job(): Promise<BillsJob> {
    const portfolio = await this.store.find();
    if (portfolio === null) throw new ProblemException(409, 'There is no portfolio yet; POST /api/imports takes one in.');
    return billsJobOf(portfolio, (file) => join(this.place?.folder ?? '.', basename(file)));
  }
}
