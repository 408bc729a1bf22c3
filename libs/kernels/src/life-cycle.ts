import { lifeCycle, type LifeCycleResult, type LifeCycleTerms, type Missing, projectLifeCycle } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const rate = z.number().gt(-1);
const cents = z.number();

const input = z
  .strictObject({
    flows_cents: z.array(cents).min(2).optional().describe('year 0, year 1, …; money paid is below zero; fractions of a cent allowed'),
    cost_cents: z.number().min(0).optional(),
    rebate_cents: z.number().min(0).optional(),
    firstYearSaving_cents: cents.optional().describe('at base-date prices'),
    escalation: rate.optional(),
    degradation: z.number().min(0).max(1).optional(),
    yearlyPenalty_cents: cents.optional().describe('at base-date prices'),
    life_years: z.number().int().min(1).optional(),
    removal_cents: z.number().min(0).optional().describe('paid in the last year, not escalated'),
    discountRate: rate,
    basis: z.enum(['real', 'nominal']).default('real').describe('of every rate and flow here; they are never mixed'),
    financeRate: rate.optional(),
    reinvestRate: rate.optional(),
  })
  .superRefine((given, context) => {
    const needed = ['cost_cents', 'firstYearSaving_cents', 'life_years'] as const;
    const ofProject = [...needed, 'rebate_cents', 'escalation', 'degradation', 'yearlyPenalty_cents', 'removal_cents'] as const;
    for (const field of given.flows_cents === undefined ? needed : ofProject) {
      const isGiven = given[field] !== undefined;
      if (given.flows_cents === undefined && !isGiven) context.addIssue({ code: 'custom', path: [field], message: `${field} is needed where flows_cents is not given` });
      if (given.flows_cents !== undefined && isGiven) context.addIssue({ code: 'custom', path: [field], message: `${field} belongs to a project; flows_cents is given` });
    }
  });

type Given = z.infer<typeof input>;

function worth(given: Given): LifeCycleResult {
  const { flows_cents, discountRate, basis, financeRate, reinvestRate, cost_cents = 0, firstYearSaving_cents = 0, life_years = 1 } = given;
  const terms: LifeCycleTerms = { basis, discountRate, ...(financeRate === undefined ? {} : { financeRate }), ...(reinvestRate === undefined ? {} : { reinvestRate }) };
  if (flows_cents !== undefined) return lifeCycle(flows_cents, terms);
  const { rebate_cents = 0, escalation = 0, degradation = 0, yearlyPenalty_cents = 0, removal_cents = 0 } = given;
  return projectLifeCycle({ cost_cents, rebate_cents, firstYearSaving_cents, escalation, degradation, yearlyPenalty_cents, life_years, removal_cents }, terms);
}

const measures = ['irr', 'mirr', 'sir', 'airr', 'simplePayback_years', 'discountedPayback_years'] as const;

/** Figures that do not exist become null, with the reason beside under `why`. */
function asJson(result: LifeCycleResult): object {
  const figures: Record<string, number | null> = {};
  const why: Record<string, string> = {};
  for (const name of measures) {
    const figure: number | Missing = result[name];
    if (typeof figure === 'number') figures[name] = figure;
    else {
      figures[name] = null;
      why[name] = figure.why;
    }
  }
  return { basis: result.basis, npv_cents: result.npv_cents, ...figures, withinLife: result.withinLife, why, flows_cents: result.flows_cents };
}

/** Worth of yearly flows, or of a project by its first-year figures. */
export const kernel = defineKernel({
  name: 'life-cycle',
  about: 'Net present value, rates of return, savings-to-investment ratio and paybacks of yearly flows or of a project.',
  input,
  run: (given) => asJson(worth(given)),
});
