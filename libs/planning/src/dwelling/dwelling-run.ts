import { type BodyWindow, dwellingLoads, facadeSun_W, type LoadBuffers, prepareDrive, type PreparedDrive, readTariff, tariffClock, type TariffClock } from '#calc';
import { type DwellingTask, type FacadeSet, filmOnSide, type WindowPanel } from './dwelling-task.js';
import { type GainBook, gainBook, type OnGlass } from './gain-book.js';
import type { OptionRoom } from './option-room.js';
import { plantLimit_W } from './plant-run.js';
import { type SideSun, sideSun } from './side-sun.js';
import { type Zone, zoneBody, zoneOf } from './zone.js';

/** A thread's workplace: gains kept between dwellings, buffers used again and again. */
export interface OptionBench {
  readonly room: OptionRoom;
  readonly gains: GainBook;
  readonly loads: LoadBuffers;
  /** Loads of the dwelling as found, kept while its sets are computed. */
  readonly foundLoads: LoadBuffers;
  readonly solar_W: Float64Array;
  readonly use_kWh: Float64Array;
  /** Electricity of the set in hand: its cooling, that under another machine, and its heating. */
  readonly cooling_kWh: Float64Array;
  readonly otherCooling_kWh: Float64Array;
  readonly heating_kWh: Float64Array;
  /** Sums over the sides of the dwelling in hand; grows as a dwelling has more sides and films. */
  readonly sideArrays: Float64Array[];
  readonly clockOf: (tariff: string) => TariffClock;
}

export function optionBench(room: OptionRoom): OptionBench {
  const clocks = new Map<string, TariffClock>();
  return {
    room,
    gains: gainBook(room),
    loads: { heating_W: new Float64Array(8760), cooling_W: new Float64Array(8760) },
    foundLoads: { heating_W: new Float64Array(8760), cooling_W: new Float64Array(8760) },
    solar_W: new Float64Array(8760),
    use_kWh: new Float64Array(8760),
    cooling_kWh: new Float64Array(8760),
    otherCooling_kWh: new Float64Array(8760),
    heating_kWh: new Float64Array(8760),
    sideArrays: [],
    clockOf: (label) => {
      let clock = clocks.get(label);
      if (clock === undefined) {
        const text = room.tariffs.get(label);
        if (text === undefined) throw new RangeError(`tariff must be known, got ${label}`);
        clocks.set(label, (clock = tariffClock(readTariff(text))));
      }
      return clock;
    },
  };
}

/** What hangs on each panel in a state of the dwelling. */
export type Dressing = (panel: WindowPanel) => OnGlass;

export const asFound: Dressing = (panel) => panel.filmDone ?? (panel.oldFilm ? 'old film' : 'bare');

/** A set's film on its panels, as far as they may carry it and still stand in that year. */
export const dressedWith =
  (set: FacadeSet, year: number): Dressing =>
  (panel) => {
    const film = filmOnSide(set, panel.azimuth_deg);
    const may = film === undefined ? 'no' : panel.filmable[film];
    const filmed = may === 'ready' || (may === 'waiting' && !set.readyOnly);
    const gone = panel.replacementYear !== null && panel.replacementYear <= year;
    return film !== undefined && filmed && !gone ? film : asFound(panel);
  };

/** How a run departs from the surveyed figures, for the range of the result. */
export interface Departure {
  readonly setPoint_K: number;
  /** Share of the sun that arrives, over the surveyed. */
  readonly sun: number;
  /** Share by which the film's cut differs from its sheet. */
  readonly filmCut: number;
}
export const AS_SURVEYED: Departure = { setPoint_K: 0, sun: 1, filmCut: 0 };

/** A dwelling's schedules written out once; each run puts its own sun in. */
export interface DwellingBench {
  readonly task: DwellingTask;
  readonly zone: Zone;
  readonly drive: PreparedDrive;
}

export function dwellingBench(task: DwellingTask, room: OptionRoom): DwellingBench {
  const zone = zoneOf(task, room);
  const d = task.dwelling;
  const limit = plantLimit_W(d, { room, site: zone.site });
  const drive = prepareDrive({
    outdoor_degC: zone.site.weather.outdoor_degC,
    solar_W: new Float64Array(8760),
    internal_W: zone.internal_W,
    heatingSetPoint_degC: d.setPoints_degC?.heating ?? Math.min(d.heatingSetPoint_degC, d.coolingSetPoint_degC),
    coolingSetPoint_degC: d.setPoints_degC?.cooling ?? d.coolingSetPoint_degC,
    coolingLimit_W: limit === null ? zone.plantLimit_W : zone.plantLimit_W.map((there, h) => Math.min(there, limit[h]!)),
    heatingLimit_W: d.heatingKind === 'none' ? 0 : zone.plantLimit_W,
    initialMass_degC: d.coolingSetPoint_degC,
  });
  return { task, zone, drive };
}

/** A state of the glass and how the run departs from the survey. */
export interface RunState {
  readonly dressing: Dressing;
  readonly departure: Departure;
  /** Sums over the sides from the runs before, where the dwelling has any. */
  readonly sun?: SideSun;
  /** Where the loads go; the bench's own arrays, which the next run fills again, when absent. */
  readonly into?: LoadBuffers;
}

/** Heat of the sun through all glass into the bench's buffer, and the windows as paths for warmth. */
function throughGlass(at: DwellingBench, bench: OptionBench, state: RunState): { readonly solar_W: Float64Array; readonly windows: readonly BodyWindow[] } {
  if (state.departure.filmCut !== 0) return byPanel(at, bench, state);
  const sides = (state.sun ?? sideSun(at, bench)).sides(state.dressing);
  const facades = sides.map(({ sun_W }) => ({ glass_m2: state.departure.sun, gain_W_m2: sun_W }));
  return { solar_W: facadeSun_W(facades, bench.solar_W, at.zone.opaque_W), windows: sides.flatMap((side) => side.windows) };
}

/** The same panel by panel, for a film whose cut is not that of its sheet. */
function byPanel(at: DwellingBench, bench: OptionBench, state: RunState): { readonly solar_W: Float64Array; readonly windows: readonly BodyWindow[] } {
  const { departure } = state;
  const out = bench.solar_W;
  out.set(at.zone.opaque_W);
  const windows = at.task.panels.map((panel): BodyWindow => {
    const on = state.dressing(panel);
    const glass = bench.gains.of(at.zone.site, panel, on);
    const scale = panel.glass_m2 * at.task.dwelling.useFactor * departure.sun;
    const gain = glass.gain_W_m2;
    if (typeof on === 'number') {
      const bare = bench.gains.of(at.zone.site, panel, asFound(panel)).gain_W_m2;
      const cut = 1 + departure.filmCut * bench.gains.cutDoubt(panel, on);
      for (let h = 0; h < 8760; h++) out[h] = out[h]! + scale * Math.max(0, bare[h]! + cut * (gain[h]! - bare[h]!));
    } else {
      for (let h = 0; h < 8760; h++) out[h] = out[h]! + scale * gain[h]!;
    }
    return { area_m2: panel.glass_m2, uFactor_W_m2K: glass.uFactor_W_m2K, roomEmissivity: glass.roomEmissivity };
  });
  return { solar_W: out, windows };
}

/** Loads of one year in one state of the glass; the arrays are those the run was given. */
export interface DwellingRun {
  readonly cooling_W: Float64Array;
  readonly heating_W: Float64Array;
  readonly cooling_kWh: number;
  readonly heating_kWh: number;
  readonly peakCooling_W: number;
  readonly hoursOverSetPoint: number;
}

/** Runs a dwelling through the year in one state of its glass. */
export function runOf(at: DwellingBench, bench: OptionBench, state: RunState): DwellingRun {
  const { solar_W, windows } = throughGlass(at, bench, state);
  const shift = state.departure.setPoint_K;
  const drive = shift === 0 ? { ...at.drive, solar_W } : { ...at.drive, solar_W, coolingSetPoint_degC: at.drive.coolingSetPoint_degC.map((t) => t + shift) };
  const { cooling_W, heating_W, cooling_kWh, heating_kWh, peakCooling_W, hoursOverCoolingSetPoint } = dwellingLoads(zoneBody(at.task, at.zone, windows), drive, state.into ?? bench.loads);
  return { cooling_W, heating_W, cooling_kWh, heating_kWh, peakCooling_W, hoursOverSetPoint: hoursOverCoolingSetPoint };
}
