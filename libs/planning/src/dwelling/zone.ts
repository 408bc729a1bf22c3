import { type BodyWindow, bodyOf, type DwellingBody, monthStarts, opaqueGain_W, type OutsideSurface, SUMMER_FILMS, uFactorAt_W_m2K } from '#calc';
import type { DwellingTask } from './dwelling-task.js';
import type { OptionRoom } from './option-room.js';
import { facadeKey, type SiteSky } from '../sky/sky-on-facades.js';

/** What stays the same for all film options of a dwelling: schedules and gains that do not come through the glass. */
export interface Zone {
  readonly site: SiteSky;
  /** Share of the whole floor that is cooled. */
  readonly cooledShare: number;
  /** Electricity other than cooling and heating, of the whole dwelling, each hour. */
  readonly base_kWh: Float64Array;
  readonly internal_W: Float64Array;
  readonly opaque_W: Float64Array;
  /** 0 in months nobody lives there, when the plant is off; Infinity otherwise. */
  readonly plantLimit_W: Float64Array;
}

/** Month 0…11 of each hour. */
function monthOfHour(): Uint8Array {
  const months = new Uint8Array(8760);
  for (let m = 0; m < 12; m++) months.fill(m, monthStarts[m], monthStarts[m + 1]);
  return months;
}
const MONTH = monthOfHour();

function surfaces(task: DwellingTask, site: SiteSky, cooledShare: number): OutsideSurface[] {
  const d = task.dwelling;
  const sides = [...new Set(task.panels.map((p) => p.azimuth_deg))].sort((a, b) => a - b);
  const walls = sides.map((azimuth_deg): OutsideSurface => {
    const sky = site.facades.get(facadeKey(azimuth_deg, 90));
    return { area_m2: (d.exposedWall_m2 * cooledShare) / sides.length, u_W_m2K: d.wallU_W_m2K, absorptance: d.opaqueAbsorptance, tilt_deg: 90, ...(sky === undefined ? {} : { sky }) };
  });
  const roofSky = site.facades.get(facadeKey(0, 0));
  if (d.exposedRoof_m2 > 0 && roofSky !== undefined) {
    walls.push({ area_m2: d.exposedRoof_m2 * cooledShare, u_W_m2K: d.roofU_W_m2K, absorptance: d.opaqueAbsorptance, tilt_deg: 0, sky: roofSky });
  }
  return walls;
}

/** The sky side of the glass: what its panes lose to the sky by night and day, as found; their sun comes through `windowGain_W_m2`. */
function glassToSky(task: DwellingTask, room: OptionRoom): OutsideSurface[] {
  return task.panels.map((panel): OutsideSurface => {
    const makeUp = room.glazings.get(panel.glazing);
    if (makeUp === undefined) throw new RangeError(`glazing must be known, got ${panel.glazing}`);
    return { area_m2: panel.glass_m2, u_W_m2K: uFactorAt_W_m2K(makeUp, null, SUMMER_FILMS), absorptance: 0, tilt_deg: panel.tilt_deg };
  });
}

/** Schedules and opaque gains of a dwelling: worked out once, shared by all its options. */
export function zoneOf(task: DwellingTask, room: OptionRoom): Zone {
  const d = task.dwelling;
  const site = room.sites.get(task.site);
  if (site === undefined) throw new RangeError(`site must be known, got ${task.site}`);
  const cooledShare = d.cooledFloor_m2 / d.floor_m2;
  const base_kWh = new Float64Array(8760);
  const internal_W = new Float64Array(8760);
  const plantLimit_W = new Float64Array(8760);
  const lived = d.occupied.map((share) => share + (1 - share) * room.emptyShare);
  for (let h = 0; h < 8760; h++) {
    const month = MONTH[h]!;
    const there = d.occupied[month]!;
    base_kWh[h] = (d.baseLoad_kWh_yr / 365) * room.baseLoadShape[h % 24]! * lived[month]!;
    internal_W[h] = (base_kWh[h]! * 1000 * room.baseLoadToRoom + d.occupants * room.personHeat_W * there) * cooledShare;
    plantLimit_W[h] = there > 0 ? Infinity : 0;
  }
  return { site, cooledShare, base_kWh, internal_W, plantLimit_W, opaque_W: opaqueGain_W([...surfaces(task, site, cooledShare), ...glassToSky(task, room)]) };
}

/** The body of the cooled zone with the U-values of what is on its glass. */
export function zoneBody(task: DwellingTask, zone: Zone, windows: readonly BodyWindow[]): DwellingBody {
  const d = task.dwelling;
  return bodyOf({
    floorArea_m2: d.cooledFloor_m2,
    thermalClass: d.thermalClass,
    ceilingHeight_m: d.ceilingHeight_m,
    exposedWall_m2: d.exposedWall_m2 * zone.cooledShare,
    wallU_W_m2K: d.wallU_W_m2K,
    exposedRoof_m2: d.exposedRoof_m2 * zone.cooledShare,
    roofU_W_m2K: d.roofU_W_m2K,
    airChange_1_h: d.airChange_1_h,
    windows,
  });
}
