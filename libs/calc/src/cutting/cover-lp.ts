/** A column of the covering problem: what it costs and the rows it touches. */
export interface Column {
  readonly cost: number;
  readonly rows: Int32Array;
  readonly values: Float64Array;
}

const TINY = 1e-9;

/**
 * Least-cost covering by columns that are found one after the other: revised simplex with a dense inverse.
 *
 *   min cost·x,   Σ column x ≥ need (rows of pieces),   Σ column x ≤ supply (rows of stock),   x ≥ 0
 *
 * An uncovered piece costs `penalty` of its row, so a solution always exists.
 * @source textbook revised simplex method; Gilmore & Gomory, Operations Research 9 (1961), for the use
 */
export class CoverLp {
  readonly rows: number;
  readonly duals: Float64Array;
  private readonly inverse: Float64Array;
  private readonly basic: Int32Array;
  private readonly level: Float64Array;
  private readonly pool: Column[] = [];
  private readonly step: Float64Array;

  constructor(
    private readonly need: Float64Array,
    supply: Float64Array,
    private readonly penalty: Float64Array,
  ) {
    const rows = need.length + supply.length;
    this.rows = rows;
    this.duals = new Float64Array(rows);
    this.inverse = new Float64Array(rows * rows);
    this.basic = new Int32Array(rows);
    this.level = new Float64Array(rows);
    this.step = new Float64Array(rows);
    for (let r = 0; r < rows; r++) {
      this.inverse[r * rows + r] = 1;
      this.basic[r] = -1 - r;
      // A grain more in each row keeps the simplex from standing still on ties.
      this.level[r] = r < need.length ? need[r]! * (1 + 1e-9 * (r + 1)) : supply[r - need.length]! * (1 + 1e-9 * (r + 1));
    }
    this.reckonDuals();
  }

  get size(): number {
    return this.pool.length;
  }

  column(index: number): Column {
    return this.pool[index]!;
  }

  add(column: Column): number {
    return this.pool.push(column) - 1;
  }

  /** Cost of a column less what its rows are worth at the present duals. */
  reducedCost(column: Column): number {
    let sum = column.cost;
    for (let k = 0; k < column.rows.length; k++) sum -= this.duals[column.rows[k]!]! * column.values[k]!;
    return sum;
  }

  /** Pivots until no column of the pool improves; true when that was reached within the limit. */
  solve(limit = 20_000): boolean {
    for (let round = 0; round < limit; round++) {
      const enter = this.entering();
      if (enter === null) return true;
      if (!this.pivot(enter)) return true;
    }
    return false;
  }

  /** Cost of the present solution, penalties of uncovered pieces included. */
  value(): number {
    let sum = 0;
    for (let r = 0; r < this.rows; r++) sum += this.costOf(this.basic[r]!) * this.level[r]!;
    return sum;
  }

  /** Level of every pool column, 0 where it is not in the basis. */
  levels(): Float64Array {
    const x = new Float64Array(this.pool.length);
    for (let r = 0; r < this.rows; r++) if (this.basic[r]! >= 0) x[this.basic[r]!] = Math.max(0, this.level[r]!);
    return x;
  }

  private entering(): number | null {
    let least = -1e-7;
    let enter: number | null = null;
    for (let k = 0; k < this.pool.length; k++) {
      const column = this.pool[k]!;
      const gain = this.reducedCost(column) / (Math.abs(column.cost) + 1e-3);
      if (gain < least) {
        least = gain;
        enter = k;
      }
    }
    if (enter !== null) return enter;
    // A slack enters as −1 − row when the dual of its row has the wrong sign.
    for (let r = 0; r < this.rows; r++) {
      const wrong = r < this.need.length ? this.duals[r]! : -this.duals[r]!;
      if (wrong < -1e-7 * (1 + (this.penalty[r] ?? 1))) return -1 - r;
    }
    return null;
  }

  private pivot(enter: number): boolean {
    const { rows, step, inverse, level } = this;
    this.direction(enter);
    let leave = -1;
    let ratio = Infinity;
    for (let r = 0; r < rows; r++) {
      if (step[r]! <= TINY) continue;
      const at = level[r]! / step[r]!;
      if (at < ratio - 1e-12 || (at < ratio + 1e-12 && leave >= 0 && step[r]! > step[leave]!)) {
        ratio = at;
        leave = r;
      }
    }
    if (leave < 0) return false;
    const by = 1 / step[leave]!;
    for (let c = 0; c < rows; c++) inverse[leave * rows + c]! *= by;
    level[leave] = ratio;
    for (let r = 0; r < rows; r++) {
      const factor = step[r]!;
      if (r === leave || factor === 0) continue;
      for (let c = 0; c < rows; c++) inverse[r * rows + c]! -= factor * inverse[leave * rows + c]!;
      level[r] = Math.max(0, level[r]! - factor * ratio);
    }
    this.basic[leave] = enter >= 0 ? enter : enter - rows;
    this.reckonDuals();
    return true;
  }

  private direction(enter: number): void {
    const { rows, step, inverse } = this;
    step.fill(0);
    if (enter < 0) {
      const row = -1 - enter;
      const sign = row < this.need.length ? -1 : 1;
      for (let r = 0; r < rows; r++) step[r] = sign * inverse[r * rows + row]!;
      return;
    }
    const column = this.pool[enter]!;
    for (let k = 0; k < column.rows.length; k++) {
      const row = column.rows[k]!;
      const value = column.values[k]!;
      for (let r = 0; r < rows; r++) step[r]! += inverse[r * rows + row]! * value;
    }
  }

  private reckonDuals(): void {
    const { rows, duals, inverse } = this;
    duals.fill(0);
    for (let r = 0; r < rows; r++) {
      const cost = this.costOf(this.basic[r]!);
      if (cost === 0) continue;
      for (let c = 0; c < rows; c++) duals[c]! += cost * inverse[r * rows + c]!;
    }
  }

  /** −1 … −rows stand for the starting artificial (pieces) or slack (stock), lower ones for a slack that entered later, without cost. */
  private costOf(basic: number): number {
    if (basic >= 0) return this.pool[basic]!.cost;
    return basic >= -this.rows && -1 - basic < this.need.length ? this.penalty[-1 - basic]! : 0;
  }
}
