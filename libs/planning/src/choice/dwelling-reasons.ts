import { explain, type OptionReason, wholeDollarsText } from '#calc';
import { grouped } from '../grouped.js';
import type { FilmOption } from '../options/option.js';
import { type Candidate, cash_cents } from './candidate.js';
import type { ChosenUnderCaps } from './choose-under-caps.js';
import type { DwellingReason, ReasonedWay, ToEnter, WithLetters } from './explanations.js';
import { optionWords } from './option-words.js';
import { inView } from './selection-problem.js';
import { needs, type ReasonQuestion, withLetters } from './to-enter.js';

/** A candidate with what the prices say of it. */
export interface PricedWay {
  readonly candidate: Candidate;
  readonly reason: OptionReason;
  /** Cent of cap in its phase, in value. */
  readonly cent: number;
}

const MOST_WAYS = 4;
const dollars = wholeDollarsText;

/** All ways of all dwellings at the prices of the choice, best first; a line of whole elevations stands with the figures of the whole. */
export function pricedWays(chosen: ChosenUnderCaps): ReadonlyMap<string, readonly PricedWay[]> {
  const { record } = chosen.choice.proof;
  if (record === undefined || record.result.value === null) return new Map();
  const { cap } = record.result.certificate.multipliers;
  const ways = explain(record.problem, record.result).options.flatMap((reason) =>
    (chosen.posed.candidates.get(reason.option) ?? []).map((candidate): PricedWay => ({ candidate, reason, cent: cap[reason.phase] ?? 0 })),
  );
  const byDwelling = grouped(ways, (w) => w.candidate.option.dwelling);
  for (const own of byDwelling.values()) own.sort((a, b) => b.reason.reducedValue - a.reason.reducedValue || (a.reason.option < b.reason.option ? -1 : 1));
  return byDwelling;
}

const wayOf = ({ candidate, reason }: PricedWay, of: ReasonQuestion): ReasonedWay => ({
  option: candidate.option.id,
  words: optionWords(candidate.option),
  phase: of.settings.phases[candidate.phase]!.id,
  value_cents: Math.round(inView(candidate.value, of.settings.terms)),
  cost_cents: Math.ceil(cash_cents(candidate.option, of.settings.terms)),
  ahead_cents: Math.round(reason.reducedValue),
});

/** Closer than this the prices do not tell which is ahead. */
const EVEN_cents = 50;

/** For whom value is counted. */
const payers = ({ settings }: ReasonQuestion): string => (settings.terms.view === 'owner' ? 'for the owner' : 'for all payers together');

function whyIn(line: Candidate, ways: readonly PricedWay[], of: ReasonQuestion): string {
  const way = ways.find((w) => w.candidate.option.id === line.option.id && w.candidate.phase === line.phase);
  const value = inView(line.value, of.settings.terms);
  const worth = `${optionWords(line.option)}, worth ${dollars(value)}`;
  if (way?.reason.taken !== true) return `${worth}; added after the choice, because it fits the room that whole rolls leave`;
  const ahead = way.reason.reducedValue;
  if (line.bundle !== undefined) return `${optionWords(line.option)}, taken with its whole elevation; all lines of it together are ${dollars(Math.abs(ahead))} ${ahead >= 0 ? 'ahead of' : 'behind'} what their money and hours bring elsewhere`;
  if (Math.abs(ahead) < EVEN_cents) return `${worth}; its money and hours would bring about as much elsewhere, so it is on the edge of the plan`;
  if (ahead < 0) return `${worth}; by the prices alone it is ${dollars(-ahead)} behind, but whole dwellings must fit the caps and the plan with it is worth more`;
  if (value - ahead < EVEN_cents) return `${worth}; it takes nothing away from others, its year has money to spare`;
  return `${worth}; the money and hours it uses would bring ${dollars(value - ahead)} elsewhere, so it is ${dollars(ahead)} ahead`;
}

function whyOut(best: PricedWay, of: ReasonQuestion): string {
  const phase = of.settings.phases[best.candidate.phase]!.id;
  const whole = best.candidate.bundle === undefined ? '' : ' with its whole elevation';
  const worth = `${optionWords(best.candidate.option)} would be worth ${dollars(inView(best.candidate.value, of.settings.terms))}${whole} in ${phase}`;
  if (best.reason.taken) return `the choice took ${optionWords(best.candidate.option)} in ${phase}, but whole rolls pass the cap: first to come back if something drops out`;
  if (best.reason.reducedValue >= 0) return `${worth}, but what is left of the caps does not hold it as a whole`;
  return -best.reason.reducedValue < EVEN_cents ? `${worth}; the money and hours it uses bring about as much elsewhere` : `${worth}; the money and hours it uses bring ${dollars(-best.reason.reducedValue)} more elsewhere`;
}

/** What letters would change, in words after what is so today. */
function afterLetters({ letters, way, value_cents, short_cents }: WithLetters, of: ReasonQuestion): string {
  const then = `with ${letters.length === 1 ? 'it' : 'them'} ${way}`;
  const waits = `waits for ${letters.length === 1 ? letters[0]! : `${String(letters.length)} letters: ${letters.join('; ')}`}`;
  if (value_cents <= 0) return `${waits}; even ${then} would be ${value_cents === 0 ? 'worth nothing' : `${dollars(-value_cents)} short`} over the life of the film, ${payers(of)}`;
  if (short_cents > 0) return `${waits}; ${then} would be worth ${dollars(value_cents)}, ${payers(of)}, but its money and hours bring ${dollars(short_cents)} more elsewhere`;
  return `${waits}; ${then} would be worth ${dollars(value_cents)}, ${payers(of)}`;
}

const NOTHING: ToEnter = { cost_cents: null, filmShare: null, savingShare: null, cap: null, withLetters: null };

/** A dwelling none of whose options may be chosen: it waits, does not pay, is locked out, or has no phase. */
function notPosed(dwelling: string, options: readonly FilmOption[], of: ReasonQuestion): DwellingReason {
  const { settings } = of;
  const { building } = options[0]!;
  const own = settings.phases.map((phase, t) => ({ phase, t })).filter(({ phase }) => phase.ownerEntity === settings.ownerOf(building));
  const ready = options.filter((o) => o.waitsFor.length === 0);
  const valued = ready.flatMap((option) => own.filter(({ phase }) => option.from <= phase.lastDay).map(({ phase, t }) => ({ option, t, value: inView(settings.valueIn(option, phase), settings.terms) })));
  const best = valued.sort((a, b) => b.value - a.value || (a.option.id < b.option.id ? -1 : 1))[0];
  const base = { dwelling, building, phase: null, ways: [] };
  if (best === undefined) {
    const waiting = withLetters(options, { ...of, ahead_cents: -Infinity });
    return { ...base, why: waiting === null ? 'no year of its owner is open to it' : afterLetters(waiting, of), toEnter: { ...NOTHING, withLetters: waiting } };
  }
  if (best.value > 0) return { ...base, why: `${optionWords(best.option)} would be worth ${dollars(best.value)}, but a lock or the rule of whole elevations stands against it`, toEnter: null };
  const toEnter = needs(best.option, best.t, { ...of, short_cents: -best.value, cent: 0, isPosed: false });
  const without = `what may go ahead without a letter does not pay ${payers(of)}: ${optionWords(best.option)} is ${dollars(-best.value)} short over the life of the film`;
  if (toEnter.withLetters != null) return { ...base, why: `${without}; the rest ${afterLetters(toEnter.withLetters, of)}`, toEnter };
  return { ...base, why: `does not pay ${payers(of)}: ${optionWords(best.option)}, the best of it, is ${dollars(-best.value)} short over the life of the film`, toEnter };
}

/** Why each dwelling with an option is in the plan or not, and what would have to be true for it to enter; in order of dwelling. */
export function dwellingReasons(of: ReasonQuestion): DwellingReason[] {
  const ways = pricedWays(of.chosen);
  const lineOf = new Map(of.lines.map((l) => [l.option.dwelling, l]));
  return [...grouped(of.options, (o) => o.dwelling)].sort(([a], [b]) => (a < b ? -1 : 1)).map(([dwelling, options]): DwellingReason => {
    const own = ways.get(dwelling) ?? [];
    const line = lineOf.get(dwelling);
    const shown = own.slice(0, MOST_WAYS).map((w) => wayOf(w, of));
    const { building } = options[0]!;
    if (line !== undefined) return { dwelling, building, phase: of.settings.phases[line.phase]!.id, why: whyIn(line, own, of), toEnter: null, ways: shown };
    const best = own[0];
    if (best === undefined) return notPosed(dwelling, options, of);
    const short_cents = Math.max(0, -best.reason.reducedValue);
    const toEnter = best.candidate.bundle === undefined ? needs(best.candidate.option, best.candidate.phase, { ...of, short_cents, cent: best.cent, isPosed: true }) : null;
    return { dwelling, building, phase: null, why: whyOut(best, of), toEnter, ways: shown };
  });
}
