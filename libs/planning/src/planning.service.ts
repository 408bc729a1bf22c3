import { type Catalogue, openCatalogue } from '#catalogue';
import type { Portfolio } from '#calc';
import { contentHash } from '#store';
import { askedPortfolio, type PlanAsk } from './asked-portfolio.js';
import { buildingWeather } from './building-weather.js';
import { planPortfolio } from './plan-portfolio.js';
import type { Plan, PlanFinding } from './plan.js';
import type { Progress, Workers } from './workers.js';

/** A plan to be made: what the edge of the program knows and calc may not ask for. */
export interface PlanOrder {
  readonly portfolio: Portfolio;
  readonly ask: PlanAsk;
  readonly id: string;
  /** ISO date. */
  readonly madeOn: string;
  readonly revision: number;
  readonly parent: string | null;
  readonly program: string;
  /** Path of a weather file named in the inventory. */
  readonly resolve: (file: string) => string;
  readonly findings: readonly PlanFinding[];
  /** Seconds the selection may take; what it reached is said with its bound. */
  readonly timeLimit_s: number;
  readonly progress?: Progress;
}

/** Makes plans: opens the built-in data once, reads weather, and runs the spine on the workers it is given. */
export class PlanningService {
  #catalogue: Catalogue | undefined;

  constructor(private readonly workers: Workers) {}

  async plan(order: PlanOrder): Promise<Plan> {
    const catalogue = (this.#catalogue ??= openCatalogue());
    const portfolio = askedPortfolio(order.portfolio, order.ask);
    const { weather, findings } = buildingWeather(portfolio.buildings, catalogue, order.resolve);
    const { id, madeOn, revision, parent, program, timeLimit_s } = order;
    return planPortfolio(
      {
        portfolio, catalogue, weather, id, madeOn, revision, parent, program, timeLimit_s,
        inputHash: contentHash(portfolio),
        findings: [...order.findings, ...findings],
        ...(order.progress === undefined ? {} : { progress: order.progress }),
      },
      this.workers,
    );
  }
}
