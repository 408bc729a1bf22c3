import { cut, cutTogether, type CutJob } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const size_mm = z.number().positive();

const piece = z.strictObject({
  id: z.string().describe('unique in the job'),
  width_mm: size_mm.describe('trim included; lies across the roll unless the piece may rotate'),
  length_mm: size_mm,
  count: z.int().min(0),
  mayRotate: z.boolean(),
  group: z.string().optional().describe('dwelling or visit, for keepTogether and crewOrder'),
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
    keepTogether: z.boolean().optional().describe('each group on one stretch of one roll; the result says what that costs'),
    crewOrder: z.array(z.string()).optional().describe('groups in the order the crew works; each kept together, rolls filled in this order'),
    rounds: z.int().min(0).max(1_000_000).optional().describe('rounds of the improving search'),
    seed: z.int().optional(),
  }),
  run: ({ keepTogether, crewOrder, pieces, ...rest }) => {
    const job: CutJob = { ...rest, pieces: pieces.map(({ group: _, ...each }) => each) };
    if (keepTogether !== true && crewOrder === undefined) return cut(job);
    const groupOf = Object.fromEntries(pieces.flatMap((each) => (each.group === undefined ? [] : [[each.id, each.group]])));
    return cutTogether({ ...job, groupOf, crewOrder });
  },
});
