import { loadHighs } from './highs-loader.js';
import type { LinearAnswer, LinearProgram, SolveLp } from '#calc';

/**
 * Loads the linear-programming solver and gives it in the form calc takes; it blocks its thread, so it belongs in one that can
 * be ended.
 *
 * @returns the solver
 */
export async function openSolveLp(): Promise<SolveLp> {
  const highs = await loadHighs();
  const { modelStatus, objectiveSense } = highs.constants;
  return ({ columns, rows }: LinearProgram): LinearAnswer => {
    const starts = [0];
    for (const column of columns) starts.push(starts.at(-1)! + column.rows.length);
    return highs.withModel(
      {
        numCols: columns.length,
        numRows: rows.length,
        sense: objectiveSense.maximize,
        colCost: columns.map(({ objective }) => objective),
        colLower: columns.map(({ lower }) => lower),
        colUpper: columns.map(({ upper }) => upper),
        rowLower: rows.map(({ sense, right }) => (sense === '=' ? right : -Infinity)),
        rowUpper: rows.map(({ right }) => right),
        matrix: { format: 'csc', numRows: rows.length, numCols: columns.length, starts, indices: columns.flatMap((column) => column.rows), values: columns.flatMap((column) => column.coefficients) },
      },
      (model): LinearAnswer => {
        model.options.set({ output_flag: false });
        model.run();
        if (model.getModelStatus() !== modelStatus.optimal) return { why: `the solver ended with status ${String(model.getModelStatus())}` };
        const { colValue, rowDual } = model.getSolution();
        return { x: [...colValue], duals: [...rowDual], objective: model.getObjectiveValue() };
      },
    );
  };
}
