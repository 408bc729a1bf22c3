import { chainedSets, type SavingSet } from './facade-chain.js';
import { facadeSets } from './facade-sets.js';

/** A saving with falling returns, as facades that share one cooling load have: the square root of the sum of their weights, in cents. */
const WEIGHTS: Readonly<Record<number, number>> = { 0: 1, 60: 400, 120: 900, 180: 1600, 240: 2500, 300: 100 };
const saving = (facades: readonly number[]): number => Math.round(1000 * Math.sqrt(facades.reduce((sum, f) => sum + WEIGHTS[f]!, 0)));
const result = (facades: readonly number[], film = 0): SavingSet => ({
  set: { facades, films: facades.map(() => film), readyOnly: false },
  spans: [{ coolingElectricity_kWh: 0, cooling_cents: saving(facades), addedHeating_cents: 0, addedHeating_kWh: 0 }],
});

describe('the chain above four facades', () => {
  const six = [0, 60, 120, 180, 240, 300];
  const known = facadeSets(six).map((set) => result(set));

  it('starts at the best facade and adds the best one at each step', () => {
    const chain = chainedSets(known, (set) => result(set.facades));
    // Weights from the largest: 240, 180, 120, 60, 300; the pair 180+240 is known already.
    expect(chain.map((c) => c.set.facades)).toEqual([[120, 180, 240], [60, 120, 180, 240], [60, 120, 180, 240, 300]]);
  });

  it('computes no set twice and none that is known', () => {
    const asked: string[] = [];
    chainedSets(known, (set) => {
      asked.push(set.facades.join('+'));
      return result(set.facades);
    });
    expect(new Set(asked).size).toBe(asked.length);
    expect(asked.filter((key) => known.some((k) => k.set.facades.join('+') === key))).toEqual([]);
  });

  it('is grown for each film by itself', () => {
    const both = [...known, ...facadeSets(six).map((set) => result(set, 1))];
    expect(chainedSets(both, (set) => result(set.facades, set.films[0])).map((c) => c.set.films[0])).toEqual([0, 0, 0, 1, 1, 1]);
  });

  it('is empty where all sets are computed anyway', () => {
    expect(chainedSets(facadeSets([0, 90, 180, 270]).map((set) => result(set)), (set) => result(set.facades))).toEqual([]);
  });
});
