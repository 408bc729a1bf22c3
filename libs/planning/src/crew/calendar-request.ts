import type { Building, Phase } from '#calc';
import type { CrewHours, Span } from './day-book.js';
import { daysAfter, type NoWork } from './work-days.js';
import type { OpenOrder, ShadeOn } from './work-orders.js';

/** What the calendar is made from. */
export interface CalendarRequest {
  readonly phases: readonly Phase[];
  readonly hours: CrewHours;
  /** Crews of the contractor and persons of each, where he works; left out: one crew as large as the own. Days a week, hours and blocks are those of the own crew. */
  readonly contractor?: Pick<CrewHours, 'crews' | 'size'>;
  readonly noWork: readonly NoWork[];
  readonly mobilisation_min: (building: Building) => number;
  /** Share of visits where the door stays shut; days are kept free for them. */
  readonly noAccess: { readonly share: number; readonly source: string };
  /** ISO date; nothing is planned before the notices of its day can run out. */
  readonly madeOn: string;
  readonly shadeOn: ShadeOn;
  /** Hours the clock on the wall of a building is ahead of world time on a day; null where its rule is not known. */
  readonly utcOffset_h?: (building: Building, day: string) => number | null;
  /** Last day for which move-outs of a building are known; null where none is. */
  readonly knownUntil?: (building: Building) => string | null;
  /** Common areas do not fall empty. */
  readonly isCommon?: (dwelling: string) => boolean;
  /** How much longer a new crew's first day takes; 1 for crews that know the work. */
  readonly firstDayFactor?: number;
}

export const later = (a: string, b: string): string => (a > b ? a : b);
const earlier = (a: string, b: string): string => (a < b ? a : b);

/** Where an order may lie: known empty days first, then its phase. */
export function spansOf(open: OpenOrder, of: CalendarRequest): { readonly empty: Span | null; readonly any: Span } {
  const soonest = daysAfter(of.madeOn, Math.ceil(open.order.notice_h / 24));
  const from = later(open.order.earliest, soonest);
  const any = { from: open.empty === null ? from : later(open.occupiedFrom, soonest), until: open.order.latest };
  if (open.empty === null) return { empty: null, any };
  const last = open.empty.until === null ? open.order.latest : earlier(daysAfter(open.empty.until, -1), open.order.latest);
  return { empty: { from: later(from, open.empty.from), until: last }, any };
}

/** A contractor films the building: his visits never stand on a day of the own crew. */
export const isHired = ({ building }: Pick<OpenOrder, 'building'>): boolean => building.crew === 'contractor';

/** The same request for the contractor's days: his crews, and nobody's first day, for he knows the work. */
export const forContractor = (of: CalendarRequest): CalendarRequest => ({ ...of, hours: { ...of.hours, ...(of.contractor ?? { crews: 1 }) }, firstDayFactor: 1 });
