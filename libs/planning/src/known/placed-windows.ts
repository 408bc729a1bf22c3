import type { Dwelling, Window } from '#calc';
import { grouped, sortedBy } from '../grouped.js';

/** A window of a real dwelling with a true bearing. */
export interface PlacedWindow extends Window {
  readonly dwelling: string;
  readonly azimuth_deg: number;
  /** The plan type it was taken from; null when surveyed in this dwelling. */
  readonly fromPlanType: string | null;
}

const wrapped_deg = (azimuth_deg: number): number => ((azimuth_deg % 360) + 360) % 360;

/**
 * True bearing of a plan type's window in a dwelling.
 *
 *   front + own bearing; mirrored: front − own bearing
 *
 * A mirrored plan is seen in a glass held along its front-to-back line: front and back stay, left and right change places.
 */
export function placedAzimuth_deg(own_deg: number, front_deg: number, mirrored: boolean): number {
  return wrapped_deg(front_deg + (mirrored ? -own_deg : own_deg));
}

function ofPlanType(window: Window, dwelling: Dwelling): PlacedWindow | null {
  if (window.azimuth_deg === null || dwelling.frontAzimuth_deg === null) return null;
  return {
    ...window,
    id: `${dwelling.id}/${window.mark}`,
    dwelling: dwelling.id,
    azimuth_deg: placedAzimuth_deg(window.azimuth_deg, dwelling.frontAzimuth_deg, dwelling.mirrored ?? false),
    fromPlanType: window.planType,
  };
}

/** Windows by owner of the list: dwelling id or plan type id. */
export interface WindowIndex {
  readonly ofDwelling: ReadonlyMap<string, readonly Window[]>;
  readonly ofPlanType: ReadonlyMap<string, readonly Window[]>;
}

export function windowIndex(windows: readonly Window[]): WindowIndex {
  const ofDwelling = grouped(windows.filter((w) => w.dwelling !== null), (w) => w.dwelling ?? '');
  const ofPlan = grouped(windows.filter((w) => w.dwelling === null && w.planType !== null), (w) => w.planType ?? '');
  return { ofDwelling, ofPlanType: ofPlan };
}

/** Windows that cannot be placed, with the reason. */
export interface UnplacedWindow {
  readonly window: string;
  readonly why: string;
}

/**
 * The windows of a dwelling: those of its plan type turned (and mirrored) into place, then overridden, added to or dropped by its own rows
 * of the same mark. Sorted by id, whatever the order of the rows.
 */
export function placedWindows(dwelling: Dwelling, index: WindowIndex): { readonly windows: readonly PlacedWindow[]; readonly unplaced: readonly UnplacedWindow[] } {
  const byMark = new Map<string, PlacedWindow>();
  const unplaced: UnplacedWindow[] = [];
  const planWindows = dwelling.planType === null ? [] : (index.ofPlanType.get(dwelling.planType) ?? []);
  for (const window of planWindows) {
    const placed = ofPlanType(window, dwelling);
    if (placed === null) unplaced.push({ window: `${dwelling.id}/${window.mark}`, why: 'the plan type needs a side for the window and the dwelling a front azimuth' });
    else byMark.set(window.mark, placed);
  }
  for (const window of index.ofDwelling.get(dwelling.id) ?? []) {
    if (window.dropped) byMark.delete(window.mark);
    else if (window.azimuth_deg === null) unplaced.push({ window: window.id, why: 'which side it looks to is not known' });
    else byMark.set(window.mark, { ...window, dwelling: dwelling.id, azimuth_deg: wrapped_deg(window.azimuth_deg), fromPlanType: null });
  }
  return { windows: sortedBy(byMark.values(), (w) => w.id), unplaced };
}

/** The panes of a window: rows × columns of lites, one when nothing is said. */
export function paneCount(window: Pick<Window, 'liteRows' | 'liteColumns'>): number {
  return (window.liteRows ?? 1) * (window.liteColumns ?? 1);
}

/** Glass of a window: the sum of its panes, never the opening. */
export function glassArea_m2(window: Pick<Window, 'liteRows' | 'liteColumns' | 'width' | 'height'>): number {
  return (paneCount(window) * window.width.mm * window.height.mm) / 1e6;
}
