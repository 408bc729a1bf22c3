import type { AssumedValue, Building, Lock, Phase } from '#calc';
import { filmOnSide } from '../dwelling/dwelling-task.js';
import type { FilmChoices } from '../options/film-choices.js';
import { sortedBy } from '../grouped.js';
import type { HandLocks } from '../known/hand-locks.js';
import type { KnownPortfolio } from '../known/known-portfolio.js';
import type { FilmOption, OptionWindow, PhaseValue } from '../options/option.js';
import { paneCount } from '../known/placed-windows.js';
import type { DefaultOf } from './assumption-book.js';
import { defaultsOf, type PlanJob } from './plan-job.js';
import type { PlanTerms } from '../plan/terms.js';
import { type LengthTerms, withLengths } from '../rolls/by-length.js';
import type { RollPricing } from '../rolls/price-by-rolls.js';
import type { Candidate } from '../choice/candidate.js';
import { remainingCaps } from '../ledger/remaining-caps.js';
import { phaseValue } from '../options/value.js';
import { withCrewTime } from './crew-time.js';
import { visitCost } from './visit-cost.js';
import { setOfOption, type ValuedOptions } from '../options/valued-options.js';
import { ROOM_NOT_NAMED } from '../words/told.js';
import { windowsOfSet } from '../options/film-options.js';

/** Functions and lists every stage after the options asks for, made once from the job. */
export interface PlanSettingsInForce {
  readonly terms: PlanTerms;
  readonly phases: readonly Phase[];
  /** Crew minutes that were worked out from the crew's calendar. */
  readonly derived: readonly AssumedValue[];
  readonly buildings: ReadonlyMap<string, Building>;
  readonly locks: readonly Lock[];
  readonly lockedIn: ReadonlySet<string>;
  readonly valueIn: (option: FilmOption, phase: Phase) => PhaseValue;
  readonly visit: (building: Building) => { readonly cents: number; readonly minutes: number };
  readonly notice_h: (building: Building) => number;
  readonly endYearOf: (building: string) => number | null;
  readonly ownerOf: (building: string) => string;
  readonly timeLimit_s: number | undefined;
}

export function settingsInForce(job: PlanJob, known: KnownPortfolio, of: { readonly terms: PlanTerms; readonly locks: HandLocks }): PlanSettingsInForce {
  const defaultOf = defaultsOf(job.catalogue);
  const { terms } = of;
  const { buildings } = known;
  const endYearOf = (id: string): number | null => buildings.get(id)?.endYear ?? null;
  const locks = of.locks.chosen;
  const visit: PlanSettingsInForce['visit'] = (building) => visitCost(building, { terms, defaultOf });
  const notice_h = (building: Building): number => building.notice_h ?? defaultOf<number>('notice_h').value;
  const caps = sortedBy(remainingCaps(job.portfolio), (p) => p.id); // a cap less what is paid and ordered
  const kept_min = new Map((job.settled?.redoMoney ?? []).map((m) => [m.phase, m.minutes]));
  const crewTime = withCrewTime(caps, { settings: job.portfolio.settings, buildings, films: job.portfolio.films, madeOn: job.madeOn, kept_min, visit, notice_h, defaultOf });
  return {
    terms,
    phases: crewTime.phases,
    derived: crewTime.assumed,
    buildings,
    locks,
    lockedIn: new Set(locks.filter((l) => l.direction === 'in').map((l) => l.subject)),
    valueIn: (option, phase) => phaseValue(option, phase, { terms, endYear: endYearOf(option.building) }),
    visit,
    notice_h,
    endYearOf,
    ownerOf: (id) => buildings.get(id)?.ownerEntity ?? '',
    timeLimit_s: job.timeLimit_s,
  };
}

/** The windows of a plan line as the crew and the cut list see them. */
export function lineWindows(candidate: Pick<Candidate, 'option'>, at: { readonly valued: ValuedOptions; readonly choices: FilmChoices }): OptionWindow[] {
  const task = at.valued.tasks.find((t) => t.dwelling.id === candidate.option.dwelling);
  if (task === undefined) throw new RangeError(`dwelling must have a task, got ${candidate.option.dwelling}`);
  const set = setOfOption(candidate.option, at.choices);
  return windowsOfSet(task, set, at.choices.filmable).map((w): OptionWindow => {
    const film = filmOnSide(set, w.azimuth_deg)!;
    const state = at.choices.filmable.of(w)[film]!;
    return {
      window: w.id,
      mark: w.mark,
      room: w.room ?? ROOM_NOT_NAMED,
      azimuth_deg: w.azimuth_deg,
      film: at.choices.films[film]!.film.id,
      paneCount: paneCount(w),
      width_mm: w.width.mm,
      height_mm: w.height.mm,
      enteredWidth: w.width.entered,
      enteredHeight: w.height.entered,
      glazing: w.glazing ?? 'not known',
      outcome: state.outcome,
      reasons: state.reasons,
      rules: state.rules,
      consent: state.consent,
      consentTold: state.consentTold,
      reach: w.reach ?? 'floor',
      flags: w.flags,
      existingFilm: w.existingFilm === 'present',
      fromPlanType: w.fromPlanType,
      inventoryRow: w.inventoryRow,
    };
  });
}

/** What film without a roll on offer is priced by. */
const lengthTerms = (defaultOf: DefaultOf): LengthTerms => ({ price_cents_m2: defaultOf<number>('film_cents_m2').value, width_mm: defaultOf<number>('widestRoll_mm').value });

/** What pricing by rolls needs, with the windows of a line looked up once. */
export function rollPricing(job: PlanJob, settings: PlanSettingsInForce, at: { readonly valued: ValuedOptions; readonly choices: FilmChoices }): RollPricing {
  const kept = new Map<string, readonly OptionWindow[]>();
  return {
    phases: settings.phases,
    buildings: settings.buildings,
    films: new Map(at.choices.films.map((f) => [f.film.id, f.film])),
    rolls: withLengths(job.portfolio.rolls, at.choices.films.map((f) => f.film), lengthTerms(defaultsOf(job.catalogue))),
    terms: settings.terms,
    visit: settings.visit,
    mayRotate: at.choices.mayRotate,
    ...(job.cutRule === undefined ? {} : { cutRule: job.cutRule }),
    ...(job.lotRule === undefined ? {} : { lotRule: job.lotRule }),
    windowsOf: (candidate) => {
      let windows = kept.get(candidate.option.id);
      if (windows === undefined) kept.set(candidate.option.id, (windows = lineWindows(candidate, at)));
      return windows;
    },
  };
}
