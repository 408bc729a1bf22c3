import { wholeBound } from './bound-rounding.js';
import { checkProblem } from './check-problem.js';
import { compile, type Compiled } from './compiled.js';
import { independentParts, sizeOf } from './independent-parts.js';
import { noMultipliers, storedMultipliers, type Multipliers } from './multipliers.js';
import { PartClock } from './part-clock.js';
import { solveSeveralCapsPart } from './several-caps-part.js';
import { hasOneCapOnly, solveOneCapPart } from './one-cap-part.js';
import type { PartAnswer } from './part-answer.js';
import { planCost } from './plan-cost.js';
import type { SelectionProblem, SelectionResult, SelectionTools } from './problem.js';

/** Limits of the core search: about 200 MB of states and some seconds of work. */
const MOST_STATES = 4e6;
const MOST_WORK = 4e9;

const gapOf = (bound: number, value: number): number => (bound === 0 ? 0 : (bound - value) / bound);

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Groups that stand in must and mustNot at once. */
function contradiction(problem: SelectionProblem): string | null {
  const out = new Set(problem.mustNot ?? []);
  const both = (problem.must ?? []).filter((id) => out.has(id)).sort(compare);
  return both.length === 0 ? null : `${both.join(', ')} must be taken and must not be taken`;
}

function noChoice(status: 'infeasible' | 'bounded', why: string, more: { readonly parts: number; readonly states: number; readonly bound: number | null; readonly struck?: boolean }): SelectionResult {
  return {
    status,
    why,
    chosen: [],
    value: null,
    cost_cents: null,
    crewMinutes: null,
    bound: more.bound,
    gap: null,
    certificate: null,
    effort: { independentParts: more.parts, searchStates: more.states, endedBy: status === 'infeasible' ? 'proof' : more.struck === true ? 'clock' : 'steps' },
  };
}

/** Group of each option, by halving. */
function groupOf(of: Compiled, option: number): number {
  let low = 0;
  let high = of.groupIds.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (of.optionStart[middle]! <= option) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Puts the answers of all parts together. */
function together(problem: SelectionProblem, of: Compiled, all: { answers: readonly Extract<PartAnswer, { found: true }>[]; multipliers: Multipliers; struck: boolean }): SelectionResult {
  const lines = all.answers
    .flatMap(({ options, phases }) => options.map((option, i) => ({ group: groupOf(of, option), option, phase: phases[i]! })))
    .sort((a, b) => a.group - b.group);
  const { cost, minutes } = planCost(of, lines);
  const value = all.answers.reduce((sum, part) => sum + part.value, 0);
  const lagrangian = wholeBound(
    all.answers.reduce((sum, part) => sum + part.bound, 0),
    all.answers.reduce((sum, part) => sum + part.size, 0),
  );
  const partly = all.answers.reduce((sum, part) => sum + part.shown, 0);
  const bound = Math.max(value, Math.min(lagrangian, partly));
  return {
    status: bound === value ? 'optimal' : 'bounded',
    chosen: lines.map(({ group, option, phase }) => ({ group: of.groupIds[group]!, option: of.optionIds[option]!, phase })),
    value,
    cost_cents: cost,
    crewMinutes: minutes,
    bound,
    gap: gapOf(bound, value),
    certificate: {
      multipliers: storedMultipliers(of, all.multipliers, problem),
      bound: lagrangian,
      found: value,
      gap: gapOf(lagrangian, value),
      provedBy: lagrangian === value ? 'bound' : bound === value ? 'search' : 'none',
    },
    effort: { independentParts: all.answers.length, searchStates: all.answers.reduce((sum, part) => sum + part.states, 0), endedBy: bound === value ? 'proof' : all.struck ? 'clock' : 'steps' },
  };
}

/**
 * Best choice of options under the caps, with the bound no choice can pass.
 *
 *   maximise Σ value × phase factor − prices of visits and of sets not kept together, every limit and rule kept
 *
 * Parts that share no limit are solved apart. A part with one cap is solved to the proved optimum.
 * The result does not depend on the order of the input; of equal options the one with the smaller id is taken.
 *
 * @param problem groups with options, phases with caps, rules; whole numbers throughout
 * @param tools clock, linear-programming solver, listener for better plans; all optional
 * @returns the choice with value, bound, gap and certificate; or why there is none
 * @throws RangeError when the problem names what is not there or holds anything but whole numbers
 * @source Pisinger, DIKU report 95/1, chapter 7 for one cap; Lagrangian relaxation for several
 */
export function select(problem: SelectionProblem, tools: SelectionTools = {}): SelectionResult {
  checkProblem(problem);
  const both = contradiction(problem);
  if (both !== null) return noChoice('infeasible', both, { parts: 0, states: 0, bound: null });
  const of = compile(problem);
  const parts = independentParts(of);
  const multipliers = noMultipliers(of);
  const answers: Extract<PartAnswer, { found: true }>[] = [];
  const clock = new PartClock(problem, tools, parts.map((part) => sizeOf(of, part)));
  for (const part of parts) {
    if (part.phases.length === 0) {
      return noChoice('infeasible', `${of.groupIds[part.groups[0]!]!} must be taken, and none of its options fits a phase`, { parts: parts.length, states: 0, bound: null });
    }
    const effort = clock.next();
    const answer = hasOneCapOnly(of, part)
      ? solveOneCapPart(of, part, { multipliers, limits: { mostStates: MOST_STATES, mostWork: MOST_WORK, expired: () => effort.used(1) } })
      : solveSeveralCapsPart(of, part, { multipliers, effort });
    if (!answer.found) return noChoice(answer.impossible ? 'infeasible' : 'bounded', answer.why, { parts: parts.length, states: answer.states, bound: null, struck: clock.struck });
    answers.push(answer);
  }
  return together(problem, of, { answers, multipliers, struck: clock.struck });
}
