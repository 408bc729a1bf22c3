import { basename, join } from 'node:path';
import { openCatalogue } from '#catalogue';
import { askedPortfolio, buildingWeather, planPortfolio, type Plan, type Progress } from '#planning';
import { contentHash, type PortfolioStore } from '#store';
import { workerPool } from '#workers';
import type { Edge } from '../edge.js';
import { programVersion } from '../program-version.js';
import { PlanMaker, type PlanRequest, type Say } from './plan-maker.js';

const SAY_EVERY_MS = 500;

/** Plans of the kept portfolio, worked out on threads and kept in the store. */
export class PortfolioPlans extends PlanMaker {
  /** @param weatherFolder where the weather files lie that buildings name */
  constructor(
    private readonly store: PortfolioStore,
    private readonly edge: Edge,
    private readonly weatherFolder: string,
  ) {
    super();
  }

  override async make(request: PlanRequest, say: Say): Promise<string> {
    const portfolio = askedPortfolio(await this.store.load(), request);
    const catalogue = openCatalogue();
    // Only the name counts: a survey must not point at other files of this machine.
    const { weather, findings } = buildingWeather(portfolio.buildings, catalogue, (file) => join(this.weatherFolder, basename(file)));
    const made = this.edge.now();
    const heading = { id: this.edge.newId(), parent: null };
    const inputHash = contentHash(portfolio);
    const pool = workerPool();
    const said = sayingNowAndThen(say);
    try {
      const job = { portfolio, catalogue, weather, findings, ...heading, revision: 1, madeOn: made.slice(0, 10), program: programVersion(), inputHash, progress: said.progress };
      const plan: Plan = await planPortfolio(job, pool);
      await said.end();
      await this.store.savePlan({ ...heading, title: plan.name, made, programVersion: plan.program, inputsHash: inputHash, signed: false, body: plan });
      return plan.id;
    } finally {
      await pool.end();
    }
  }
}

/** Progress comes faster than it is worth writing down, and is not waited for while the work goes on. */
function sayingNowAndThen(say: Say): { readonly progress: Progress; readonly end: () => Promise<void> } {
  let last = -Infinity;
  let written: Promise<void> = Promise.resolve();
  return {
    progress: (stage, done, of) => {
      const now = performance.now();
      if (now - last < SAY_EVERY_MS && done < of) return;
      last = now;
      written = written.then(() => say(of > 0 ? done / of : 0, `${stage}: ${done} of ${of}`));
      // Told by `end`; until then nobody listens, and an unheard failure would end the whole server.
      written.catch(() => undefined);
    },
    end: () => written,
  };
}
