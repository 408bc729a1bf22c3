import type { FilmOption, LifeSegment } from '../options/option.js';
import type { DrawnDwelling } from './drawn-dwelling.js';
import { type DrawOrder, drawnValue } from './draw-book.js';

/** Savings of one option under all draws, and what its money is worth in each. */
export interface DrawnSavings {
  readonly option: FilmOption;
  /** Shape: [spans × draws], cents a year, net of added heating. */
  readonly savings_cents: Float64Array;
}

/** Cuts a dwelling's block of results into its options, in the order the sets were asked for. */
export function drawnSavings(options: readonly FilmOption[], of: DrawnDwelling, draws: number): DrawnSavings[] {
  const size = of.spans * draws;
  return options.map((option, i) => ({ option, savings_cents: of.savings_cents.subarray(i * size, (i + 1) * size) }));
}

/**
 * Segments with the plant replaced some years later (or earlier, below zero); the boundary stays between its neighbours, since only the states
 * on both sides of it were computed.
 */
export function withPlantYear(segments: readonly LifeSegment[], later_yr: number): LifeSegment[] {
  return segments.map((segment, i) => {
    const before = segments[i - 1];
    if (before === undefined || before.plant === segment.plant) return segment;
    const next = segments[i + 1];
    const moved = Math.max(before.firstYear + 1, segment.firstYear + Math.round(later_yr));
    return { ...segment, firstYear: next === undefined ? moved : Math.min(moved, next.firstYear - 1) };
  });
}

/** An option as one draw has it: its saving stream as modelled, its plant's year and the cost of its work. */
export function optionInDraw(drawn: DrawnSavings, order: DrawOrder, draw: number): FilmOption {
  const { option, savings_cents } = drawn;
  const price = drawnValue(order, 'price', { scope: '*', draw });
  const segments = option.segments.map((segment, i): LifeSegment => ({
    ...segment,
    saving: { ...segment.saving, cooling_cents: price * savings_cents[i * order.draws + draw]!, addedHeating_cents: 0 },
  }));
  const more = drawnValue(order, 'labour', { scope: '*', draw }) - 1;
  const { cost } = option;
  const labour_cents = cost.labour_cents * (1 + more);
  const labourTax_cents = cost.labourTax_cents * (1 + more);
  return {
    ...option,
    segments: withPlantYear(segments, drawnValue(order, 'plantYear', { scope: option.dwelling, draw })),
    cost: { ...cost, labour_cents, labourTax_cents, total_cents: cost.total_cents + more * (cost.labour_cents + cost.labourTax_cents) },
  };
}
