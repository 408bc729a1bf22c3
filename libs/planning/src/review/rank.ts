import type { FilmOption } from '../options/option.js';

/** An option in the asked order. */
export interface RankedOption {
  readonly option: FilmOption;
  /** Yearly cooling-cost reduction over installed cost, 1/yr. */
  readonly perDollar: number;
  readonly spread: number;
  readonly low: number;
  readonly high: number;
}

/** Standard deviations to the tenth and ninetieth percentile of a normal spread: eight in ten lie between low and high. */
const TENTH_PERCENTILE = 1.2816;

export function rankedOption(option: FilmOption): RankedOption {
  const perDollar = option.yearlyCooling_cents / option.cost.total_cents;
  const spread = option.yearlyCoolingSpread_cents / option.cost.total_cents;
  return { option, perDollar, spread, low: perDollar - TENTH_PERCENTILE * spread, high: perDollar + TENTH_PERCENTILE * spread };
}

const earlier = (a: RankedOption, b: RankedOption): number => b.perDollar - a.perDollar || (a.option.id < b.option.id ? -1 : 1);

/** The best option of each key (a dwelling, or a facade of it), in rank order; ties by id. */
export function bestOf(options: Iterable<FilmOption>, keyOf: (option: FilmOption) => string | null): RankedOption[] {
  const best = new Map<string, RankedOption>();
  for (const option of options) {
    const key = keyOf(option);
    if (key === null || option.cost.total_cents <= 0) continue;
    const candidate = rankedOption(option);
    const before = best.get(key);
    if (before === undefined || earlier(candidate, before) < 0) best.set(key, candidate);
  }
  return [...best.values()].sort(earlier);
}

/**
 * Bands of a ranked list: a band runs on while its head and the next line differ by less than the eight-in-ten range of their difference.
 *
 * @returns band letters, one a line: A, B, … Z, AA, AB, …
 */
export function bandsOf(ranked: readonly RankedOption[]): string[] {
  const bands: string[] = [];
  let head: RankedOption | undefined;
  let band = -1;
  for (const line of ranked) {
    const apart = head === undefined || head.perDollar - line.perDollar > TENTH_PERCENTILE * Math.hypot(head.spread, line.spread);
    if (apart) {
      head = line;
      band += 1;
    }
    bands.push(bandLetters(band));
  }
  return bands;
}

function bandLetters(band: number): string {
  const letter = String.fromCharCode(65 + (band % 26));
  return band < 26 ? letter : bandLetters(Math.floor(band / 26) - 1) + letter;
}
