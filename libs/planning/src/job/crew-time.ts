import type { AssumedValue, Building, Film, Phase, PlanSettings } from '#calc';
import { blocks, daysAfter, workDays } from '../crew/work-days.js';
import type { DefaultOf } from './assumption-book.js';

export interface CrewTimeRequest {
  readonly settings: PlanSettings;
  readonly buildings: ReadonlyMap<string, Building>;
  readonly films: readonly Pick<Film, 'side'>[];
  /** ISO date; days before it are gone. */
  readonly madeOn: string;
  /** Person-minutes of each phase kept for panes to be done again. */
  readonly kept_min: ReadonlyMap<string, number>;
  readonly visit: (building: Building) => { readonly minutes: number };
  readonly notice_h: (building: Building) => number;
  readonly defaultOf: DefaultOf;
}

/** Phases with the person-minutes the crew can give each, and where they come from. */
export interface CrewTime {
  readonly phases: readonly Phase[];
  readonly assumed: readonly AssumedValue[];
}

/** A crew's day and what of it is left for the panes. */
interface CrewDay {
  readonly crews: number;
  readonly size: number;
  readonly hours: number;
  readonly mobilisation_min: number;
  readonly noAccess: number;
  readonly net_min: number;
}

const hasOwnCrew = (building: Building): boolean => building.crew !== 'contractor';

/** Film work of all crews on one day, less loading and keys once a crew and day, less the days kept for doors that stay shut. */
function crewDay(of: CrewTimeRequest): CrewDay {
  const { settings, defaultOf } = of;
  const crews = settings.crews ?? defaultOf<number>('crews').value;
  const size = settings.crewSize ?? defaultOf<number>('crewSize').value;
  const hours = settings.crewHours_day ?? 0;
  const noAccess = defaultOf<number>('noAccessShare').value;
  const mobilisation_min = Math.max(0, ...[...of.buildings.values()].filter(hasOwnCrew).map((b) => of.visit(b).minutes));
  return { crews, size, hours, mobilisation_min, noAccess, net_min: (crews * Math.max(0, size * hours * 60 - mobilisation_min)) / (1 + noAccess) };
}

/** Working days of a phase that are still to come and not blocked; a block of outdoor work counts where every film goes outside. */
function openDays(phase: Phase, of: CrewTimeRequest): string[] {
  const notice_d = Math.ceil(Math.min(...[...of.buildings.values()].filter((b) => b.ownerEntity === phase.ownerEntity && hasOwnCrew(b)).map(of.notice_h)) / 24);
  const soonest = daysAfter(of.madeOn, Number.isFinite(notice_d) ? notice_d : 0);
  const first = phase.firstDay > soonest ? phase.firstDay : soonest;
  const isOutdoor = of.films.length > 0 && of.films.every((f) => f.side === 'outdoor');
  return first > phase.lastDay ? [] : workDays(first, phase.lastDay, of.settings.crewDays_wk ?? 0).filter((day) => !of.settings.noWork.some((block) => blocks(block, { day, isOutdoor })));
}

/**
 * Crew minutes of phases that state none, from the crew's calendar: days a week × hours × persons × crews over the days still to come, less
 * loading and keys, doors that stay shut and panes to be done again. Phases of several owners that run together share each day by their caps.
 *
 * Only where the plan file gives both days a week and hours a day: a limit made of assumptions alone would bind a plan nobody limited.
 *
 * @returns the phases as they came where nothing is derived
 */
export function withCrewTime(phases: readonly Phase[], of: CrewTimeRequest): CrewTime {
  const { crewDays_wk, crewHours_day } = of.settings;
  if (crewDays_wk === null || crewHours_day === null) return { phases, assumed: [] };
  const owners = new Set([...of.buildings.values()].filter(hasOwnCrew).map((b) => b.ownerEntity));
  const sharing = phases.filter((p) => owners.has(p.ownerEntity));
  const daysOf = new Map(sharing.map((p) => [p.id, openDays(p, of)]));
  const capsOn = new Map<string, number>();
  for (const phase of sharing) for (const day of daysOf.get(phase.id)!) capsOn.set(day, (capsOn.get(day) ?? 0) + phase.cap_cents);
  const day = crewDay(of);
  const assumed: AssumedValue[] = [];
  const filled = phases.map((phase): Phase => {
    const days = daysOf.get(phase.id);
    if (phase.crewMinutes !== null || days === undefined) return phase;
    const shares = days.map((d) => (capsOn.get(d)! > 0 ? phase.cap_cents / capsOn.get(d)! : 0));
    const kept_min = of.kept_min.get(phase.id) ?? 0;
    const crewMinutes = Math.max(0, Math.floor(day.net_min * shares.reduce((sum, s) => sum + s, 0) - kept_min));
    const share = days.length === 0 ? 0 : shares.reduce((sum, s) => sum + s, 0) / days.length;
    assumed.push({ subject: phase.id, field: 'crew minutes', value: String(crewMinutes), unit: 'person-minutes', basis: 'assumed', source: sourceText({ days: days.length, day, share, kept_min }) });
    return { ...phase, crewMinutes };
  });
  return { phases: filled, assumed };
}

function sourceText({ days, day, share, kept_min }: { readonly days: number; readonly day: CrewDay; readonly share: number; readonly kept_min: number }): string {
  const crews = day.crews === 1 ? '' : `${String(day.crews)} crews × `;
  const shared = share < 1 ? `, ${(share * 100).toFixed(0)} % of them by this owner's part of the caps that share the crew` : '';
  const again = kept_min > 0 ? `, less ${kept_min.toFixed(0)} kept for panes to be done again` : '';
  return `derived from the crew's calendar: ${String(days)} working days to come × ${crews}(${String(day.size)} persons × ${String(day.hours)} h − ${String(day.mobilisation_min)} min of loading and keys) ÷ ${(1 + day.noAccess).toFixed(2)} for doors that stay shut${shared}${again}; give crew_minutes in the plan file to set it`;
}
