import { Controller, Delete, Get, Param } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { PortfolioStore } from '#store';
import { ApiProblem } from '../problem/api-problem.js';
import { ProblemException } from '../problem/problem.js';
import { JobAnswer, jobAnswer } from './job-answer.js';
import { JobRunner } from './job-runner.js';

@ApiTags('jobs')
@Controller('api/jobs')
export class JobsController {
  constructor(
    private readonly store: PortfolioStore,
    private readonly runner: JobRunner,
  ) {}

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

  @Delete(':id')
  @ApiOperation({ summary: 'Stop a job that waits or is under way', description: 'Answers when it has ended: its state is then failed, and why says that it was stopped. A plan that was kept before stays.' })
  @ApiOkResponse({ type: JobAnswer })
  @ApiProblem(404)
  @ApiProblem(409, 'It has ended already')
  async stop(@Param('id') id: string): Promise<JobAnswer> {
    if ((await this.store.loadJob(id)) === null) throw new ProblemException(404, `There is no job ${id}.`);
    const stopped = await this.runner.stop(id);
    if (stopped === null) throw new ProblemException(409, `Job ${id} has ended already.`);
    return jobAnswer(stopped);
  }
}
