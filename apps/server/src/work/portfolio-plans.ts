import { basename, join } from 'node:path';
import { PlanningService, type Plan, type Progress } from '#planning';
import type { PortfolioStore } from '#store';
import { workbookBytes } from '#workbook';
import { workerPool } from '#workers';
import type { Edge } from '../edge.js';
import { PlanMaker, WorkbookMaker, type PlanRequest, type Say } from './plan-maker.js';

const SAY_EVERY_MS = 500;
const CHOOSING_S = 10;
const DRAWS = 200;

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

  override async make({ timeLimit_s = CHOOSING_S, draws = DRAWS, seed = 1, prove_s, aim, cutRule, lotRule, replan, ...ask }: PlanRequest, say: Say, stop: AbortSignal): Promise<string> {
    const pool = workerPool();
    const end = (): void => void pool.end();
    stop.addEventListener('abort', end);
    const said = sayingNowAndThen(say);
    try {
      const plan = await new PlanningService(pool, this.store).make({
        ask,
        timeLimit_s,
        id: this.edge.newId(),
        made: this.edge.now(),
        // Only the name counts: a survey must not point at other files of this machine.
        resolve: (file) => join(this.weatherFolder, basename(file)),
        progress: said.progress,
        ...(draws > 0 && { outlook: { seed, draws, selections: Math.min(DRAWS, draws) } }),
        ...(prove_s !== undefined && { prove_s }),
        ...(aim !== undefined && { aim }),
        ...(cutRule !== undefined && { cutRule }),
        ...(lotRule !== undefined && { lotRule }),
        ...(replan !== undefined && { replan }),
      });
      await said.end();
      return plan.id;
    } finally {
      stop.removeEventListener('abort', end);
      await pool.end();
    }
  }
}

/** The workbook as it is sent to a file, as bytes. */
export class PlanWorkbooks extends WorkbookMaker {
  override workbook(plan: Plan): Promise<Uint8Array> {
    return workbookBytes(plan);
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
