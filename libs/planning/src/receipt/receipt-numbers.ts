import { dollarsText } from '#calc';

/** A number for a formula: as many digits as it has, four at the most. */
export const digits = (value: number, most = 4): string => String(Number(value.toFixed(most)));

/** Money for a formula: whole cents as on a bill, fractions of a cent to the hundredth. */
export const dollars = (cents: number): string => (Number.isInteger(cents) ? dollarsText(cents) : `${cents < 0 ? '-' : ''}$${(Math.abs(cents) / 100).toFixed(4)}`);

/** A share as people write it. */
export const percent = (share: number): string => `${digits(share * 100)} %`;

/** A sum written out: numbers below zero with their sign. */
export const added = (parts: readonly string[]): string => parts.join(' + ').replaceAll('+ -', '− ');
