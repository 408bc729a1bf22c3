/**
 * Largest whole number a choice can be worth when its value is known to be at most `bound`; a bound that ends just below a
 * whole number by rounding of the sums keeps that number.
 *
 * @param bound real bound
 * @param size sum of the magnitudes added up in it, for the rounding allowed
 * @returns whole number
 * @throws never
 */
export function wholeBound(bound: number, size: number): number {
  return Math.floor(bound + 1e-6 + 1e-13 * size);
}
