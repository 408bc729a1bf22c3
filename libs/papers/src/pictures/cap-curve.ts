import type { CapCurve, Plan } from '#planning';
import { wholeDollarsText } from '#calc';
import type { Say } from '../texts/texts.js';
import { captions, plotFrame, rangeOf } from './axis.js';
import type { Picture, Shape } from './picture.js';

const WIDTH = 640;
const PLOT_HEIGHT = 250;
const CENTS_PER_THOUSAND = 100_000;
const thousand = (cents: number): number => cents / CENTS_PER_THOUSAND;

/** Caps of the plan in the phases of a curve. */
const capNow_cents = (plan: Plan, curve: CapCurve): number => plan.phases.filter((p) => curve.phases.includes(p.phase.id)).reduce((sum, p) => sum + p.phase.cap_cents, 0);

function drawCurve(plan: Plan, curve: CapCurve, say: Say): Picture {
  const isExact = curve.basis === 'exact breakpoints';
  const now = thousand(capNow_cents(plan, curve));
  // An exact curve goes on far beyond any cap; what is near the cap is what is asked.
  const points = curve.points.filter((p, i) => !isExact || i === 0 || thousand(p.cap_cents) <= now * 2.2 || thousand(curve.points[i - 1]!.cap_cents) <= now * 2.2);
  const title = say('curve.title', { of: curve.of });
  const head = captions(title, say(isExact ? 'curve.exact' : 'curve.solved'), WIDTH);
  const x = rangeOf([now * 1.05, ...points.map((p) => thousand(p.cap_cents))], 6);
  const y = rangeOf(points.flatMap((p) => [thousand(p.value_cents), thousand(p.bound_cents)]), 5);
  const plot = { left: 70, right: WIDTH - 24, top: head.height + 14, bottom: head.height + 14 + PLOT_HEIGHT };
  const { shapes, X, Y } = plotFrame(plot, { ...x, words: say('curve.axis.cap') }, { ...y, words: say('curve.axis.value') });
  const line = (value: (p: CapCurve['points'][number]) => number): [number, number][] => points.map((p) => [X(thousand(p.cap_cents)), Y(thousand(value(p)))]);
  const isLeft = X(now) > plot.right - 120;
  return {
    width: WIDTH,
    height: plot.bottom + 46,
    title,
    shapes: [
      ...head.shapes,
      ...shapes,
      ...(isExact ? [] : [{ kind: 'line', points: line((p) => p.bound_cents), thickness: 1.2, dashed: true } satisfies Shape]),
      { kind: 'line', points: line((p) => p.value_cents), thickness: 1.8 },
      ...points.map((p): Shape => ({ kind: 'dot', x: X(thousand(p.cap_cents)), y: Y(thousand(p.value_cents)), radius: isExact ? 1.8 : 3, fill: 'black' })),
      { kind: 'line', points: [[X(now), plot.top], [X(now), plot.bottom]], thickness: 1, dashed: true },
      { kind: 'text', x: X(now) + (isLeft ? -5 : 5), y: plot.bottom - 8, text: say('curve.now', { cap: wholeDollarsText(now * CENTS_PER_THOUSAND) }), size: 11, align: isLeft ? 'right' : 'left' },
    ],
  };
}

/** Value against cap, one picture for each curve of the plan that has points and is worth something. */
export function capCurvePictures(plan: Plan, say: Say): Picture[] {
  return (plan.explanations?.curves ?? []).filter((c) => c.points.length > 1 && c.points.some((p) => p.value_cents > 0)).map((c) => drawCurve(plan, c, say));
}
