import { calibratedRealisation, learnedRealisation, realisationOf, studiedRealisation } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const share = z.number().gt(0);

const input = z.strictObject({
  studies: z.array(z.strictObject({ name: z.string().default(''), measuredShare: share, modelledShare: share })).min(2).describe('share of cooling saved as measured, and as models give it'),
  weight: z.number().min(0).max(1).default(0).describe('how much bills before the work decide, 0 none … 1 all'),
  explainedShare: z.number().min(0).max(1).describe('part of the gap that comes from cooling itself being modelled wrong'),
  leftSpread: z.number().min(0).describe('standard deviation of ln(factor) left when the bills say all they can'),
  measured: z.strictObject({ factor: z.number(), standardError: z.number().gt(0) }).optional().describe('measured over modelled saving by bills after the work'),
});

/** How much of a modelled saving is expected in bills. */
export const kernel = defineKernel({
  name: 'realisation',
  about: 'How much of a modelled saving is expected in bills, by studies, bills before the work and bills after it: one in ten below, middle, one in ten above.',
  input,
  run: ({ studies, weight, explainedShare, leftSpread, measured }) => {
    const before = calibratedRealisation(studiedRealisation(studies), weight, { explainedShare, leftSpread });
    return measured === undefined ? { ...before, ...realisationOf(before) } : learnedRealisation(before, measured);
  },
});
