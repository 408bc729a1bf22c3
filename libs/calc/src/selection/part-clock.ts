import { LpMaster } from './lp-master.js';
import type { SelectionProblem, SelectionTools } from './problem.js';
import type { Effort } from './effort.js';

/** Shares the time limit out over the parts by their size; time a part leaves goes to those after it. */
export class PartClock {
  private readonly end_s: number;
  private readonly timed: boolean;
  private at = 0;
  private left: number;
  private readonly all: number;
  /** Has the clock ended any stage? */
  struck = false;

  constructor(
    problem: SelectionProblem,
    private readonly tools: SelectionTools,
    private readonly sizes: readonly number[],
  ) {
    this.timed = tools.now_s !== undefined && problem.timeLimit_s !== undefined;
    this.end_s = (tools.now_s?.() ?? 0) + (problem.timeLimit_s ?? Infinity);
    this.all = this.left = sizes.reduce((a, b) => a + b, 0);
  }

  /** Effort of the next part. */
  next(): Effort {
    const size = this.sizes[this.at++] ?? 0;
    const from_s = this.timed ? this.tools.now_s!() : 0;
    const own_s = this.timed ? Math.max(0, ((this.end_s - from_s) * size) / Math.max(size, this.left)) : Infinity;
    this.left -= size;
    const { better, solveLp, work_s } = this.tools;
    return {
      work_s: work_s === undefined ? null : (work_s * size) / Math.max(1, this.all),
      timed: this.timed,
      used: (share) => {
        const used = this.timed && this.tools.now_s!() - from_s > share * own_s;
        this.struck ||= used;
        return used;
      },
      better: (worth, bound) => better?.({ value: worth, bound }),
      ...(solveLp === undefined ? {} : { makeMaster: (limit, blocks, penalty) => new LpMaster(solveLp, limit, { blocks, penalty }) }),
    };
  }
}
