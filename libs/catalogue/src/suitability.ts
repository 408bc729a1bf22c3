import { NOTHING_KNOWN, OUTCOMES, type PaneFacts, type SuitabilityRule } from '#calc';
import { z } from 'zod';
import { readData } from './data-folder.js';

const factNames = Object.keys(NOTHING_KNOWN) as [keyof PaneFacts, ...(keyof PaneFacts)[]];
const plain = z.union([z.string(), z.boolean(), z.number()]);
const ruleFile = z.strictObject({
  about: z.string(),
  validFrom: z.iso.date(),
  basis: z.enum(['measured', 'published', 'assumed']),
  rules: z.array(
    z.strictObject({
      id: z.string().min(1),
      all: z
        .array(
          z
            .strictObject({
              fact: z.enum(factNames),
              is: plain.optional(),
              isNot: plain.optional(),
              atLeast: z.number().optional(),
              above: z.number().optional(),
              orUnknown: z.boolean().optional(),
              unknown: z.boolean().optional(),
            })
            .refine((test) => [test.is, test.isNot, test.atLeast, test.above, test.unknown].filter((each) => each !== undefined).length === 1, {
              message: 'a test asks one thing',
            }),
        )
        .min(1),
      outcome: z.enum(OUTCOMES as [SuitabilityRule['outcome'], ...SuitabilityRule['outcome'][]]),
      reason: z.string().min(1),
      source: z.string().min(1),
    }),
  ),
});

/**
 * Opens the rule table of what must be asked before a pane is filmed.
 *
 * @param folder the data folder
 */
export function openSuitabilityRules(folder: string): readonly SuitabilityRule[] {
  const { rules } = ruleFile.parse(readData(folder, 'suitability/rules.json'));
  const ids = new Set(rules.map((rule) => rule.id));
  if (ids.size !== rules.length) throw new Error('the suitability rules name the same rule twice');
  return rules.map((rule): SuitabilityRule => ({ ...rule, all: rule.all.map((test) => stripped(test)) }));
}

/** Leaves out what a test does not ask. */
function stripped<T extends object>(test: T): T {
  return Object.fromEntries(Object.entries(test).filter(([, value]) => value !== undefined)) as T;
}
