import type { PartModel } from './part-model.js';

/** What the search has ruled out or fixed; all free at the root. */
export interface Restriction {
  /** 1 for an item that may be taken. */
  readonly item: Uint8Array;
  /** 1 for a group that must be taken. */
  readonly must: Uint8Array;
  /** By unit: phases that must be visited, and that may be. */
  readonly forced: Int32Array;
  readonly may: Int32Array;
}

/** Nothing ruled out but visits in phases in which nothing can be done. */
export function noRestriction(model: PartModel): Restriction {
  const may = new Int32Array(model.units.length);
  for (let j = 0; j < model.option.length; j++) may[model.unitOf[model.groupOf[j]!]!]! |= 1 << model.phase[j]!;
  return { item: new Uint8Array(model.option.length).fill(1), must: model.must.slice(), forced: new Int32Array(model.units.length), may };
}
