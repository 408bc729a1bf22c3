import type { DrawSpread } from '#calc';

const dollars = (cents: number): string => `${cents < 0 ? '−' : ''}$${Math.abs(Math.round(cents / 100)).toLocaleString('en-US')}`;

/** A spread of money in words: what nine draws in ten reach, the middle, what one in ten passes. */
export function spreadWords(spread: DrawSpread, what: string): string {
  return `9 in 10 chance of at least ${dollars(spread.nineInTenAtLeast)} ${what}; middle ${dollars(spread.middle)}; 1 in 10 chance of more than ${dollars(spread.oneInTenMoreThan)}`;
}

/** A share as so many in ten, or in a hundred near the ends. */
export function chanceWords(share: number): string {
  if (share >= 0.995) return 'in every draw but a few';
  if (share <= 0.005) return 'in hardly any draw';
  if (share > 0.95 || share < 0.05) return `in ${Math.round(share * 100)} draws of 100`;
  return `in ${Math.round(share * 10)} draws of 10`;
}
