import { z } from 'zod';

/** A default with its unit and how far it is to be trusted. */
export interface Assumption<T> {
  readonly value: T;
  readonly unit: string;
  /** Usual range of a number, where one is known. */
  readonly range?: readonly [number, number] | undefined;
  readonly validFrom: string;
  readonly source: string;
  readonly basis: 'measured' | 'published' | 'assumed';
}

const inOrder = ([low, high]: readonly [number, number]): boolean => low <= high;

/** The check of one entry of a data file whose value passes `value`. */
export function assumption<Value extends z.ZodType>(value: Value) {
  return z.strictObject({
    value,
    unit: z.string().min(1),
    range: z.tuple([z.number(), z.number()]).refine(inOrder, 'a range goes from low to high').readonly().optional(),
    validFrom: z.iso.date(),
    source: z.string().min(1),
    basis: z.enum(['measured', 'published', 'assumed']),
  });
}
