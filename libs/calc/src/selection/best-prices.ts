import { ColumnMaster, type Master } from './column-master.js';
import type { Relaxation } from './relaxation.js';
import { noRestriction } from './restriction.js';

/** Prices with the least bound found, and the relaxed choices seen on the way. */
export interface BestPrices {
  readonly price: Float64Array;
  readonly bound: number;
  readonly size: number;
  /** Relaxed choices worth rounding, best prices last: item of each group. */
  readonly choices: readonly Int32Array[];
  /** Visits by unit in the mix of plans that the last prices belong to: phases in all of them, and in any. */
  readonly mixed: { readonly forced: Int32Array; readonly may: Int32Array };
}

/** What bounds the work on prices. */
export interface PriceLimits {
  readonly mostRounds: number;
  /** Blocks of the master: units are put together above this. */
  readonly mostBlocks: number;
  readonly expired: () => boolean;
  /** Makes a master for these limits; the built-in simplex when left out. */
  readonly makeMaster?: (limit: Float64Array, blocks: number, penalty: number) => Master;
}

/** A bound this close to the master's value, as a share of it, is as good as the best. */
const CLOSE = 1e-7;
/** Share of the best prices so far in the next prices asked: damps the swings of the master. */
const DAMPING = 0.5;

/** Row scales bring limits and uses near 1, the value scale the values. */
interface Scales {
  readonly row: Float64Array;
  readonly value: number;
}

function scalesOf(relaxation: Relaxation): Scales {
  const { model, rows } = relaxation;
  // All groups at their best: prices of whole limits then stay near 1.
  const best = new Float64Array(model.groups.length);
  for (let j = 0; j < model.option.length; j++) best[model.groupOf[j]!] = Math.max(best[model.groupOf[j]!]!, Math.abs(model.value[j]!));
  const value = best.reduce((a, b) => a + b, 1);
  let cost = 1;
  for (const c of model.cost) cost = Math.max(cost, c);
  return { row: Float64Array.from(rows.active, (r) => (rows.limit[r]! > 0 ? rows.limit[r]! : cost)), value };
}

/** Columns of the last evaluation, one a block, and a copy of the choice. */
function addColumns(relaxation: Relaxation, master: Master, at: { blocks: number; scales: Scales; use: Float64Array }): void {
  const { model, rows } = relaxation;
  const units = model.units.length;
  let u = 0;
  for (let block = 0; block < at.blocks; block++) {
    let value = 0;
    for (const r of rows.active) at.use[r] = 0;
    for (const end = Math.floor(((block + 1) * units) / at.blocks); u < end; u++) value += relaxation.useUnit(u, at.use, 1);
    master.add({ block, value: value / at.scales.value, use: Float64Array.from(rows.active, (r, i) => at.use[r]! / at.scales.row[i]!) });
  }
}

/** Visits of the plans that the master mixes; columns stand round by round, block by block. */
function visitsOfMix(weight: Float64Array, opens: readonly Int32Array[], blocks: number): BestPrices['mixed'] {
  const units = opens[0]?.length ?? 0;
  const mixed = { forced: new Int32Array(units).fill(-1), may: new Int32Array(units) };
  opens.forEach((open, round) => {
    for (let block = 0, u = 0; block < blocks; block++) {
      const end = Math.floor(((block + 1) * units) / blocks);
      for (; u < end; u++) {
        if ((weight[round * blocks + block] ?? 0) < 1e-6) continue;
        mixed.forced[u]! &= open[u]!;
        mixed.may[u]! |= open[u]!;
      }
    }
  });
  for (let u = 0; u < units; u++) mixed.forced[u]! &= mixed.may[u]!;
  return mixed;
}

/**
 * Prices of all limits with (nearly) the least Lagrangian bound, by columns: whole plans of units are mixed by a linear
 * program whose prices call for the next plans.
 *
 * @param relaxation of the part
 * @param limits rounds, blocks, clock
 * @returns the best prices met; the bound holds for them whatever ended the search
 * @throws never
 * @source Dantzig and Wolfe, Decomposition principle for linear programs, Operations Research 8 (1960); damping after Wentges, from memory
 */
export function bestPrices(relaxation: Relaxation, limits: PriceLimits): BestPrices {
  const { model, rows } = relaxation;
  relaxation.focus(noRestriction(model));
  const scales = scalesOf(relaxation);
  const blocks = Math.min(model.units.length, limits.mostBlocks);
  const use = new Float64Array(rows.count);
  // Dearest price worth asking: the value of everything for a hundredth of a limit.
  const penalty = 100;
  const master = (limits.makeMaster ?? ((limit, count, dear) => new ColumnMaster(limit, count, dear)))(
    Float64Array.from(rows.active, (r, i) => rows.limit[r]! / scales.row[i]!), blocks, penalty);
  let price = new Float64Array(rows.count);
  let best = { price, bound: Infinity, size: 0 };
  const choices: Int32Array[] = [];
  const opens: Int32Array[] = [];
  let weight: Float64Array = new Float64Array();
  for (let round = 0; round < limits.mostRounds; round++) {
    const bound = relaxation.evaluate(price);
    if (bound < best.bound) {
      best = { price: price.slice(), bound, size: relaxation.size };
      choices.push(relaxation.chosen.slice());
      if (choices.length > 12) choices.shift();
    }
    if (bound === -Infinity) break;
    addColumns(relaxation, master, { blocks, scales, use });
    opens.push(relaxation.open.slice());
    const answer = master.solve();
    weight = answer.weight;
    if (best.bound - answer.value * scales.value <= CLOSE * Math.abs(best.bound) || limits.expired()) break;
    const next = new Float64Array(rows.count);
    rows.active.forEach((r, i) => (next[r] = (answer.price[i]! * scales.value) / scales.row[i]!));
    const damp = round < 3 || round % 10 === 9 ? 0 : DAMPING;
    price = next.map((p, r) => damp * best.price[r]! + (1 - damp) * p);
  }
  return { ...best, choices, mixed: visitsOfMix(weight, opens, blocks) };
}
