import type { MessagePort } from 'node:worker_threads';
import { loadHighs } from './highs-loader.js';
import type { MilpModel } from './milp-model.js';

/** What the thread is given. */
export interface MilpTask {
  readonly port: MessagePort;
  readonly model: MilpModel;
  readonly timeLimit_s: number;
}

/** What the thread posts on the way: a better solution, or only a bound that has fallen. */
export interface MilpNews {
  readonly x: Float64Array | null;
  readonly bound: number | null;
}

/** How it ended by itself. */
export interface MilpEnd extends MilpNews {
  readonly outcome: 'optimal' | 'infeasible' | 'stopped';
}

const finite = (bound: number | undefined): number | null => (bound !== undefined && Number.isFinite(bound) ? bound : null);

/** Solves the program, posting what it finds; ended from outside when the time is up, for the solver does not always keep its own limit. */
export default async function solveMilp({ port, model, timeLimit_s }: MilpTask): Promise<MilpEnd> {
  const highs = await loadHighs();
  const { callbackType, modelStatus, objectiveSense } = highs.constants;
  const numCols = model.objective.length;
  const numRows = model.rowLower.length;
  const post = (news: MilpNews): void => { port.postMessage(news); };
  let last = Infinity;
  return highs.withModel(
    {
      numCols,
      numRows,
      sense: objectiveSense.maximize,
      colCost: model.objective,
      colLower: new Float64Array(numCols),
      colUpper: new Float64Array(numCols).fill(1),
      rowLower: model.rowLower,
      rowUpper: model.rowUpper,
      matrix: { format: 'csr', numRows, numCols, starts: model.rowStart, indices: model.column, values: model.coefficient },
      integrality: new Int32Array(numCols).fill(1),
    },
    (solver): MilpEnd => {
      solver.options.set({ output_flag: false, time_limit: timeLimit_s, mip_rel_gap: 0, mip_abs_gap: 0.5 });
      solver.run({
        [callbackType.mipImprovingSolution](event) {
          post({ x: event.data.mip_solution ?? null, bound: finite(event.data.mip_dual_bound) });
        },
        [callbackType.mipLogging](event) {
          const bound = finite(event.data.mip_dual_bound);
          if (bound === null || bound >= last) return;
          last = bound;
          post({ x: null, bound });
        },
      });
      const status = solver.getModelStatus();
      const optimal = status === modelStatus.optimal;
      return {
        outcome: optimal ? 'optimal' : status === modelStatus.infeasible ? 'infeasible' : 'stopped',
        x: optimal ? Float64Array.from(solver.getSolution().colValue) : null,
        bound: optimal ? solver.getObjectiveValue() : finite(last),
      };
    },
  );
}
