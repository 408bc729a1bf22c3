import type { Building, MoveOut, Site } from '#calc';
import { horizonOf } from '../dwelling/dwelling-tasks.js';
import type { DefaultOf } from '../job/assumption-book.js';
import type { PricedPhase } from '../rolls/price-by-rolls.js';
import type { SkiesOnFacades } from '../sky/sky-on-facades.js';
import { CREW_WORDS_EN } from './crew-words.js';
import { facadeShade } from './facade-shade.js';
import type { ShadeTime, WorkOrder } from './work-order-types.js';
import { openOrders, orderOnDay, type WorkOrderRequest } from './work-orders.js';

/** What crew work is made from, beside the priced phases. */
export interface CrewRequest extends Pick<WorkOrderRequest, 'buildings' | 'films' | 'notice_h' | 'terms' | 'windowsOf'> {
  readonly moveOuts: readonly MoveOut[];
  readonly skies: SkiesOnFacades;
  readonly defaultOf: DefaultOf;
}

/** Shade of a side on a day, worked out once however many dwellings share it. */
function shadeBook(skies: SkiesOnFacades): WorkOrderRequest['shadeOn'] {
  const known = new Map<string, readonly ShadeTime[]>();
  const siteOf = (building: Building): Site | undefined => skies.sites.get(skies.siteOf.get(building.id) ?? '')?.sun.site;
  return (building, azimuth_deg, day) => {
    const site = siteOf(building);
    if (site === undefined) throw new RangeError(`building must have a sky, got ${building.id}`);
    const key = `${building.id}|${String(azimuth_deg)}|${day}`;
    let shade = known.get(key);
    if (shade === undefined) known.set(key, (shade = facadeShade({ site, azimuth_deg, horizon: horizonOf(building, azimuth_deg), day }, CREW_WORDS_EN.shade)));
    return shade;
  };
}

/** Work orders of all phases. */
export function crewWork(phases: readonly PricedPhase[], of: CrewRequest): { readonly workOrders: readonly WorkOrder[] } {
  const { defaultOf } = of;
  const request: WorkOrderRequest = {
    ...of,
    shadeOn: shadeBook(of.skies),
    kit: { slip_L_m2: defaultOf<number>('slip_L_m2').value, panesPerBlade: defaultOf<number>('panesPerBlade').value },
    words: CREW_WORDS_EN,
  };
  const open = openOrders(phases, request);
  return { workOrders: open.map((o) => orderOnDay(o, null, request)) };
}
