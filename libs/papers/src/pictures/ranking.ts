import type { Plan, RankedDwelling } from '#planning';
import type { Say } from '../texts/texts.js';
import { captions, ticksOf } from './axis.js';
import type { Picture, Shape } from './picture.js';

export interface RankingAsk {
  /** Best ranks shown, then the best of each building not among them. */
  readonly best: number;
  readonly ofEachBuilding: number;
}

const WIDTH = 660;
const LEFT = 226;
const RIGHT = WIDTH - 30;
const ROW = 20;

/** The head of the list, then the best of every building that is not in it, so that the far end is seen too. */
export function shownRanks(plan: Plan, ask: RankingAsk): RankedDwelling[] {
  const later = plan.buildings.flatMap((b) => plan.rankedDwellings.filter((r) => r.building === b.id && r.rank > ask.best).slice(0, ask.ofEachBuilding));
  return [...plan.rankedDwellings.filter((r) => r.rank <= ask.best), ...later.sort((a, b) => a.rank - b.rank)];
}

const MOST_LETTERS = 26;
const cutOff = (text: string): string => (text.length > MOST_LETTERS ? `${text.slice(0, MOST_LETTERS - 1)}…` : text);

function inPlanText(row: RankedDwelling, plan: Plan, say: Say): string {
  const line = plan.lines.find((l) => l.dwelling === row.dwelling);
  if (line !== undefined) return cutOff(line.option.id === row.option ? line.phase : say('rank.other', { phase: line.phase }));
  if (row.inPlan.startsWith('waits')) return say('rank.waits');
  if (row.inPlan.startsWith('in reserve')) return say('rank.reserve');
  if (row.inPlan.startsWith('does not pay')) return say('rank.poor');
  return cutOff(row.inPlan);
}

function rowShapes(row: RankedDwelling, at: { readonly y: number; readonly X: (value: number) => number; readonly isPlanned: boolean; readonly words: string }): Shape[] {
  const { X } = at;
  const middle = at.y + ROW / 2;
  const text = (x: number, words: string, more: { readonly size?: number; readonly align?: 'left' | 'right' } = {}): Shape => ({ kind: 'text', x, y: middle + 4, text: words, size: more.size ?? 11, ...(more.align === undefined ? {} : { align: more.align }) });
  const bar = Math.max(0, row.perDollar);
  return [
    text(34, String(row.rank), { align: 'right' }),
    text(42, row.band),
    text(64, cutOff(row.dwelling).slice(0, 12)),
    text(136, at.words, { size: 9 }),
    { kind: 'rect', x: LEFT, y: at.y + 4, width: X(bar) - LEFT, height: ROW - 8, fill: at.isPlanned ? 'grey' : 'white', thickness: 0.9 },
    { kind: 'line', points: [[X(row.perDollarLow), middle], [X(row.perDollarHigh), middle]], thickness: 1.6 },
    ...[row.perDollarLow, row.perDollarHigh].map((v): Shape => ({ kind: 'line', points: [[X(v), middle - 4], [X(v), middle + 4]], thickness: 1.6 })),
  ];
}

/** Ranked dwellings with the range of each. */
export function rankingPicture(plan: Plan, say: Say, ask: RankingAsk = { best: 12, ofEachBuilding: 2 }): Picture {
  const rows = shownRanks(plan, ask);
  const head = captions(say('rank.title'), say('rank.about', { name: plan.name }), WIDTH);
  const top = head.height + 26;
  const bottom = top + rows.length * ROW;
  const most = Math.max(0.01, ...rows.map((r) => r.perDollarHigh));
  const ticks = ticksOf(0, most, 7);
  const end = Math.max(most, ticks[ticks.length - 1] ?? most);
  const X = (value: number): number => LEFT + (Math.min(end, Math.max(0, value)) / end) * (RIGHT - LEFT);
  const planned = new Set(plan.lines.map((l) => l.dwelling));
  return {
    width: WIDTH,
    height: bottom + 46,
    title: say('rank.title'),
    shapes: [
      ...head.shapes,
      ...ticks.flatMap((t): Shape[] => [
        { kind: 'line', points: [[X(t), top - 4], [X(t), bottom]], thickness: 0.6, pale: true },
        { kind: 'text', x: X(t), y: top - 9, text: String(t), size: 11, align: 'middle' },
      ]),
      ...rows.flatMap((row, i): Shape[] => {
        const y = top + i * ROW;
        const gap = i > 0 && row.rank !== rows[i - 1]!.rank + 1;
        return [
          ...(gap ? [{ kind: 'line', points: [[10, y], [RIGHT, y]], thickness: 1, pale: true } satisfies Shape] : []),
          ...rowShapes(row, { y, X, isPlanned: planned.has(row.dwelling), words: inPlanText(row, plan, say) }),
        ];
      }),
      { kind: 'line', points: [[LEFT, top - 4], [LEFT, bottom]], thickness: 1.4 },
      { kind: 'text', x: (LEFT + RIGHT) / 2, y: bottom + 17, text: say('rank.axis'), size: 11, align: 'middle' },
      { kind: 'text', x: 10, y: bottom + 36, text: say('rank.gap'), size: 10 },
    ],
  };
}
