import { type HomeTerms, type MeteredHome, meteredHomes } from '../../../../test/portfolios/metered-homes.js';
import { groupMean, meterChange, pooledSaving, type GroupMember, type PooledSaving } from './index.js';

const TERMS: Omit<HomeTerms, 'seed' | 'effect'> = { treated: 16, untreated: 14, billNoise: 0.06, homeDrift: 0.07, commonDrift: 0.04 };
const RUNS = 200;

const member = (home: MeteredHome): GroupMember => {
  const change = meterChange(home);
  if ('why' in change) throw new Error(change.why);
  return { id: home.id, share: change.share, standardError: change.standardError };
};
const savingOf = (homes: readonly MeteredHome[]): PooledSaving => {
  const saving = pooledSaving({ treated: homes.filter((h) => h.treated).map(member), comparison: homes.filter((h) => !h.treated).map(member) });
  if ('why' in saving) throw new Error(saving.why);
  return saving;
};
const runs = (effect: number, over: Partial<HomeTerms> = {}) => Array.from({ length: RUNS }, (_, i) => meteredHomes({ ...TERMS, effect, ...over, seed: 1000 + i }));
const truthOf = (homes: readonly MeteredHome[]): number => homes.filter((h) => h.treated).reduce((sum, h) => sum + h.trueShare, 0) / TERMS.treated;

describe('a pooled saving of made-up homes whose film effect is known', () => {
  const cases = runs(0.1).map((homes) => ({ truth: truthOf(homes), saving: savingOf(homes) }));

  it('its 80 % interval holds the truth in 75 to 85 of a hundred runs', () => {
    const holds = cases.filter(({ truth, saving }) => saving.low <= truth && truth <= saving.high).length / RUNS;
    expect(holds).toBeGreaterThanOrEqual(0.75);
    expect(holds).toBeLessThanOrEqual(0.85);
  });

  it('leans to neither side by more than a tenth of the effect', () => {
    const lean = cases.reduce((sum, { truth, saving }) => sum + saving.share - truth, 0) / RUNS;
    const truth = cases.reduce((sum, c) => sum + c.truth, 0) / RUNS;
    expect(Math.abs(lean)).toBeLessThan(0.1 * truth);
  });

  it('claims an effect on placebo in at most twelve runs of a hundred', () => {
    const claims = runs(0).filter((homes) => savingOf(homes).outcome === 'use fell').length / RUNS;
    expect(claims).toBeLessThanOrEqual(0.12);
    expect(claims).toBeGreaterThan(0.03);
  });

  it('alone, without a comparison group, takes the drift of the year for film', () => {
    const alone = runs(0, { commonDrift: 0.1 }).map((homes) => pooledSaving({ treated: homes.filter((h) => h.treated).map(member), comparison: [] }));
    const wrong = alone.filter((s) => !('why' in s) && s.outcome !== 'cannot be told').length / RUNS;
    expect(wrong).toBeGreaterThan(0.4);
  });

  it('is the saving that was made where nothing is noisy', () => {
    const homes = meteredHomes({ ...TERMS, effect: 0.12, billNoise: 0, homeDrift: 0, commonDrift: 0, seed: 5 });
    const saving = savingOf(homes);
    expect(Math.abs(saving.share - truthOf(homes))).toBeLessThan(0.004);
  });
});

describe('a group of meters', () => {
  it('weighs equal meters equally, and its weights sum to one', () => {
    const mean = groupMean(['a', 'b', 'c', 'd'].map((id, i) => ({ id, share: i / 100, standardError: 0.02 })));
    if ('why' in mean) throw new Error(mean.why);
    expect(mean.share).toBeCloseTo(0.015, 12);
    expect([...mean.weights.values()].reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    // Standard error of a mean of 0, 1, 2, 3 in hundredths: √(5/3)/√4.
    expect(mean.standardError).toBeCloseTo(Math.sqrt(5 / 3) / 2 / 100, 12);
  });

  it('of one meter says nothing', () => {
    expect(groupMean([{ id: 'a', share: 0.1, standardError: 0.01 }])).toHaveProperty('why');
    expect(pooledSaving({ treated: [{ id: 'a', share: 0.1, standardError: 0.01 }], comparison: [] })).toHaveProperty('why');
  });

  it('refuses shares that are not finite and errors of nothing', () => {
    expect(() => groupMean([{ id: 'a', share: Number.NaN, standardError: 1 }, { id: 'b', share: 0, standardError: 1 }])).toThrow('finite');
    expect(() => groupMean([{ id: 'a', share: 0, standardError: 0 }, { id: 'b', share: 0, standardError: 1 }])).toThrow('above 0');
  });

  it('too few bills give no change, with the reason', () => {
    const [home] = meteredHomes({ ...TERMS, effect: 0, seed: 2 });
    expect(meterChange({ baseline: home!.baseline.slice(0, 5), reporting: home!.reporting })).toMatchObject({ why: expect.stringContaining('before') as string });
    expect(meterChange({ baseline: home!.baseline, reporting: home!.reporting.slice(0, 2) })).toMatchObject({ why: expect.stringContaining('after') as string });
  });
});
