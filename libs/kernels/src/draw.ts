import { type Distribution, drawnShares, valueAt } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const figure = z.number();
const MOST = 100_000;

const spread = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('normal'), middle: figure, deviation: figure.min(0), low: figure.optional(), high: figure.optional() }),
    z.strictObject({ kind: z.literal('lognormal'), middle: figure.gt(0), factor: figure.min(1) }),
    z.strictObject({ kind: z.literal('triangular'), low: figure, middle: figure, high: figure }),
    z.strictObject({ kind: z.literal('uniform'), low: figure, high: figure }),
    z.strictObject({ kind: z.literal('listed'), values: z.array(z.strictObject({ value: figure, chance: figure.min(0).max(1) })).min(1) }),
  ])
  .describe('how the input spreads');

const input = z.strictObject({
  seed: z.number(),
  parameter: z.string().describe('what is drawn'),
  scope: z.string().describe('whom it belongs to: all that share it see the same draws; * is the whole portfolio'),
  draws: z.int().min(1).max(MOST),
  spread: spread.optional(),
});

/** Drops limits that are not there: calc tells absent from undefined. */
const distributionOf = (given: z.infer<typeof spread>): Distribution => Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as unknown as Distribution;

/** The draws of one uncertain input. */
export const kernel = defineKernel({
  name: 'draw',
  about: 'The draws of one uncertain input: a function of seed, parameter, scope and number alone; shares 0…1, and values where its spread is given.',
  input,
  run: ({ seed, parameter, scope, draws, spread: given }) => {
    const shares = [...drawnShares({ seed, parameter, scope }, draws)];
    return { shares, ...(given === undefined ? {} : { values: shares.map((at) => valueAt(distributionOf(given), at)) }) };
  },
});
