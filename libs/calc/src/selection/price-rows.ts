import type { Multipliers } from './multipliers.js';
import type { PartModel } from './part-model.js';

/** Limits of a part as one list of rows, each with a price; rows without a limit are left out of the search. */
export interface PriceRows {
  readonly count: number;
  /** First row of each kind; phases and owners by their compiled index, units and pairs by that of the part. */
  readonly minutes: number;
  readonly owner: number;
  readonly cap: number;
  readonly minSpend: number;
  readonly exclusive: number;
  readonly limit: Float64Array;
  /** Rows that can bind. */
  readonly active: Int32Array;
}

/**
 * Rows: cap by phase, minutes by phase, owner, cap by unit, least spend by unit and phase, exclusive pair.
 *
 * @param model part
 * @returns their limits; the active ones are those with a finite limit
 * @throws never
 */
export function priceRows(model: PartModel): PriceRows {
  const { phases, owners } = model.of;
  const T = phases.length;
  const owner = 2 * T;
  const cap = owner + owners.length;
  const minSpend = cap + model.units.length;
  const exclusive = minSpend + model.units.length * T;
  const count = exclusive + model.exclusive.length;
  const limit = new Float64Array(count).fill(Infinity);
  const inPart = new Uint8Array(T);
  for (const t of model.phase) inPart[t] = 1;
  phases.forEach((phase, t) => {
    if (inPart[t] === 0) return;
    limit[t] = phase.cap;
    limit[T + t] = phase.minutes;
  });
  model.units.forEach((unit, u) => {
    if (unit.owner >= 0) limit[owner + unit.owner] = owners[unit.owner]!.cap;
    limit[cap + u] = unit.cap;
    if (unit.minSpend > 0) for (let t = 0; t < T; t++) if (inPart[t] === 1) limit[minSpend + u * T + t] = 0;
  });
  limit.fill(1, exclusive);
  const active = Int32Array.from(limit.keys()).filter((r) => limit[r]! < Infinity);
  return { count, minutes: T, owner, cap, minSpend, exclusive, limit, active };
}

/** Writes the prices of a part into those of the whole problem. */
export function keepPrices(of: { readonly model: PartModel; readonly rows: PriceRows }, price: Float64Array, to: Multipliers): void {
  const { model, rows } = of;
  const T = model.of.phases.length;
  for (let t = 0; t < T; t++) {
    if (price[t]! > 0) to.cap[t] = price[t]!;
    if (price[T + t]! > 0) to.minutes[t] = price[T + t]!;
  }
  to.owner.forEach((_, w) => {
    if (price[rows.owner + w]! > 0) to.owner[w] = price[rows.owner + w]!;
  });
  model.units.forEach(({ building }, u) => {
    if (building < 0) return;
    if (price[rows.cap + u]! > 0) to.buildingCap[building] = price[rows.cap + u]!;
    for (let t = 0; t < T; t++) if (price[rows.minSpend + u * T + t]! > 0) to.minSpend[building * T + t] = price[rows.minSpend + u * T + t]!;
  });
  model.exclusive.forEach(({ at }, e) => (to.exclusive[at] = price[rows.exclusive + e]!));
}
