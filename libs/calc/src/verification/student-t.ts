/** ln Γ(x) for x > 0 by the series of Lanczos (g = 7, nine terms). */
function logGamma(x: number): number {
  const terms = [0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7];
  const z = x - 1;
  const sum = terms.reduce((total, term, i) => (i === 0 ? term : total + term / (z + i)), 0);
  const t = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** Continued fraction of the incomplete beta function. */
function betaFraction(a: number, b: number, x: number): number {
  const tiny = 1e-300;
  const held = (value: number): number => (Math.abs(value) < tiny ? tiny : value);
  let c = 1;
  let d = 1 / held(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m <= 300; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / held(1 + even * d);
    c = held(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / held(1 + odd * d);
    c = held(1 + odd / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return fraction;
}

function incompleteBeta(a: number, b: number, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(1 - x));
  return x < (a + 1) / (a + b + 2) ? (front * betaFraction(a, b, x)) / a : 1 - (front * betaFraction(b, a, 1 - x)) / b;
}

/**
 * Student's t that a share of all draws stays within, both sides counted.
 *
 *   P(|T| ≤ t) = confidence
 *
 * @param confidence above 0, below 1; 0.9 is the value at 0.95 on one side
 * @param degreesOfFreedom above 0
 * @returns t, above 0
 * @throws RangeError outside those ranges
 * @source incomplete beta function by its continued fraction, Abramowitz & Stegun 26.7.1 and 26.5.8 (from memory)
 */
export function studentT(confidence: number, degreesOfFreedom: number): number {
  if (!(confidence > 0 && confidence < 1)) throw new RangeError(`confidence must be between 0 and 1, got ${confidence}`);
  if (!(degreesOfFreedom > 0)) throw new RangeError(`degreesOfFreedom must be above 0, got ${degreesOfFreedom}`);
  const outside = (t: number): number => incompleteBeta(degreesOfFreedom / 2, 0.5, degreesOfFreedom / (degreesOfFreedom + t * t));
  let [low, high] = [0, 1];
  while (outside(high) > 1 - confidence) high *= 2;
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (outside(middle) > 1 - confidence) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
