import type { Master, MasterAnswer } from './column-master.js';
import type { LinearProgram, SolveLp } from './problem.js';

/** The mixing of columns by a linear-programming solver that was handed in: no limit on blocks, no start from the last answer. */
export class LpMaster implements Master {
  private readonly columns: LinearProgram['columns'][number][];
  private readonly overruns: number;

  constructor(
    private readonly solveLp: SolveLp,
    private readonly limit: Float64Array,
    private readonly of: { readonly blocks: number; readonly penalty: number },
  ) {
    this.columns = Array.from(limit, (_, r) => ({ objective: -of.penalty, lower: 0, upper: Infinity, rows: [r], coefficients: [-1] }));
    this.overruns = limit.length;
  }

  add({ block, value, use }: { readonly block: number; readonly value: number; readonly use: Float64Array }): void {
    const rows: number[] = [];
    const coefficients: number[] = [];
    use.forEach((used, r) => {
      if (used === 0) return;
      rows.push(r);
      coefficients.push(used);
    });
    this.columns.push({ objective: value, lower: 0, upper: Infinity, rows: [...rows, this.limit.length + block], coefficients: [...coefficients, 1] });
  }

  /** @throws Error when the solver gives no answer: a mix always exists, so it is the solver's fault */
  solve(): MasterAnswer {
    const rows = [...Array.from(this.limit, (right) => ({ sense: '<=' as const, right })), ...Array.from({ length: this.of.blocks }, () => ({ sense: '=' as const, right: 1 }))];
    const answer = this.solveLp({ columns: this.columns, rows });
    if ('why' in answer) throw new Error(`the linear-programming solver gave no answer: ${answer.why}`);
    return {
      price: Float64Array.from(this.limit, (_, r) => Math.max(0, answer.duals[r]!)),
      weight: Float64Array.from(answer.x.slice(this.overruns)),
      value: answer.objective,
    };
  }
}
