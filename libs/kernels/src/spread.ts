import { shareReaching, spreadOf } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const input = z.strictObject({
  draws: z.array(z.number()).min(1).describe('one value a draw, in any order'),
  reach: z.number().default(0).describe('the value whose chance is asked for'),
});

/** What draws say of a quantity. */
export const kernel = defineKernel({
  name: 'spread',
  about: 'What draws say of a quantity: nine in ten reach at least, the middle, one in ten passes, the mean, and the share that reaches a value.',
  input,
  run: ({ draws, reach }) => ({ ...spreadOf(draws), shareReaching: shareReaching(draws, reach) }),
});
