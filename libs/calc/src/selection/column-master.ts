/** Prices of the rows and of the blocks, and how much of each column is taken. */
export interface MasterAnswer {
  readonly price: Float64Array;
  readonly weight: Float64Array;
  readonly value: number;
}

/** Whole plans of blocks, mixed so that limits hold: the linear program behind the best prices. */
export interface Master {
  add: (column: { readonly block: number; readonly value: number; readonly use: Float64Array }) => void;
  solve: () => MasterAnswer;
}

const NOTHING = 1e-9;
/** Pivots between two fresh inverses of the basis. */
const REFRESH = 60;

/**
 * Linear program over columns, solved by a small primal simplex that starts from where it ended:
 *
 *   maximise Σ value × weight − Σ penalty × overrun
 *   each limit: Σ use × weight − overrun ≤ limit       each block: Σ weight = 1
 *
 * The inverse of the basis is kept dense, so rows and blocks together should stay below some hundreds.
 * Figures are expected near 1: the caller scales rows and values.
 */
export class ColumnMaster implements Master {
  private readonly rows: number;
  private readonly size: number;
  private readonly columns: { block: number; value: number; use: Float64Array }[] = [];
  /** Variable of each basic place: column k as k, slack of row r as −1 − 2r, overrun of row r as −2 − 2r. */
  private basis: Int32Array;
  private inverse: Float64Array;
  private level: Float64Array;
  private started = false;

  constructor(
    private readonly limit: Float64Array,
    private readonly blocks: number,
    private readonly penalty: number,
  ) {
    this.rows = limit.length;
    this.size = this.rows + blocks;
    this.basis = new Int32Array(this.size);
    this.inverse = new Float64Array(this.size * this.size);
    this.level = new Float64Array(this.size);
  }

  add(column: { readonly block: number; readonly value: number; readonly use: Float64Array }): void {
    this.columns.push({ ...column });
  }

  solve(): MasterAnswer {
    if (!this.started) this.start();
    const y = new Float64Array(this.size);
    const direction = new Float64Array(this.size);
    for (let pivot = 0; pivot < 50 * this.size + 2000; pivot++) {
      if (pivot % REFRESH === REFRESH - 1) this.refresh();
      this.prices(y);
      // After many pivots the first improving variable is taken: that cannot go round in circles.
      const enter = this.entering(y, pivot > 20 * this.size + 500);
      if (enter === null) break;
      this.columnInBasis(enter, direction);
      const leave = this.leaving(direction);
      if (leave < 0) break;
      this.pivot(enter, leave, direction);
    }
    this.prices(y);
    return this.answer(y);
  }

  /** First column of each block in the basis, with slack or overrun in each row. */
  private start(): void {
    this.started = true;
    const { rows, size } = this;
    for (let b = 0; b < this.blocks; b++) this.basis[rows + b] = this.columns.findIndex(({ block }) => block === b);
    for (let r = 0; r < rows; r++) {
      let used = 0;
      for (let b = 0; b < this.blocks; b++) used += this.columns[this.basis[rows + b]!]!.use[r]!;
      const over = used > this.limit[r]!;
      const sign = over ? -1 : 1;
      this.basis[r] = (over ? -2 : -1) - 2 * r;
      this.inverse[r * size + r] = sign;
      for (let b = 0; b < this.blocks; b++) this.inverse[r * size + rows + b] = -sign * this.columns[this.basis[rows + b]!]!.use[r]!;
      this.level[r] = sign * (this.limit[r]! - used);
    }
    for (let b = 0; b < this.blocks; b++) {
      this.inverse[(rows + b) * size + rows + b] = 1;
      this.level[rows + b] = 1;
    }
  }

  private worth(variable: number): number {
    if (variable >= 0) return this.columns[variable]!.value;
    return variable % 2 === 0 ? -this.penalty : 0;
  }

  private prices(y: Float64Array): void {
    y.fill(0);
    for (let i = 0; i < this.size; i++) {
      const worth = this.worth(this.basis[i]!);
      if (worth === 0) continue;
      for (let k = 0, at = i * this.size; k < this.size; k++) y[k]! += worth * this.inverse[at++]!;
    }
  }

  private entering(y: Float64Array, first: boolean): number | null {
    let best = NOTHING;
    let enter: number | null = null;
    for (let k = 0; k < this.columns.length; k++) {
      const { block, value, use } = this.columns[k]!;
      let gain = value - y[this.rows + block]!;
      for (let r = 0; r < this.rows; r++) gain -= y[r]! * use[r]!;
      if (gain > best) {
        if (first) return k;
        best = gain;
        enter = k;
      }
    }
    for (let r = 0; r < this.rows; r++) {
      for (const [gain, variable] of [[-y[r]!, -1 - 2 * r], [y[r]! - this.penalty, -2 - 2 * r]] as const) {
        if (gain <= best) continue;
        if (first) return variable;
        best = gain;
        enter = variable;
      }
    }
    return enter;
  }

  /** Coefficients of a variable: of a column its uses and its block, of slack and overrun ±1. */
  private coefficient(variable: number, row: number): number {
    if (variable >= 0) {
      const { block, use } = this.columns[variable]!;
      return row < this.rows ? use[row]! : row - this.rows === block ? 1 : 0;
    }
    const r = (-1 - variable) >> 1;
    return r !== row ? 0 : variable % 2 === 0 ? -1 : 1;
  }

  private columnInBasis(variable: number, out: Float64Array): void {
    const { size } = this;
    out.fill(0);
    for (let k = 0; k < size; k++) {
      const a = this.coefficient(variable, k);
      if (a !== 0) for (let i = 0; i < size; i++) out[i]! += this.inverse[i * size + k]! * a;
    }
  }

  private leaving(direction: Float64Array): number {
    let least = Infinity;
    let leave = -1;
    for (let i = 0; i < this.size; i++) {
      if (direction[i]! <= NOTHING) continue;
      const ratio = Math.max(0, this.level[i]!) / direction[i]!;
      if (ratio < least - 1e-12 || (ratio < least + 1e-12 && leave >= 0 && direction[i]! > direction[leave]!)) {
        least = Math.min(least, ratio);
        leave = i;
      }
    }
    return leave;
  }

  private pivot(enter: number, leave: number, direction: Float64Array): void {
    const { size, inverse, level } = this;
    const step = Math.max(0, level[leave]!) / direction[leave]!;
    for (let k = 0; k < size; k++) inverse[leave * size + k]! /= direction[leave]!;
    for (let i = 0; i < size; i++) {
      const d = direction[i]!;
      if (i === leave || d === 0) continue;
      for (let k = 0; k < size; k++) inverse[i * size + k]! -= d * inverse[leave * size + k]!;
      level[i]! -= d * step;
    }
    level[leave] = step;
    this.basis[leave] = enter;
  }

  /** Inverse and levels worked out again from the basis, against the drift of many pivots. */
  private refresh(): void {
    const { size } = this;
    const left = new Float64Array(size * size);
    for (let i = 0; i < size; i++) for (let k = 0; k < size; k++) left[k * size + i] = this.coefficient(this.basis[i]!, k);
    const right = invert(left, size);
    if (right === null) return;
    this.inverse = right;
    for (let i = 0; i < size; i++) {
      let level = 0;
      for (let k = 0; k < size; k++) level += right[i * size + k]! * (k < this.rows ? this.limit[k]! : 1);
      this.level[i] = level;
    }
  }

  private answer(y: Float64Array): MasterAnswer {
    const weight = new Float64Array(this.columns.length);
    let value = 0;
    for (let i = 0; i < this.size; i++) {
      value += this.worth(this.basis[i]!) * this.level[i]!;
      if (this.basis[i]! >= 0) weight[this.basis[i]!] = Math.max(0, this.level[i]!);
    }
    return { price: y.slice(0, this.rows).map((price) => Math.max(0, price)), weight, value };
  }
}

/** Gauss–Jordan with the largest pivot of each column; null when the matrix is singular to rounding. */
function invert(matrix: Float64Array, size: number): Float64Array<ArrayBuffer> | null {
  const out = new Float64Array(size * size);
  for (let i = 0; i < size; i++) out[i * size + i] = 1;
  for (let c = 0; c < size; c++) {
    let pivot = c;
    for (let i = c + 1; i < size; i++) if (Math.abs(matrix[i * size + c]!) > Math.abs(matrix[pivot * size + c]!)) pivot = i;
    const top = matrix[pivot * size + c]!;
    if (Math.abs(top) < 1e-11) return null;
    for (let k = 0; k < size; k++) {
      for (const m of [matrix, out]) {
        const swap = m[pivot * size + k]!;
        m[pivot * size + k] = m[c * size + k]!;
        m[c * size + k] = swap / top;
      }
    }
    for (let i = 0; i < size; i++) {
      const factor = matrix[i * size + c]!;
      if (i === c || factor === 0) continue;
      for (let k = 0; k < size; k++) {
        matrix[i * size + k]! -= factor * matrix[c * size + k]!;
        out[i * size + k]! -= factor * out[c * size + k]!;
      }
    }
  }
  return out;
}
