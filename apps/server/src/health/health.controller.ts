import { Controller, Get } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProperty, ApiTags } from '@nestjs/swagger';
import { PortfolioStore } from '#store';
import { ApiProblem } from '../problem/api-problem.js';
import { ProblemException } from '../problem/problem.js';

export class HealthAnswer {
  @ApiProperty({ enum: ['up'] }) status: 'up';
}

@ApiTags('health')
@Controller('api/health')
export class HealthController {
  constructor(private readonly store: PortfolioStore) {}

  @Get('live')
  @ApiOperation({ summary: 'The server answers' })
  @ApiOkResponse({ type: HealthAnswer })
  live(): HealthAnswer {
    return { status: 'up' };
  }

  @Get('ready')
  @ApiOperation({ summary: 'The database answers and its tables are up to date' })
  @ApiOkResponse({ type: HealthAnswer })
  @ApiProblem(503, 'The database does not answer')
  async ready(): Promise<HealthAnswer> {
    try {
      await this.store.contents();
    } catch (fault) {
      throw new ProblemException(503, `The database does not answer: ${fault instanceof Error ? fault.message : String(fault)}.`);
    }
    return { status: 'up' };
  }
}
