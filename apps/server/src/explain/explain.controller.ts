import { Controller, Get, Param } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiTags } from '@nestjs/swagger';
import { KeptPlans } from '../plans/kept-plans.js';
import { ApiProblem } from '../problem/api-problem.js';
import { ProblemException } from '../problem/problem.js';
import { ExplainAnswer } from './explain-answer.js';

@ApiTags('plans')
@Controller('api/plans')
export class ExplainController {
  constructor(private readonly plans: KeptPlans) {}

  @Get(':id/explain/:dwelling')
  @ApiOperation({ summary: 'Why a dwelling is in a plan or not, and what would have to be true for it to enter' })
  @ApiParam({ name: 'dwelling', example: 'EC/104', description: 'id of the dwelling, its slash written as %2F' })
  @ApiOkResponse({ type: ExplainAnswer })
  @ApiProblem(404, 'There is no such plan, or no such dwelling among its options')
  async one(@Param('id') id: string, @Param('dwelling') dwelling: string): Promise<ExplainAnswer> {
    const { body } = await this.plans.plan(id);
    const reason = body.explanations?.dwellings.find((d) => d.dwelling === dwelling);
    if (body.explanations === undefined || reason === undefined) {
      const not = body.notRanked.find((n) => n.dwelling === dwelling);
      throw new ProblemException(404, not === undefined ? `There is no reason for ${dwelling} in plan ${id}.` : `${dwelling} has no option in plan ${id}: ${not.why}.`);
    }
    return { plan: id, reason, reserve: body.explanations.reserve.find((r) => r.dwelling === dwelling) ?? null, prices: body.explanations.prices };
  }
}
