import type { FilmOption, LifeSegment } from '../options/option.js';
import type { ValuedOptions } from '../options/valued-options.js';
import type { BillsReview } from './review.js';
import { realisationOfDwelling } from './with-bills.js';

const scaled = (segment: LifeSegment, share: number): LifeSegment => ({
  ...segment,
  saving: {
    coolingElectricity_kWh: segment.saving.coolingElectricity_kWh * share,
    cooling_cents: segment.saving.cooling_cents * share,
    addedHeating_cents: segment.saving.addedHeating_cents * share,
    addedHeating_kWh: segment.saving.addedHeating_kWh * share,
  },
});

function countedOption(option: FilmOption, share: number): FilmOption {
  if (option.counted !== undefined) return option;
  return { ...option, counted: share, segments: option.segments.map((s) => scaled(s, share)), yearlyCooling_cents: option.yearlyCooling_cents * share, yearlyCoolingSpread_cents: option.yearlyCoolingSpread_cents * share };
}

/** Options with their savings as found in studies and bills, where the settings ask for that; as modelled otherwise. An option is scaled once. */
export function counted(valued: ValuedOptions, review: BillsReview): ValuedOptions {
  if (review.setting === 'as-modelled') return valued;
  return { ...valued, options: valued.options.map((o) => countedOption(o, realisationOfDwelling(review, o.dwelling).middle)) };
}
