/** How much of a modelled saving is found in bills, as a factor: one in ten lies below low, one in ten above high. */
export interface Realisation {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** A factor spread as ln(factor) ~ normal. */
export interface LogSpread {
  readonly mean: number;
  readonly standardDeviation: number;
}

/** What a study found beside what models of unshaded rooms say. */
export interface SavingStudy {
  readonly name: string;
  /** Share of cooling saved as measured, above 0. */
  readonly measuredShare: number;
  /** Share of cooling that models give for such a case, above 0. */
  readonly modelledShare: number;
}

/** How bills before the work narrow the factor. */
export interface CalibrationTerms {
  /** Share of the gap (in ln) that comes from cooling itself being modelled wrong, 0…1: bills before the work take that part off. */
  readonly explainedShare: number;
  /** Standard deviation of ln(factor) that is left when the bills before say all they can. */
  readonly leftSpread: number;
}

const TENTH_PERCENTILE = 1.2816;

/**
 * What studies found of modelled savings.
 *
 *   ln(measured / modelled) over the studies: mean, and standard deviation of the sample
 *
 * @param studies two or more, one vote each
 * @returns mean and standard deviation of ln(factor)
 * @throws RangeError when there are fewer than two or a share is not above 0
 * @source mean and standard deviation of a sample of logarithms
 */
export function studiedRealisation(studies: readonly SavingStudy[]): LogSpread {
  if (studies.length < 2) throw new RangeError(`studies must be two or more, got ${studies.length}`);
  const logs = studies.map(({ name, measuredShare, modelledShare }) => {
    if (!(measuredShare > 0 && modelledShare > 0)) throw new RangeError(`shares of ${name} must be above 0, got ${measuredShare} and ${modelledShare}`);
    return Math.log(measuredShare / modelledShare);
  });
  const mean = logs.reduce((a, b) => a + b, 0) / logs.length;
  return { mean, standardDeviation: Math.sqrt(logs.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (logs.length - 1)) };
}

/**
 * The factor once bills before the work have been compared.
 *
 *   mean × (1 − weight × explained share);  spread: from that of the studies to what is left, by the weight
 *
 * @param studied what studies found
 * @param weight how much the bills decide, 0 none … 1 all: 1 − variance left / variance expected of the pooled comparison
 * @param terms the part of the gap bills can explain, and the spread that is left
 * @returns mean and standard deviation of ln(factor) against the saving of the calibrated model
 * @throws RangeError when weight or explained share is not 0…1, or a spread is below 0
 * @source own rule, see docs/decisions/0011
 */
export function calibratedRealisation(studied: LogSpread, weight: number, terms: CalibrationTerms): LogSpread {
  if (!(weight >= 0 && weight <= 1)) throw new RangeError(`weight must be 0…1, got ${weight}`);
  if (!(terms.explainedShare >= 0 && terms.explainedShare <= 1)) throw new RangeError(`explainedShare must be 0…1, got ${terms.explainedShare}`);
  if (!(terms.leftSpread >= 0)) throw new RangeError(`leftSpread must be 0 or more, got ${terms.leftSpread}`);
  const variance = (1 - weight) * studied.standardDeviation ** 2 + weight * Math.min(terms.leftSpread, studied.standardDeviation) ** 2;
  return { mean: studied.mean * (1 - weight * terms.explainedShare), standardDeviation: Math.sqrt(variance) };
}

/**
 * The factor in three figures.
 *
 *   middle = exp(mean);  low, high = exp(mean ∓ 1.2816 × standard deviation)
 *
 * @param spread of ln(factor)
 * @returns the tenth, fiftieth and ninetieth percentile, above 0
 * @source quantiles of a log-normal
 */
export function realisationOf(spread: LogSpread): Realisation {
  const reach = TENTH_PERCENTILE * spread.standardDeviation;
  return { low: Math.exp(spread.mean - reach), middle: Math.exp(spread.mean), high: Math.exp(spread.mean + reach) };
}

/** Points of the grid a learned factor is worked out on. */
const GRID = 2000;

/**
 * The factor once bills after the work have been compared: what was thought before, weighed with what was measured.
 *
 *   density ∝ log-normal(factor) × normal(measured − factor);  low, middle, high: its tenth, fiftieth and ninetieth percentile
 *
 * A measured factor may be below zero within its error; the learned one is not.
 *
 * @param before what was thought
 * @param measured measured over modelled saving of the treated dwellings, and its standard error above 0
 * @returns the three figures, and mean and standard deviation of ln(factor) for the next phase
 * @throws RangeError when a value is not finite or an error or spread is not above 0
 * @source Bayes' rule on a grid of 2000 points of ln(factor) from −4 to 4 standard deviations; textbook
 */
export function learnedRealisation(before: LogSpread, measured: { readonly factor: number; readonly standardError: number }): Realisation & LogSpread {
  if (!(before.standardDeviation > 0)) throw new RangeError(`standardDeviation must be above 0, got ${before.standardDeviation}`);
  if (!(Number.isFinite(measured.factor) && measured.standardError > 0)) throw new RangeError(`measured must be finite with an error above 0, got ${measured.factor} ± ${measured.standardError}`);
  const logs = Array.from({ length: GRID }, (_, i) => before.mean + before.standardDeviation * (-4 + (8 * (i + 0.5)) / GRID));
  const exponents = logs.map((x) => -(((x - before.mean) / before.standardDeviation) ** 2) / 2 - ((measured.factor - Math.exp(x)) / measured.standardError) ** 2 / 2);
  const top = Math.max(...exponents);
  const weights = exponents.map((e) => Math.exp(e - top));
  const total = weights.reduce((a, b) => a + b, 0);
  const mean = logs.reduce((sum, x, i) => sum + weights[i]! * x, 0) / total;
  const variance = logs.reduce((sum, x, i) => sum + weights[i]! * (x - mean) ** 2, 0) / total;
  const quantile = (share: number): number => {
    let below = 0;
    for (let i = 0; i < GRID; i++) {
      below += weights[i]!;
      if (below >= share * total) return Math.exp(logs[i]!);
    }
    return Math.exp(logs[GRID - 1]!);
  };
  return { low: quantile(0.1), middle: quantile(0.5), high: quantile(0.9), mean, standardDeviation: Math.sqrt(variance) };
}
