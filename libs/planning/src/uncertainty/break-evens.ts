import { type Phase, presentValue } from '#calc';
import type { FailureBreakEven } from '../energy/energy-types.js';
import { failureBreakEven } from '../energy/failure-break-even.js';
import type { FilmOption } from '../options/option.js';
import { boughtWith, optionFlows, phaseValue } from '../options/value.js';
import type { PlanTerms } from '../plan/terms.js';
import { withPlantYear } from './drawn-option.js';

/** What would have to be so for a line to be worth nothing; a figure without a value says why there is none. */
export interface BreakEvens {
  /** The line drops out when electricity costs less than this share of the tariff. */
  readonly priceShare: number | null;
  /** The line drops out when the plant is replaced in or before this calendar year. */
  readonly plantReplacedBy: number | null;
  /** The line drops out when more than this share of its filmed panes has to be replaced a year; null where no price of a pane is given or it is worth nothing. */
  readonly paneFailures_1_yr?: number | null;
  readonly words: readonly string[];
}

interface Terms {
  readonly terms: PlanTerms;
  readonly endYear: number | null;
  /** Price of a pane put in again, cents; null where the survey gives none. */
  readonly paneReplacement_cents?: number | null;
}

const valueOf = (option: FilmOption, phase: Phase, at: Terms): number => {
  const value = phaseValue(option, phase, at);
  return at.terms.view === 'owner' ? value.owner_cents : value.whole_cents;
};

const changeOf = ({ segments }: FilmOption): number => segments.findIndex((s, i) => i > 0 && s.plant !== segments[i - 1]!.plant);

/** Latest year of replacement in which the line is worth nothing any more; null where no year does that. */
function plantYear(option: FilmOption, phase: Phase, at: Terms): number | null {
  const change = changeOf(option);
  if (change < 0) return null;
  const planned = option.segments[change]!.firstYear;
  const first = Number(phase.firstDay.slice(0, 4));
  for (let year = planned; year > first; year--) {
    if (valueOf({ ...option, segments: withPlantYear(option.segments, year - planned) }, phase, at) < 0) return year;
  }
  return null;
}

function plantWords(option: FilmOption, year: number | null): string {
  if (changeOf(option) < 0) return 'its plant is not replaced within the film’s life, so an earlier year was not worked out';
  return year === null ? 'stays whenever the plant is replaced' : `drops out if the plant is replaced by ${year}`;
}

const failureWords = ({ share_1_yr, why }: FailureBreakEven): string =>
  share_1_yr === null ? `pane failures: ${why ?? 'not worked out'}` : `drops out if more than ${(share_1_yr * 100).toFixed(1)} % of its filmed panes have to be replaced a year`;

/** Break-evens of a line at the plan's own figures. */
export function breakEvens(option: FilmOption, phase: Phase, at: Terms): BreakEvens {
  const rate = at.terms.realDiscountRate;
  const flows = optionFlows(option, phase, at);
  const saving = presentValue(at.terms.view === 'owner' ? flows.owner_cents : flows.whole_cents, rate);
  const cost = boughtWith(flows, (cents) => presentValue(cents, rate));
  const priceShare = saving > 0 ? cost / saving : null;
  const plantReplacedBy = plantYear(option, phase, at);
  const failures = failureBreakEven({ value_cents: valueOf(option, phase, at), panes: option.paneCount, paneReplacement_cents: at.paneReplacement_cents ?? null, years: option.filmLife_yr, realDiscountRate: rate });
  const words = [
    priceShare === null ? 'saves nothing in this view: no price makes it pay' : priceShare <= 1 ? `drops out if electricity costs less than ${Math.ceil(priceShare * 100)} % of the tariff` : `enters if electricity costs more than ${Math.ceil(priceShare * 100)} % of the tariff`,
    plantWords(option, plantReplacedBy),
    failureWords(failures),
  ];
  return { priceShare, plantReplacedBy, paneFailures_1_yr: failures.share_1_yr, words };
}
