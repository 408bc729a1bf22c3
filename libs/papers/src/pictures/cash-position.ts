import type { PaybackLine, Plan } from '#planning';
import type { Say } from '../texts/texts.js';
import { captions, plotFrame, rangeOf, ticksOf } from './axis.js';
import type { Picture, Shape } from './picture.js';

const WIDTH = 640;
const PLOT_HEIGHT = 260;
const CENTS_PER_THOUSAND = 100_000;

/** What has been spent and saved up to the end of each year; index 0 is the study start. */
export interface CashPosition {
  readonly whole_cents: readonly number[];
  readonly owner_cents: readonly number[];
}

/**
 * Cash position of the plan by year: spending falls at the start of a phase's year, savings and taking film off at the ends of the years after it; film ageing and
 * real rise of prices as in the plan, nothing discounted.
 */
export function cashPosition(plan: Plan): CashPosition {
  const { lines } = plan.payback;
  const years = Math.max(0, ...lines.map((l) => l.phaseYear + l.yearly_cents.length));
  const start = Number(plan.terms.studyStart.slice(0, 4)) * 12 + Number(plan.terms.studyStart.slice(5, 7));
  const flows = (part: (l: PaybackLine) => readonly number[]): number[] => {
    const flow = new Array<number>(years + 1).fill(0);
    for (const { phase, spending } of plan.phases) {
      const months = Number(phase.firstDay.slice(0, 4)) * 12 + Number(phase.firstDay.slice(5, 7)) - start;
      const year = Math.min(years, Math.max(0, Math.floor(months / 12)));
      flow[year]! -= spending.total_cents;
    }
    for (const line of lines) {
      part(line).forEach((saved, k) => {
        const year = line.phaseYear + k + 1;
        flow[year]! += saved * (1 + plan.terms.realEscalation) ** year * (1 - plan.terms.filmDegradation_1_yr) ** k;
      });
      flow[line.phaseYear + line.life_yr]! -= line.endRemoval_cents ?? 0;
    }
    let sum = 0;
    return flow.map((f) => (sum += f));
  };
  return { whole_cents: flows((l) => l.yearly_cents), owner_cents: flows((l) => l.owner_cents) };
}

/** Cash position by year, for all payers together and for the owner. */
export function cashPicture(plan: Plan, say: Say): Picture {
  const { whole_cents, owner_cents } = cashPosition(plan);
  const whole = whole_cents.map((c) => c / CENTS_PER_THOUSAND);
  const owner = owner_cents.map((c) => c / CENTS_PER_THOUSAND);
  const start = plan.terms.studyStart;
  const head = captions(say('cash.title'), say('cash.about', { start }), WIDTH);
  const plot = { left: 70, right: WIDTH - 90, top: head.height + 14, bottom: head.height + 14 + PLOT_HEIGHT };
  const y = rangeOf([...whole, ...owner], 6);
  const last = Math.max(1, whole.length - 1);
  const { shapes, X, Y } = plotFrame(plot, { low: 0, high: last, ticks: ticksOf(0, last, 8), words: say('cash.axis.year', { start }) }, { ...y, words: say('cash.axis.money') });
  const line = (values: readonly number[]): [number, number][] => values.map((v, t) => [X(t), Y(v)]);
  const [wholeEnd, ownerEnd] = [Y(whole[whole.length - 1] ?? 0), Y(owner[owner.length - 1] ?? 0)];
  const isClose = Math.abs(wholeEnd - ownerEnd) < 14;
  return {
    width: WIDTH,
    height: plot.bottom + 46,
    title: say('cash.title'),
    shapes: [
      ...head.shapes,
      ...shapes,
      { kind: 'line', points: line(owner), thickness: 1.6, dashed: true },
      { kind: 'line', points: line(whole), thickness: 2 },
      ...whole.map((v, t): Shape => ({ kind: 'dot', x: X(t), y: Y(v), radius: 2.5, fill: 'black' })),
      ...owner.map((v, t): Shape => ({ kind: 'dot', x: X(t), y: Y(v), radius: 2.5, fill: 'white' })),
      { kind: 'text', x: plot.right + 8, y: wholeEnd + (isClose ? -4 : 4), text: say('cash.whole'), size: 11 },
      { kind: 'text', x: plot.right + 8, y: ownerEnd + (isClose ? 12 : 4), text: say('cash.owner'), size: 11 },
    ],
  };
}
