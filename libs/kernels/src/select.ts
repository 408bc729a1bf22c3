import { select } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const whole = z.int();
const amount = z.int().min(0);
const id = z.string().min(1);
const phases = z.array(amount).optional().describe('indices of the phases it may be taken in; default all');

const option = z.strictObject({
  id,
  cost_cents: amount,
  value: whole.describe('whole number, may be negative; worth value × valueFactor in its phase'),
  crewMinutes: amount.optional(),
  family: z.string().optional().describe('film; matters in buildings with oneFamily'),
  phases,
});

const building = z.strictObject({
  id,
  visit_cents: amount,
  visitMinutes: amount,
  visitPrice: z.array(amount).optional().describe('by phase: comes off the value for each phase the building is visited in'),
  owner: id.optional(),
  cap_cents: amount.optional().describe('options and visits, all phases'),
  minSpendIfVisited_cents: amount.optional().describe('least cost of options in each phase with a visit'),
  oneFamily: z.boolean().optional(),
});

const input = z.strictObject({
  groups: z.array(z.strictObject({ id, building: id.optional(), phases, options: z.array(option) })),
  phases: z.array(z.strictObject({ cap_cents: amount, crewMinutes: amount.optional(), valueFactor: amount.optional() })).min(1),
  buildings: z.array(building).optional(),
  owners: z.array(z.strictObject({ id, cap_cents: amount.describe('options and visits, all phases') })).optional(),
  must: z.array(id).optional().describe('groups of which exactly one option is taken'),
  mustNot: z.array(id).optional(),
  exclusive: z.array(z.tuple([id, id])).optional().describe('pairs of groups of which at most one is taken'),
  keepTogether: z
    .array(z.strictObject({ groups: z.array(id).min(2), price: amount }))
    .optional()
    .describe('taken all in one phase or not at all, otherwise price comes off the value'),
  timeLimit_s: z.number().positive().optional().describe('solving only'),
});

/** The best choice of options under the caps, with the bound no choice can pass. */
export const kernel = defineKernel({
  name: 'select',
  about: 'The best choice of options under the caps: what is taken in which phase, its value, and the bound no choice can pass.',
  input,
  run: (problem) => select(problem, { now_s: () => performance.now() / 1000 }),
});
