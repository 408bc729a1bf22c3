import { Injectable } from '@nestjs/common';
import { contentHash, PortfolioStore, type Job } from '#store';
import { JobRunner } from '../jobs/job-runner.js';
import { ProblemException, type ProblemError } from '../problem/problem.js';
import { PlanMaker, type PlanRequest } from '../work/plan-maker.js';

/** What is kept with the job of a plan: the request, and the key under which it was sent. */
type PlanInput = PlanRequest & { readonly idempotencyKey?: string };

/** Takes orders for plans: says no at once to what cannot be made, and puts the rest in line. */
@Injectable()
export class PlanOrders {
  #last: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly store: PortfolioStore,
    private readonly jobs: JobRunner,
    private readonly maker: PlanMaker,
  ) {}

  /**
   * Orders come in one at a time, so that two with one key at the same moment are one job.
   *
   * @param key the same key and request again give the job of the first time
   * @throws ProblemException for a phase or plan that is not there, or a key that stands for another request
   */
  order(request: PlanRequest, key?: string): Promise<Job> {
    const job = this.#last.then(() => this.#order(request, key));
    this.#last = job.catch(() => undefined);
    return job;
  }

  async #order(request: PlanRequest, key: string | undefined): Promise<Job> {
    const errors = await this.#errors(request);
    if (errors.length > 0) throw new ProblemException(422, `The request cannot be worked: ${errors.map(({ detail }) => detail).join('; ')}.`, errors);
    const input: PlanInput = key === undefined ? request : { ...request, idempotencyKey: key };
    const before = key === undefined ? undefined : (await this.store.jobs()).find((job) => job.kind === 'plan' && (job.input as PlanInput).idempotencyKey === key);
    if (before === undefined) return this.jobs.start('plan', { ...input }, async (say, stop) => ({ plan: await this.maker.make(request, say, stop) }));
    if (contentHash(before.input) !== contentHash(input)) {
      throw new ProblemException(422, 'This Idempotency-Key was sent with another request before.', [{ code: 'key-reused', detail: `the key stands for job ${before.id}; send another key for another request` }]);
    }
    return before;
  }

  async #errors({ caps = [], oneCap_cents, replan }: PlanRequest): Promise<ProblemError[]> {
    const { phases } = await this.store.load();
    const known = new Set(phases.map(({ id }) => id));
    const errors: ProblemError[] = caps.flatMap(({ phase }, i) =>
      known.has(phase) ? [] : [{ code: 'unknown-phase', detail: `there is no phase ${phase}; there are ${[...known].join(', ') || 'none'}`, pointer: `/caps/${i}/phase` }],
    );
    if (oneCap_cents !== undefined && caps.length > 0) errors.push({ code: 'two-kinds-of-caps', detail: 'oneCap_cents takes the place of all phases; send it or caps', pointer: '/oneCap_cents' });
    if (replan !== undefined && (await this.store.loadPlan(replan)) === null) errors.push({ code: 'unknown-plan', detail: `there is no plan ${replan}`, pointer: '/replan' });
    return errors;
  }
}
