// Waste and time by job, beside the bound and the best area known: `npx tsx libs/calc/src/cutting/waste.bench.ts`.
import { filmJobs } from '../../../../test/reference/cutting.js';
import { plainGuillotine, plainShelves, type Box } from '../../../../test/reference/cutting-plain.js';
import { strips } from '../../../../test/reference/cutting-strips.js';
import { cut } from './cut.js';
import type { CutJob, CutResult } from './job.js';
import { checkLayout } from './layout-check.js';
import { seeded } from './random.js';

const percent = (share: number): string => (100 * share).toFixed(2).padStart(6);

function timed(job: CutJob): { result: CutResult; ms: number } {
  const start = performance.now();
  const result = cut(job);
  const ms = performance.now() - start;
  const { faults } = checkLayout(job, result);
  if (faults.length > 0) throw new Error(faults.join('; '));
  return { result, ms };
}

console.log('film jobs: % over the bound, listed | ours | ms');
for (const { given, expect, place } of filmJobs.rows) {
  const pieces = given.pieces.map(([width, length, count], k) => ({ id: `p${k}`, width_mm: width * 6.35, length_mm: length * 6.35, count, mayRotate: given.mayRotate }));
  const { result, ms } = timed({ pieces, rolls: given.rollWidths.map((width) => ({ width_mm: width * 6.35 })) });
  console.log(place.padEnd(26), percent(expect.bestKnown / expect.lowerBound - 1), '|', percent(result.overBound ?? 0), '|', ms.toFixed(0));
}

console.log('strips: % over the optimum, shelves | straight cuts | ours | ours turned | ms');
for (const { given, expect, place } of strips.rows) {
  const boxes = given.items.flatMap(([w, h, n]) => Array.from({ length: n }, (): Box => [w, h]));
  const over = (height: number): string => percent(height / expect.optimum - 1);
  const jobOf = (mayRotate: boolean): CutJob => ({ pieces: given.items.map(([width_mm, length_mm, count], k) => ({ id: `p${k}`, width_mm, length_mm, count, mayRotate })), rolls: [{ width_mm: given.width }] });
  const kept = timed(jobOf(false));
  const turned = timed(jobOf(true));
  console.log(place.padEnd(32), over(plainShelves(given.width, boxes)), '|', over(plainGuillotine(given.width, boxes)), '|', over(kept.result.boughtArea_mm2 / given.width), '|', over(turned.result.boughtArea_mm2 / given.width), '|', kept.ms.toFixed(0));
}

console.log('2,000 dwellings, 11,000 pieces, four widths: sizes | turned | by length: % over the bound, ms | rolls of 100 ft: % over, ms');
for (const sizes of [20, 60, 150, 300]) {
  for (const mayRotate of [true, false]) {
    const next = seeded(sizes);
    const eighths = (from: number, to: number): number => Math.round((from + next() * (to - from)) * 8) * 3.175;
    const pieces = Array.from({ length: sizes }, (_, k) => ({ id: `p${k}`, width_mm: eighths(14, 46), length_mm: eighths(20, 80), count: 1 + Math.floor((22_000 * next()) / sizes), mayRotate }));
    const widths = [36, 48, 60, 72].map((width) => width * 25.4);
    const endless = timed({ pieces, rolls: widths.map((width_mm) => ({ width_mm })) });
    const whole = timed({ pieces, rolls: widths.map((width_mm) => ({ width_mm, length_mm: 30_480 })) });
    console.log(String(sizes).padStart(4), mayRotate ? 'yes' : 'no ', '|', percent(endless.result.overBound ?? 0), endless.ms.toFixed(0), '|', percent(whole.result.overBound ?? 0), whole.ms.toFixed(0));
  }
}

console.log('2,000 dwellings, 20,000 pieces, rolls of 100 ft: sizes | turned | % over, ms');
for (const plans of [72, 0]) {
  for (const mayRotate of [true, false]) {
    const next = seeded(5);
    const side = (from: number, to: number): number => Math.round((from + next() * (to - from)) * 8);
    const plan = Array.from({ length: plans }, () => [side(14, 46), side(20, 80)] as const);
    const counts = new Map<string, readonly [width: number, length: number, count: number]>();
    for (let n = 0; n < 20_000; n++) {
      const base = plan[Math.floor(next() * plans)];
      // An eighth of an inch to and fro is what measuring the same window in many dwellings gives.
      const [width, length] = base === undefined ? [side(14, 46), side(20, 80)] : [base[0] + Math.floor(3 * next()) - 1, base[1] + Math.floor(3 * next()) - 1];
      const id = `${width}x${length}`;
      counts.set(id, [width, length, (counts.get(id)?.[2] ?? 0) + 1]);
    }
    const pieces = [...counts].map(([id, [width, length, count]]) => ({ id, width_mm: width * 3.175, length_mm: length * 3.175, count, mayRotate }));
    const rolls = [36, 48, 60, 72].map((width) => ({ width_mm: width * 25.4, length_mm: 30_480 }));
    const { result, ms } = timed({ pieces, rolls });
    console.log(String(pieces.length).padStart(6), mayRotate ? 'yes' : 'no ', '|', percent(result.overBound ?? 0), ms.toFixed(0));
  }
}
