import { Injectable } from '@nestjs/common';
import { PortfolioStore, type Job } from '#store';
import { JobRunner } from '../jobs/job-runner.js';
import { ProblemException } from '../problem/problem.js';
import { PlanMaker, type PlanRequest } from '../work/plan-maker.js';

/** Takes orders for plans: says no at once to what cannot be made, and puts the rest in line. */
@Injectable()
export class PlanOrders {
  constructor(
    private readonly store: PortfolioStore,
    private readonly jobs: JobRunner,
    private readonly maker: PlanMaker,
  ) {}

  async order(request: PlanRequest): Promise<Job> {
    const { phases } = await this.store.load();
    const known = new Set(phases.map(({ id }) => id));
    const errors = (request.caps ?? []).flatMap(({ phase }, i) =>
      known.has(phase) ? [] : [{ code: 'unknown-phase', detail: `there is no phase ${phase}; there are ${[...known].join(', ') || 'none'}`, pointer: `/caps/${i}/phase` }],
    );
    if (errors.length > 0) throw new ProblemException(422, 'The request names a phase that is not there.', errors);
    if (request.replan !== undefined && (await this.store.loadPlan(request.replan)) === null) {
      throw new ProblemException(422, 'The request names a plan that is not kept.', [{ code: 'unknown-plan', detail: `there is no plan ${request.replan}`, pointer: '/replan' }]);
    }
    return this.jobs.start('plan', request, async (say) => ({ plan: await this.maker.make(request, say) }));
  }
}
