import { Controller, Get, Param } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiProperty, ApiTags } from '@nestjs/swagger';
import { checkProof, type Plan } from '#planning';
import { LedgerFindingAnswer } from '../ledger/ledger-answer.js';
import { KeptPlans } from '../plans/kept-plans.js';
import { ApiProblem } from '../problem/api-problem.js';

/** The proof kept with a plan, checked again. */
export class ProofAnswer {
  @ApiProperty({ description: 'id of the plan' }) plan: string;
  @ApiProperty({ description: 'false: do not rely on the bound of this plan' }) valid: boolean;
  @ApiProperty({ description: 'what the check shows, and what it rests on' }) text: string;
  @ApiProperty({ type: [LedgerFindingAnswer], description: 'every fault' }) findings: readonly LedgerFindingAnswer[];
  @ApiProperty({ enum: ['optimal', 'bounded', 'infeasible'] }) status: Plan['proof']['status'];
  @ApiProperty({ description: 'worth of the choice, cents' }) value_cents: number;
  @ApiProperty({ description: 'no choice of these options is worth more, cents' }) bound_cents: number;
  @ApiProperty({ description: '(bound − value) ÷ bound' }) gap: number;
}

@ApiTags('plans')
@Controller('api/plans')
export class ProofController {
  constructor(private readonly plans: KeptPlans) {}

  @Get(':id/proof')
  @ApiOperation({ summary: 'Checks the proof kept with a plan again, in one pass that shares nothing with the search' })
  @ApiOkResponse({ type: ProofAnswer })
  @ApiProblem(404)
  async check(@Param('id') id: string): Promise<ProofAnswer> {
    const { body } = await this.plans.plan(id);
    const { status, value_cents, bound_cents, gap } = body.proof;
    const { valid, text, findings } = checkProof(body);
    return { plan: id, valid, text, findings: findings.map(({ severity, subject, text: what, whatToDo }) => ({ severity, subject, text: what, whatToDo })), status, value_cents, bound_cents, gap };
  }
}
