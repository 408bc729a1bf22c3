import { checkCertificate, checkLayout, cut, pieceOfPane, select, type CutJob, type SelectionProblem } from '#calc';
import { plainGuillotine, plainShelves, type Box } from '../cutting-plain.js';
import { strips, type Strip } from '../cutting-strips.js';
import { filmJobs, pieceSizes, wholePieces, type FilmJob } from '../cutting.js';
import { selectionOneCap, type OneCapInstance } from '../selection-one-cap.js';
import { selectionSeveralCaps, type SeveralCapsInstance } from '../selection-several-caps.js';
import { byName, check, type Check } from './check.js';

const oneCapProblem = (given: OneCapInstance): SelectionProblem => {
  const groups = given.dwellings.map((options, i) => ({
    id: `D${String(i).padStart(3, '0')}`,
    options: options.map(([cost_cents, value], k) => ({ id: `P${k}`, cost_cents, value })),
  }));
  return { groups, phases: [{ cap_cents: given.budget }], must: groups.map(({ id }) => id) };
};

const dwelling = (k: number): string => `D${String(k).padStart(3, '0')}`;

const severalCapsProblem = (given: SeveralCapsInstance): SelectionProblem => ({
  groups: given.dwellings.map(({ building, options }, i) => ({
    id: dwelling(i),
    building: `B${building}`,
    options: options.map(([cost_cents, value, crewMinutes], k) => ({ id: `P${k}`, cost_cents, value, crewMinutes })),
  })),
  phases: given.phaseBudget.map((cap_cents, t) => ({ cap_cents, crewMinutes: given.phaseHours10[t]!, valueFactor: given.phaseFactor[t]! })),
  buildings: given.buildings.map(([visit_cents, visitMinutes, owner, minSpendIfVisited_cents], b) => ({
    id: `B${b}`, visit_cents, visitMinutes, minSpendIfVisited_cents, ...(owner < 0 ? {} : { owner: `O${owner}` }),
  })),
  owners: given.ownerCap.map((cap_cents, w) => ({ id: `O${w}`, cap_cents })),
  must: given.mustDo.map(dwelling),
  mustNot: given.mustNot.map(dwelling),
  exclusive: given.exclusivePairs.map(([a, b]) => [dwelling(a), dwelling(b)] as const),
});

const toldSize = ({ id, dwellings }: { readonly id: string; readonly dwellings: readonly unknown[] }): string => `${id}, ${dwellings.length} dwellings`;

export const choosing: readonly Check[] = [
  check({
    title: 'Choosing under one cap, proved optima',
    table: selectionOneCap,
    told: toldSize,
    compare: ({ given, expect: { optimum } }) => {
      const problem = oneCapProblem(given);
      const result = select(problem);
      return [
        ...byName({ status: 'optimal', value: optimum, bound: optimum, gap: 0 }, result),
        { what: 'findings of the proof’s own check', expected: 0, ours: checkCertificate(problem, result).findings.length },
      ];
    },
  }),
  check({
    title: 'Choosing under several caps, proved optima',
    table: selectionSeveralCaps,
    told: toldSize,
    compare: ({ given, expect: { optimum } }) => {
      const problem = severalCapsProblem(given);
      const result = select(problem);
      return [
        { what: 'status', expected: optimum === null ? 'infeasible' : 'optimal', ours: result.status },
        { what: 'value', expected: optimum, ours: result.value },
        { what: 'findings of the proof’s own check', expected: 0, ours: checkCertificate(problem, result).findings.length },
      ];
    },
  }),
];

const QUARTER_mm = 6.35;
const filmJob = (film: FilmJob): CutJob => ({
  pieces: film.pieces.map(([across, along, count], k) => ({ id: `p${k}`, width_mm: across * QUARTER_mm, length_mm: along * QUARTER_mm, count, mayRotate: film.mayRotate })),
  rolls: film.rollWidths.map((width) => ({ width_mm: width * QUARTER_mm })),
});
const stripJob = (strip: Strip): CutJob => ({
  pieces: strip.items.map(([width_mm, length_mm, count], k) => ({ id: `p${k}`, width_mm, length_mm, count, mayRotate: false })),
  rolls: [{ width_mm: strip.width }],
  rounds: 250,
});
const boxesOf = (strip: Strip): Box[] => strip.items.flatMap(([w, h, n]) => Array.from({ length: n }, (): Box => [w, h]));

interface StripRun { readonly job: CutJob; readonly result: ReturnType<typeof cut>; readonly ours: number; readonly shelf: number; readonly guillotine: number }
const stripRuns = new Map<Strip, StripRun>();
/** A strip filled by us and by two plain passes: heights. */
export function stripRun(given: Strip): StripRun {
  const known = stripRuns.get(given);
  if (known !== undefined) return known;
  const job = stripJob(given);
  const result = cut(job);
  const boxes = boxesOf(given);
  const run = { job, result, ours: result.boughtArea_mm2 / given.width, shelf: plainShelves(given.width, boxes), guillotine: plainGuillotine(given.width, boxes) };
  stripRuns.set(given, run);
  return run;
}

export const cutting: readonly Check[] = [
  check({
    title: 'Cut sizes of the trade',
    table: pieceSizes,
    compare: ({ given, expect: wanted }) => {
      const piece = pieceOfPane({ width_mm: given.width_in * 25.4, height_mm: given.height_in * 25.4 });
      return byName(wanted, { cut: `${piece.widthText} × ${piece.lengthText}`, finished: `${piece.finishedWidthText} × ${piece.finishedLengthText}` });
    },
  }),
  check({
    title: 'Whole pieces from a roll',
    table: wholePieces,
    compare: ({ given, expect: wanted }) => {
      const { rolls, placements } = cut({
        pieces: [{ id: 'a', width_mm: given.width_in * 25.4, length_mm: given.length_in * 25.4, count: given.count, mayRotate: false }],
        rolls: [{ width_mm: 48 * 25.4, length_mm: 1200 * 25.4 }],
      });
      return byName(wanted, { rolls: rolls.length, perRoll: placements.filter((at) => at.roll === 0).length });
    },
  }),
  check({
    title: 'Film jobs, bound and best known area in square quarter inches',
    table: filmJobs,
    told: ({ pieces, mayRotate }) => `${pieces.reduce((sum, [, , count]) => sum + count, 0)} pieces of ${pieces.length} sizes, ${mayRotate ? 'turned or not' : 'not turned'}`,
    compare: ({ given, expect: { lowerBound, bestKnown } }) => {
      const job = filmJob(given);
      const result = cut(job);
      const [bound, bought] = [result.lowerBoundArea_mm2 / QUARTER_mm ** 2, result.boughtArea_mm2 / QUARTER_mm ** 2];
      return [
        { what: 'bound, no lower than the published and no higher than the best known', expected: [lowerBound - (filmJobs.tolerance.abs ?? 0), bestKnown], ours: bound, limit: 0 },
        { what: 'area bought, from the published bound to the best known', expected: [lowerBound, bestKnown], ours: bought, limit: 0.5 },
        { what: 'faults found in the layout', expected: 0, ours: checkLayout(job, result).faults.length, limit: 0 },
      ];
    },
  }),
  check({
    title: 'Published strips: from the optimum of free packing to the better of two plain straight-cut passes',
    table: strips,
    told: ({ width, items }) => `width ${width}, ${items.reduce((sum, [, , count]) => sum + count, 0)} pieces`,
    compare: ({ given, expect: { optimum } }) => {
      const { job, result, ours, shelf, guillotine } = stripRun(given);
      return [
        { what: 'height', expected: [optimum, Math.min(shelf, guillotine)], ours, limit: 1e-9 },
        { what: 'bound, no higher than the optimum', expected: [0, optimum], ours: result.lowerBoundArea_mm2 / given.width, limit: 1e-9 * optimum },
        { what: 'faults found in the layout', expected: 0, ours: checkLayout(job, result).faults.length, limit: 0 },
      ];
    },
  }),
];
