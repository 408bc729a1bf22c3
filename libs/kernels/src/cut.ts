import { cut, cutOneLot, cutTogether, type CutJob, type CutResult } from '#calc';
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
  elevation: z.string().optional().describe('building and side, for oneLot'),
});

const roll = z.strictObject({
  width_mm: size_mm,
  length_mm: size_mm.optional().describe('bought whole with a length, by length without'),
  price_cents: z.number().min(0).optional().describe('of a whole roll, or of a metre where film is sold by length; for every roll on offer or for none'),
  stock: z.union([z.int().min(0), z.boolean()]).optional().describe('rolls of this kind in the store room; such a row is bought as well only if it has a price'),
  lot: z.string().nullable().optional().describe('lot of the rolls in stock, for oneLot; not known: each a lot of its own'),
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
    oneLot: z.boolean().optional().describe('each elevation from one lot, rolls bought being one; the result says what that costs'),
    rounds: z.int().min(0).max(1_000_000).optional().describe('rounds of the improving search'),
    seed: z.int().optional(),
  }),
  run: ({ keepTogether, crewOrder, oneLot, pieces, rolls, ...rest }) => {
    const job: CutJob = { ...rest, pieces: pieces.map(({ group: _, elevation: __, ...each }) => each), rolls: rolls.map(({ lot: _, ...each }) => each) };
    const named = (key: 'group' | 'elevation'): Record<string, string> => Object.fromEntries(pieces.flatMap((each) => (each[key] === undefined ? [] : [[each.id, each[key]]])));
    const groupOf = named('group');
    const lay = keepTogether === true || crewOrder !== undefined ? (part: CutJob): CutResult => cutTogether({ ...part, groupOf, crewOrder }) : cut;
    return oneLot === true ? cutOneLot({ ...job, elevationOf: named('elevation'), lotOf: rolls.map((each) => each.lot) }, lay) : lay(job);
  },
});
