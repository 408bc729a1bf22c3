import type { Building, Site } from '#calc';
import { horizonOf } from '../dwelling/dwelling-tasks.js';
import type { DwellingTask, WindowPanel } from '../dwelling/dwelling-task.js';
import { grouped } from '../grouped.js';
import type { SkiesOnFacades } from '../sky/sky-on-facades.js';
import { facadeShade, type ShadedGlass, type SunAt, sunOfDay } from './facade-shade.js';
import type { WallClock } from './wall-clock.js';
import type { ShadeTime } from './work-order-types.js';
import type { ShadeOn } from './work-orders.js';

export interface ShadeBookRequest {
  readonly skies: SkiesOnFacades;
  readonly clockOf: (building: Building) => WallClock;
  readonly sunlitShare: number;
}

/** Windows under one shade count as one sheet of glass. */
function glassOf(panels: readonly WindowPanel[]): ShadedGlass[] {
  return [...grouped(panels, (p) => `${String(p.tilt_deg)}|${p.shadeKey}`).values()].map((same): ShadedGlass => ({ glass_m2: same.reduce((sum, p) => sum + p.glass_m2, 0), tilt_deg: same[0]!.tilt_deg, geometry: same[0]!.shade }));
}

/** Values worked out once by a key. */
function kept<T>(make: () => T, of: { readonly in: Map<string, T>; readonly key: string }): T {
  let value = of.in.get(of.key);
  if (value === undefined) of.in.set(of.key, (value = make()));
  return value;
}

/** Shade of the panes of a side on a day, worked out once however many dwellings share it. */
export function shadeBook(tasks: readonly Pick<DwellingTask, 'panels'>[], of: ShadeBookRequest): ShadeOn {
  const { skies } = of;
  const panels = new Map(tasks.flatMap((t) => t.panels).map((p) => [p.window, p]));
  const known = new Map<string, readonly ShadeTime[]>();
  const suns = new Map<string, readonly SunAt[]>();
  const siteOf = (building: Building): Site | undefined => skies.sites.get(skies.siteOf.get(building.id) ?? '')?.sun.site;
  return ({ building, windows }, azimuth_deg, day) => {
    const site = siteOf(building);
    if (site === undefined) throw new RangeError(`building must have a sky, got ${building.id}`);
    const panes = glassOf(windows.map((id) => panels.get(id)).filter((p) => p?.azimuth_deg === azimuth_deg).map((p) => p!));
    const key = JSON.stringify([building.id, azimuth_deg, day, panes.map((p) => [p.glass_m2, p.tilt_deg, { ...p.geometry, horizon: null }])]);
    const sun = kept(() => sunOfDay(site, day), { in: suns, key: `${JSON.stringify(site)}|${day}` });
    return kept(() => facadeShade({ site, azimuth_deg, horizon: horizonOf(building, azimuth_deg), panes, day, clock: of.clockOf(building), sunlitShare: of.sunlitShare }, sun), { in: known, key });
  };
}
