import { Injectable } from '@nestjs/common';
import type { Receipt } from '#planning';
import type { PlanAt } from '../plans/kept-plans.js';
import { ProblemException } from '../problem/problem.js';
import { RequestPool } from '../work/request-pool.js';

/** Opens figures of kept plans, for programs and for pages alike. */
@Injectable()
export class OpenReceipts {
  constructor(private readonly pool: RequestPool) {}

  /** @throws ProblemException 404 for a figure the plan does not have */
  async open({ id, body }: PlanAt, figure: string): Promise<Receipt> {
    const receipt = await this.pool.run((planning, resolve) => planning.receipt(body, figure, resolve));
    if ('nearest' in receipt) throw new ProblemException(404, `There is no figure ${figure} in plan ${id}; nearest: ${receipt.nearest.join(', ')}.`);
    return receipt;
  }
}
