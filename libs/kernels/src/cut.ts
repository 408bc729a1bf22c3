import { cut } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const size_mm = z.number().positive();

const piece = z.strictObject({
  id: z.string().describe('unique in the job'),
  width_mm: size_mm.describe('trim included; lies across the roll unless the piece may rotate'),
  length_mm: size_mm,
  count: z.int().min(0),
  mayRotate: z.boolean(),
});

const roll = z.strictObject({
  width_mm: size_mm,
  length_mm: size_mm.optional().describe('bought whole with a length, by length without'),
  price_cents: z.number().min(0).optional().describe('of a whole roll, or of a metre where film is sold by length; for every roll on offer or for none'),
  stock: z.union([z.int().min(0), z.boolean()]).optional().describe('rolls of this kind in the store room; such a row is bought as well only if it has a price'),
});

/** Pieces of film cut from rolls, with the least any cutting could buy. */
export const kernel = defineKernel({
  name: 'cut',
  about: 'Cuts pieces of film from rolls by straight cuts and bounds what any cutting could buy.',
  input: z.strictObject({
    pieces: z.array(piece),
    rolls: z.array(roll),
    kerf_mm: z.number().min(0).optional(),
    rounds: z.int().min(0).max(1_000_000).optional().describe('rounds of the improving search'),
    seed: z.int().optional(),
  }),
  run: (job) => cut(job),
});
