import { depreciation, type DepreciationMethod } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const input = z
  .strictObject({
    basis_cents: z.number().int().min(0),
    monthInService: z.number().int().min(1).max(12).optional(),
    method: z.enum(['mid-month-27.5', 'expense', 'straight-line']),
    years: z.number().int().min(1).optional().describe('of straight-line'),
  })
  .refine((given) => given.method !== 'mid-month-27.5' || given.monthInService !== undefined, { path: ['monthInService'], message: 'monthInService is needed for mid-month-27.5' })
  .refine((given) => given.method !== 'straight-line' || given.years !== undefined, { path: ['years'], message: 'years is needed for straight-line' });

function methodOf({ method, monthInService = 1, years = 1 }: z.infer<typeof input>): DepreciationMethod {
  if (method === 'mid-month-27.5') return { method, monthInService };
  return method === 'straight-line' ? { method, years } : { method };
}

/** Yearly write-off of a cost. */
export const kernel = defineKernel({
  name: 'depreciation',
  about: 'Share and whole cents written off each year: 27.5 years mid-month, expense now, or straight line.',
  input,
  run: (given) => ({ years: depreciation(given.basis_cents, methodOf(given)) }),
});
