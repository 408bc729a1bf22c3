import type { Building, HorizonPoint, ShadeGeometry } from '#calc';
import { type DwellingTask, type FacadeSet, type WindowPanel, yearSpans } from './dwelling-task.js';
import { facadeSets } from './facade-sets.js';
import type { FilmableWindows } from './filmable-windows.js';
import { glazingKeyOf } from './glazing-book.js';
import type { KnownDwelling } from './known-dwelling.js';
import type { KnownPortfolio } from './known-portfolio.js';
import { glassArea_m2, type PlacedWindow } from './placed-windows.js';
import type { SkiesOnFacades } from './sky-on-facades.js';

const apart_deg = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

/** The skyline before a window: that of its side of the building, the nearest within half a compass wind. */
function horizonOf(building: Building, azimuth_deg: number): readonly HorizonPoint[] {
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

function panelOf(window: PlacedWindow, at: { readonly building: Building; readonly filmable: FilmableWindows }): WindowPanel {
  return {
    window: window.id,
    azimuth_deg: window.azimuth_deg,
    tilt_deg: window.tilt_deg ?? 90,
    glass_m2: glassArea_m2(window),
    glazing: glazingKeyOf(window),
    ...shadeOf(window, at.building),
    screenShare: window.insectScreenShare ?? 0,
    blind: window.blind ?? 'none',
    oldFilm: window.existingFilm === 'present',
    replacementYear: window.replacementYear,
    filmable: at.filmable.of(window).map((f) => f.state),
  };
}

/**
 * Sets of a dwelling by film: all panes of the set's facades that are not refused; and where some of them wait for a letter and some do
 * not, the same set again without those that wait.
 */
function setsOf(panels: readonly WindowPanel[], films: number): FacadeSet[] {
  const sets: FacadeSet[] = [];
  for (let film = 0; film < films; film++) {
    const facades = [...new Set(panels.filter((p) => p.filmable[film] !== 'no').map((p) => p.azimuth_deg))].sort((a, b) => a - b);
    for (const set of facadeSets(facades)) {
      const states = panels.filter((p) => set.includes(p.azimuth_deg)).map((p) => p.filmable[film]);
      sets.push({ facades: set, film, readyOnly: false });
      const readySides = new Set(panels.filter((p) => p.filmable[film] === 'ready').map((p) => p.azimuth_deg));
      if (states.includes('waiting') && set.every((side) => readySides.has(side))) sets.push({ facades: set, film, readyOnly: true });
    }
  }
  return sets;
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
export function dwellingTasks(known: KnownPortfolio, at: { readonly skies: SkiesOnFacades; readonly filmable: FilmableWindows; readonly films: number; readonly years: readonly [number, number] }): DwellingTask[] {
  return known.dwellings.map((dwelling: KnownDwelling): DwellingTask => {
    const building = known.buildings.get(dwelling.building);
    const site = at.skies.siteOf.get(dwelling.building);
    if (building === undefined || site === undefined) throw new RangeError(`dwelling must stand in a known building, got ${dwelling.id}`);
    const panels = dwelling.windows.map((window) => panelOf(window, { building, filmable: at.filmable }));
    const task = {
      dwelling,
      site,
      panels,
      sets: setsOf(panels, at.films),
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
