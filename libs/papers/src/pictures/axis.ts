import type { Shape } from './picture.js';

/** Round steps over a range: 1, 2 or 5 times a power of ten, about as many as asked. */
export function ticksOf(low: number, high: number, about: number): number[] {
  if (!(high > low)) return [low];
  const rough = (high - low) / Math.max(1, about);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((m) => m * power).find((s) => s >= rough * 0.999) ?? 10 * power;
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/** A range that ends on round steps and holds all values and zero. */
export function rangeOf(values: readonly number[], about: number): { readonly low: number; readonly high: number; readonly ticks: readonly number[] } {
  const low = Math.min(0, ...values);
  const high = Math.max(0, ...values);
  const ticks = ticksOf(low, high > low ? high : low + 1, about);
  const step = ticks.length > 1 ? ticks[1]! - ticks[0]! : high - low || 1;
  const from = Math.floor(low / step + 1e-9) * step;
  const to = Math.ceil(high / step - 1e-9) * step || step;
  return { low: from, high: to, ticks: ticksOf(from, to, Math.round((to - from) / step)) };
}

export interface Plot {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

interface PlotAxis {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
  readonly words: string;
}

const SIZE = 11;
const figure = (value: number): string => value.toLocaleString('en-US', { maximumFractionDigits: 6 }).replace('-', '−');

/** Frame of a plot: pale lines at the steps, their figures, and what the axes count. */
export function plotFrame(plot: Plot, x: PlotAxis, y: PlotAxis): { readonly shapes: Shape[]; readonly X: (value: number) => number; readonly Y: (value: number) => number } {
  const X = (value: number): number => plot.left + ((value - x.low) / (x.high - x.low)) * (plot.right - plot.left);
  const Y = (value: number): number => plot.bottom - ((value - y.low) / (y.high - y.low)) * (plot.bottom - plot.top);
  const shapes: Shape[] = [
    ...y.ticks.flatMap((t): Shape[] => [
      { kind: 'line', points: [[plot.left, Y(t)], [plot.right, Y(t)]], thickness: t === 0 ? 1.2 : 0.6, pale: t !== 0 },
      { kind: 'text', x: plot.left - 6, y: Y(t) + SIZE * 0.35, text: figure(t), size: SIZE, align: 'right' },
    ]),
    ...x.ticks.flatMap((t): Shape[] => [
      { kind: 'line', points: [[X(t), plot.bottom], [X(t), plot.bottom + 4]], thickness: 0.8 },
      { kind: 'text', x: X(t), y: plot.bottom + 17, text: figure(t), size: SIZE, align: 'middle' },
    ]),
    { kind: 'line', points: [[plot.left, plot.top], [plot.left, plot.bottom], [plot.right, plot.bottom]], thickness: 1 },
    { kind: 'text', x: (plot.left + plot.right) / 2, y: plot.bottom + 34, text: x.words, size: SIZE, align: 'middle' },
    { kind: 'text', x: 14, y: (plot.top + plot.bottom) / 2, text: y.words, size: SIZE, align: 'middle', turned: true },
  ];
  return { shapes, X, Y };
}

/** A title and a line below it, broken by the count of letters since pictures are drawn without measuring. */
export function captions(title: string, about: string, width: number): { readonly shapes: Shape[]; readonly height: number } {
  const most = Math.floor((width - 20) / 6.4);
  const lines: string[] = [];
  for (const word of about.split(' ')) {
    const last = lines[lines.length - 1];
    if (last !== undefined && last.length + word.length < most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return {
    shapes: [
      { kind: 'text', x: 10, y: 22, text: title, size: 16, bold: true },
      ...lines.map((text, i): Shape => ({ kind: 'text', x: 10, y: 42 + i * 15, text, size: SIZE })),
    ],
    height: 42 + lines.length * 15,
  };
}
