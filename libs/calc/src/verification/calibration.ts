/** A parameter of the model that may move, and how cooling answers to it. */
export interface MovableParameter {
  readonly key: string;
  /** One standard deviation of what is known of it before any bill, in its own unit. */
  readonly spread: number;
  /** Farthest it may move either way, in its own unit. */
  readonly limit: number;
  /** Change of ln(cooling) for one unit of it. */
  readonly sensitivity: number;
}

/** How far each parameter moves to bring modelled cooling towards the bills. */
export interface ParameterMove {
  readonly key: string;
  readonly move: number;
  /** The limit stopped it. */
  readonly atLimit: boolean;
}

/**
 * Shares a gap between modelled and billed cooling out over the parameters that may move.
 *
 *   move_j = spread_j² × sensitivity_j / Σ_k (spread_k² × sensitivity_k²) × gap
 *
 * The most likely moves that close the gap, given how well each parameter is known: one that is not sure and that cooling answers to
 * moves most. Where a limit stops one, the rest is shared out over the others; what no one may take stays open.
 *
 * @param parameters with spread and limit ≥ 0
 * @param gap ln(billed / modelled cooling) that is to be closed, after pooling
 * @returns moves in the order of the parameters, and the part of the gap that stays open
 * @throws RangeError when the gap or a sensitivity is not finite, or a spread or limit is below zero
 * @source most likely point of a normal prior on a linear constraint; textbook
 */
export function calibrationMoves(parameters: readonly MovableParameter[], gap: number): { readonly moves: readonly ParameterMove[]; readonly open: number } {
  if (!Number.isFinite(gap)) throw new RangeError(`gap must be finite, got ${gap}`);
  for (const p of parameters) {
    if (!Number.isFinite(p.sensitivity)) throw new RangeError(`sensitivity of ${p.key} must be finite, got ${p.sensitivity}`);
    if (!(p.spread >= 0 && p.limit >= 0)) throw new RangeError(`spread and limit of ${p.key} must be 0 or more, got ${p.spread} and ${p.limit}`);
  }
  const moves = new Map<string, number>();
  let open = gap;
  let free = parameters.filter((p) => p.spread > 0 && p.sensitivity !== 0 && p.limit > 0);
  while (free.length > 0 && Math.abs(open) > 1e-12) {
    const total = free.reduce((sum, p) => sum + (p.spread * p.sensitivity) ** 2, 0);
    const wanted = free.map((p) => ({ p, move: ((p.spread ** 2 * p.sensitivity) / total) * open }));
    const stopped = wanted.filter(({ p, move }) => Math.abs(move) > p.limit);
    for (const { p, move } of stopped.length > 0 ? stopped : wanted) {
      const taken = Math.sign(move) * Math.min(Math.abs(move), p.limit);
      moves.set(p.key, taken);
      open -= taken * p.sensitivity;
    }
    if (stopped.length === 0) break;
    free = free.filter((p) => !moves.has(p.key));
  }
  return { moves: parameters.map((p) => ({ key: p.key, move: moves.get(p.key) ?? 0, atLimit: p.limit > 0 && Math.abs(moves.get(p.key) ?? 0) >= p.limit })), open: Math.abs(open) > 1e-12 ? open : 0 };
}

/** How close a model is to bills. */
export interface BillFitness {
  readonly cvRmse: number;
  readonly nmbe: number;
  readonly periods: number;
}

/**
 * How close a model comes to bills, by the two figures the published limits are set on.
 *
 *   CV(RMSE) = √(Σ(bill − model)² / (n − 1)) / mean bill;  NMBE = Σ(bill − model) / ((n − 1) × mean bill)
 *
 * @param bills kWh per day of each bill
 * @param modelled the same of the model
 * @returns both figures; NMBE above zero where the model is too low
 * @throws RangeError when the lists differ in length, hold fewer than two, or the mean bill is not above zero
 * @source ASHRAE Guideline 14 with p = 1 for calibrated simulation (from memory)
 */
export function billFitness(bills: readonly number[], modelled: readonly number[]): BillFitness {
  const n = bills.length;
  if (n < 2 || modelled.length !== n) throw new RangeError(`bills and modelled must be of one length of 2 or more, got ${n} and ${modelled.length}`);
  const mean = bills.reduce((a, b) => a + b, 0) / n;
  if (!(mean > 0)) throw new RangeError(`mean bill must be above 0, got ${mean}`);
  const errors = bills.map((bill, i) => bill - modelled[i]!);
  return { cvRmse: Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / (n - 1)) / mean, nmbe: errors.reduce((a, b) => a + b, 0) / ((n - 1) * mean), periods: n };
}
