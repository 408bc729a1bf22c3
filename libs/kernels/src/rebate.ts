import { rebate_cents } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const notNegative = z.number().min(0);

const input = z.strictObject({
  area_m2: notNegative.describe('glass of the project that meets the terms of the offer'),
  cost_cents: notNegative.describe('of the project’s work'),
  rate_cents_m2: notNegative,
  cap_cents: notNegative.optional().describe('most for one project; no such limit when absent'),
  costShare: z.number().min(0).max(1).optional().describe('most as a share of the cost; the whole cost when absent'),
  areaAtLeast_m2: notNegative.optional().describe('below it nothing is given'),
});

/** What a fund gives towards one project. */
export const kernel = defineKernel({
  name: 'rebate',
  about: 'What a fund gives towards one project: the least of area × rate, cap and share of the cost, and nothing below the least area.',
  input,
  run: ({ area_m2, cost_cents, rate_cents_m2, cap_cents = null, costShare = null, areaAtLeast_m2 = 0 }) => {
    const offered_cents = rebate_cents({ area_m2, cost_cents }, { rate_cents_m2, cap_cents, costShare });
    return { cents: area_m2 < areaAtLeast_m2 ? 0 : Math.round(offered_cents), byArea_cents: area_m2 * rate_cents_m2 };
  },
});
