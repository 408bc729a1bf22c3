import type { Building, HorizonPoint, ShadeGeometry } from '#calc';
import { type DwellingTask, type FacadeSet, filmOnSide, type WindowPanel, yearSpans } from './dwelling-task.js';
import { facadeSets } from './facade-sets.js';
import type { FilmableWindows } from '../options/filmable-windows.js';
import { apart_deg } from '../known/bearings.js';
import { glazingKeyOf } from '../known/glazing-book.js';
import type { KnownDwelling } from '../known/known-dwelling.js';
import type { KnownPortfolio } from '../known/known-portfolio.js';
import { glassArea_m2, type PlacedWindow } from '../known/placed-windows.js';
import type { SkiesOnFacades } from '../sky/sky-on-facades.js';

/** The skyline before a window: that of its side of the building, the nearest within half a compass wind. */
export function horizonOf(building: Pick<Building, 'horizons'>, azimuth_deg: number): readonly HorizonPoint[] {
  const near = building.horizons.filter((h) => apart_deg(h.azimuth_deg, azimuth_deg) <= 22.5);
  return near.sort((a, b) => apart_deg(a.azimuth_deg, azimuth_deg) - apart_deg(b.azimuth_deg, azimuth_deg))[0]?.points ?? [];
}

function shadeOf(window: PlacedWindow, building: Building): { readonly shade: ShadeGeometry; readonly shadeKey: string } {
  const own = window.shade ?? { overhangDepth_m: 0, overhangGap_m: 0, finDepth_m: 0, finGap_m: 0, reveal_m: 0 };
  const horizon = horizonOf(building, window.azimuth_deg);
  const open = own.overhangDepth_m === 0 && own.finDepth_m === 0 && own.reveal_m === 0;
  // With nothing of its own before it the size of a window does not matter, so all such windows of a side share one shade.
  const width_m = open ? 1 : ((window.liteColumns ?? 1) * window.width.mm) / 1000;
  const height_m = open ? 1 : ((window.liteRows ?? 1) * window.height.mm) / 1000;
  const shade = { width_m, height_m, ...own, horizon };
  return { shade, shadeKey: JSON.stringify([width_m, height_m, own, horizon]) };
}

function panelOf(window: PlacedWindow, at: { readonly building: Building; readonly filmable: FilmableWindows; readonly measuredAt: (window: PlacedWindow) => string | null; readonly filmDone: number | undefined }): WindowPanel {
  return {
    window: window.id,
    azimuth_deg: window.azimuth_deg,
    tilt_deg: window.tilt_deg ?? 90,
    glass_m2: glassArea_m2(window),
    glazing: glazingKeyOf(window),
    measuredAt: at.measuredAt(window),
    ...shadeOf(window, at.building),
    screenShare: window.insectScreenShare ?? 0,
    screenKind: window.screenKind ?? 'insect',
    blind: window.blind ?? 'none',
    oldFilm: window.existingFilm === 'present',
    ...(at.filmDone === undefined ? {} : { filmDone: at.filmDone }),
    replacementYear: window.replacementYear,
    filmable: at.filmable.of(window).map((f) => f.state),
  };
}

/** Up to here films may be mixed: with two films and three sides six mixed sets come on top of each set of three. */
const MIXED_UP_TO = 3;

/** What sets are made for. */
export interface SetRequest {
  /** How many films there are. */
  readonly films: number;
  /** Whether a dwelling may carry a film for each side. */
  readonly mixed: boolean;
}

/** Every way to put one of some films on each side of a set. */
function filmings(sides: readonly number[], filmsOn: (side: number) => readonly number[]): number[][] {
  return sides.reduce<number[][]>((ways, side) => ways.flatMap((way) => filmsOn(side).map((film) => [...way, film])), [[]]);
}

/** A set, and where some of its panes wait for a letter and some on every side do not, the same again without those that wait. */
function withReadyPart(panels: readonly WindowPanel[], set: { readonly facades: readonly number[]; readonly films: readonly number[] }): FacadeSet[] {
  const all: FacadeSet = { ...set, readyOnly: false };
  const stateOf = (p: WindowPanel): string | undefined => p.filmable[filmOnSide(all, p.azimuth_deg) ?? -1];
  const covered = panels.filter((p) => set.facades.includes(p.azimuth_deg));
  const waits = covered.some((p) => stateOf(p) === 'waiting');
  const readySides = new Set(covered.filter((p) => stateOf(p) === 'ready').map((p) => p.azimuth_deg));
  return waits && set.facades.every((side) => readySides.has(side)) ? [all, { ...all, readyOnly: true }] : [all];
}

/** Sets of a dwelling: all panes of the set's facades that are not refused, with one film, or a film for each side where that is asked. */
export function setsOf(panels: readonly WindowPanel[], request: SetRequest): FacadeSet[] {
  const all = Array.from({ length: request.films }, (_, film) => film);
  const takes = (side: number): number[] => all.filter((film) => panels.some((p) => p.azimuth_deg === side && p.filmable[film] !== 'no'));
  const sides = [...new Set(panels.map((p) => p.azimuth_deg))].sort((a, b) => a - b);
  const uniform = all.flatMap((film) => facadeSets(sides.filter((side) => takes(side).includes(film))).map((facades) => ({ facades, films: facades.map(() => film) })));
  const filmable = sides.filter((side) => takes(side).length > 0);
  const mixed = !request.mixed || filmable.length > MIXED_UP_TO ? [] : facadeSets(filmable).flatMap((facades) => filmings(facades, takes).filter((films) => new Set(films).size > 1).map((films) => ({ facades, films })));
  return [...uniform, ...mixed].flatMap((set) => withReadyPart(panels, set));
}

/** Fields of a dwelling that change no figure; its windows count as panels, its meter by tariff and neighbours. */
const NOT_FIGURES = new Set(['id', 'building', 'windows', 'uncooledWindows', 'meter']);

/** Everything a dwelling's result depends on, and nothing else: ids, rows and names are left out, so equal dwellings are computed once. */
function keyOf(task: Omit<DwellingTask, 'key'>): string {
  const { meter } = task.dwelling;
  const alone = meter.dwellings.length <= 1;
  const figures = Object.entries(task.dwelling).filter(([field]) => !NOT_FIGURES.has(field));
  return JSON.stringify([task.site, figures, alone ? [meter.tariff.label] : [meter.id], task.panels.map((panel) => ({ ...panel, window: null })), task.sets, task.spans]);
}

/** One task a dwelling; `known` is sorted by id, so the tasks are too. */
export function dwellingTasks(known: KnownPortfolio, at: { readonly skies: SkiesOnFacades; readonly filmable: FilmableWindows; readonly measuredAt: (window: PlacedWindow) => string | null; readonly filmDone?: ReadonlyMap<string, number> | undefined; readonly films: number; readonly mixed: boolean; readonly years: readonly [number, number] }): DwellingTask[] {
  return known.dwellings.map((dwelling: KnownDwelling): DwellingTask => {
    const building = known.buildings.get(dwelling.building);
    const site = at.skies.siteOf.get(dwelling.building);
    if (building === undefined || site === undefined) throw new RangeError(`dwelling must stand in a known building, got ${dwelling.id}`);
    const panels = dwelling.windows.map((window) => panelOf(window, { building, filmable: at.filmable, measuredAt: at.measuredAt, filmDone: at.filmDone?.get(window.id) }));
    const task = {
      dwelling,
      site,
      panels,
      // A building with one film for all has none to mix.
      sets: setsOf(panels, { films: at.films, mixed: at.mixed && building.oneFilm !== true }),
      spans: yearSpans({
        firstYear: at.years[0],
        lastYear: at.years[1],
        plantReplacementYear: dwelling.plantReplacementYear,
        windowYears: panels.flatMap((p) => (p.replacementYear === null ? [] : [p.replacementYear])),
      }),
      others_kWh: null,
    };
    return { ...task, key: keyOf(task) };
  });
}
