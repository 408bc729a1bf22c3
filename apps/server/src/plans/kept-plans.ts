import { Injectable } from '@nestjs/common';
import { type Plan, wholePlan } from '#planning';
import { PortfolioStore, type PlanHeading } from '#store';
import { ProblemException } from '../problem/problem.js';

export type RankLists = Pick<Plan, 'rankedDwellings' | 'rankedFacades'>;

/** A plan as it was kept, with its place in the store. */
export interface PlanAt {
  readonly id: string;
  readonly body: Plan;
}

/** Finds kept plans, or says as a problem that there is none. */
@Injectable()
export class KeptPlans {
  constructor(private readonly store: PortfolioStore) {}

  /** Newest first. */
  headings(): Promise<readonly PlanHeading[]> {
    return this.store.plans();
  }

  async plan(id: string): Promise<PlanAt> {
    const kept = await this.store.loadPlan(id);
    if (kept === null) throw new ProblemException(404, `There is no plan ${id}.`);
    return { id, body: kept.body as Plan };
  }

  /** A plan with the lines of the revisions before it whose work was done. */
  async whole(id: string | undefined): Promise<Plan> {
    return wholePlan((await this.planOrNewest(id)).body, async (before) => ((await this.store.loadPlan(before))?.body ?? null) as Plan | null);
  }

  async sign(id: string): Promise<PlanHeading> {
    await this.plan(id);
    await this.store.signPlan(id);
    return (await this.store.plans()).find((heading) => heading.id === id)!;
  }

  async planOrNewest(id: string | undefined): Promise<PlanAt> {
    if (id !== undefined) return this.plan(id);
    const [newest] = await this.store.plans();
    if (newest === undefined) throw new ProblemException(404, 'No plan has been made yet; POST /api/plans makes one.');
    return this.plan(newest.id);
  }
}
