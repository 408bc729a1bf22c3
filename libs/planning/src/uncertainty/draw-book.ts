import { drawnShare, type Distribution, valueAt } from '#calc';
import type { DrawScope, UncertainInput, UncertainKey } from '#catalogue';

/** How an input is drawn in this plan: plain data that goes to a thread. */
export interface DrawnInput {
  readonly key: UncertainKey;
  readonly label: string;
  readonly unit: string;
  readonly scope: DrawScope;
  readonly source: string;
  /** By the thing it belongs to where its figures are founded differently (a film, a glazing); `*` for all others. */
  readonly spreads: ReadonlyMap<string, Distribution>;
}

/** Everything a draw needs: the same order gives the same values, whoever asks. */
export interface DrawOrder {
  readonly seed: number;
  readonly draws: number;
  readonly inputs: readonly DrawnInput[];
}

/** Films and glazings with how far their figures are to be trusted. */
export interface Founded {
  readonly films: readonly { readonly id: string; readonly basis: 'measured' | 'published' | 'assumed' }[];
  readonly glazings: readonly { readonly id: string; readonly basis: 'measured' | 'published' | 'assumed' }[];
}

/** The inputs of a plan with the spread of each film and glazing by its basis. */
export function drawOrder(inputs: readonly UncertainInput[], of: { readonly founded: Founded; readonly seed: number; readonly draws: number }): DrawOrder {
  const { founded, seed, draws } = of;
  const byThing = (input: UncertainInput): ReadonlyMap<string, Distribution> => {
    const things = input.scope === 'film' ? founded.films : input.scope === 'glazing' ? founded.glazings : [];
    return new Map([['*', input.spread('assumed')], ...things.map((t): [string, Distribution] => [t.id, input.spread(t.basis)])]);
  };
  return { seed, draws, inputs: inputs.map(({ key, label, unit, scope, source, ...input }) => ({ key, label, unit, scope, source, spreads: byThing({ key, label, unit, scope, source, ...input }) })) };
}

/** Value of an input in draw `draw` for a thing of its scope; the scope key `*` is the whole portfolio. */
export function drawnValue(order: DrawOrder, key: UncertainKey, at: { readonly scope: string; readonly draw: number }): number {
  const input = order.inputs.find((i) => i.key === key);
  if (input === undefined) throw new RangeError(`input must be one of the drawn, got ${key}`);
  const scope = input.scope === 'portfolio' ? '*' : at.scope;
  const spread = input.spreads.get(scope) ?? input.spreads.get('*')!;
  return valueAt(spread, drawnShare({ seed: order.seed, parameter: key, scope }, at.draw));
}

/** All draws of an input for a thing. @returns shape: [draws] */
export function drawnValues(order: DrawOrder, key: UncertainKey, scope: string): Float64Array {
  return Float64Array.from({ length: order.draws }, (_, draw) => drawnValue(order, key, { scope, draw }));
}
