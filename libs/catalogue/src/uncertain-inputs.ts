import type { Distribution } from '#calc';
import { z } from 'zod';
import { readData } from './data-folder.js';
import type { Basis } from './glazing.js';

/** Inputs of a plan that are drawn. */
export const UNCERTAIN = ['filmCut', 'glass', 'shade', 'use', 'setPoint', 'efficiency', 'plantYear', 'weather', 'price', 'escalation', 'labour'] as const;
export type UncertainKey = (typeof UNCERTAIN)[number];
/** Who shares one drawn value. */
export type DrawScope = 'portfolio' | 'glazing' | 'film' | 'building' | 'dwelling';

/** How an input may be off, by the basis of its figure. */
export interface UncertainInput {
  readonly key: UncertainKey;
  readonly label: string;
  readonly unit: string;
  readonly scope: DrawScope;
  readonly source: string;
  readonly validFrom: string;
  /** The spread of a figure of this basis; a basis without its own takes the widest, that of an assumed one. */
  readonly spread: (basis: Basis) => Distribution;
}

const figure = z.number();
const distribution = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('normal'), middle: figure, deviation: figure.nonnegative(), low: figure.optional(), high: figure.optional() }),
  z.strictObject({ kind: z.literal('lognormal'), middle: figure.positive(), factor: figure.min(1) }),
  z.strictObject({ kind: z.literal('triangular'), low: figure, middle: figure, high: figure }),
  z.strictObject({ kind: z.literal('uniform'), low: figure, high: figure }),
  z.strictObject({ kind: z.literal('listed'), values: z.array(z.strictObject({ value: figure, chance: figure.min(0).max(1) })).min(1) }),
]);

const input = z.strictObject({
  label: z.string().min(1),
  unit: z.string().min(1),
  scope: z.enum(['portfolio', 'glazing', 'film', 'building', 'dwelling']),
  validFrom: z.iso.date(),
  byBasis: z.strictObject({ measured: distribution.optional(), published: distribution.optional(), assumed: distribution }),
  source: z.string().min(1),
});
const file = z.strictObject({ about: z.string().min(1), inputs: z.record(z.enum(UNCERTAIN), input) });

/**
 * Opens the list of what is uncertain and how far.
 *
 * @param folder the data folder
 */
export function openUncertainInputs(folder: string): readonly UncertainInput[] {
  const { inputs } = file.parse(readData(folder, 'assumptions/uncertain-inputs.json'));
  return UNCERTAIN.map((key): UncertainInput => {
    const { byBasis, ...head } = inputs[key];
    return { key, ...head, spread: (basis) => byBasis[basis] ?? byBasis.assumed };
  });
}
