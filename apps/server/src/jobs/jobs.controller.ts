import { Controller, Get, Param } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { PortfolioStore } from '#store';
import { ApiProblem } from '../problem/api-problem.js';
import { ProblemException } from '../problem/problem.js';
import { JobAnswer, jobAnswer } from './job-answer.js';

@ApiTags('jobs')
@Controller('api/jobs')
export class JobsController {
  constructor(private readonly store: PortfolioStore) {}

  @Get()
  @ApiOperation({ summary: 'Long work, newest first' })
  @ApiOkResponse({ type: [JobAnswer] })
  async list(): Promise<JobAnswer[]> {
    return (await this.store.jobs()).map(jobAnswer);
  }

  @Get(':id')
  @ApiOperation({ summary: 'How far a job is, and where its result lies' })
  @ApiOkResponse({ type: JobAnswer })
  @ApiProblem(404)
  async one(@Param('id') id: string): Promise<JobAnswer> {
    const job = await this.store.loadJob(id);
    if (job === null) throw new ProblemException(404, `There is no job ${id}.`);
    return jobAnswer(job);
  }
}
