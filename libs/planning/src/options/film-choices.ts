import { type Building, type Film, type FilmOnClear, sheetOf, type TimeModel } from '#calc';
import { defaultsOf, type PlanJob } from '../job/plan-job.js';
import { filmableWindows, type FilmableWindows, filmLimit } from './filmable-windows.js';
import { priceFilm } from './film-prices.js';
import { type GlazingBook, glazingBook } from '../known/glazing-book.js';
import { type MeasuredBook, measuredGlass } from '../known/measured-glass.js';
import { sortedBy } from '../grouped.js';
import type { HandLocks } from '../known/hand-locks.js';
import type { KnownPortfolio } from '../known/known-portfolio.js';
import { contractorPrice_cents_m2 } from './installed-cost.js';
import { gainPairs, type OptionRebate, optionRebates, type RebateCase } from './rebates.js';
import type { PricedFilm } from './option.js';
import type { OptionRoom } from '../dwelling/option-room.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import type { PlanTerms } from '../plan/terms.js';
import { designDayOf } from '../energy/design-day.js';
import { paneWeathers, siteExtremes } from '../sky/site-extremes.js';
import type { SkiesOnFacades } from '../sky/sky-on-facades.js';

/** Films on the table with who may carry them and what they cost, and all that the computation of options shares. */
export interface FilmChoices {
  readonly films: readonly PricedFilm[];
  readonly filmable: FilmableWindows;
  readonly glazings: GlazingBook;
  readonly room: OptionRoom;
  readonly measured: MeasuredBook;
  /** Windows that carry film of work already done, with its place among the films. */
  readonly filmDone?: ReadonlyMap<string, number>;
  readonly terms: PlanTerms;
  readonly timeModel: TimeModel;
  readonly lifeOf: (film: PricedFilm) => number;
  readonly mayRotate: (film: Film) => boolean;
  readonly rebatesOf: (option: RebateCase) => readonly OptionRebate[];
  readonly contractorOf: (building: string) => number | null;
  readonly findings: readonly PlanFinding[];
}

/** The user's films; where there are none, the catalogue's generic neutral and reflective classes, shown as assumed. */
function filmsOf(job: PlanJob): readonly Film[] {
  if (job.portfolio.films.length > 0) return sortedBy(job.portfolio.films, (f) => f.id);
  return sortedBy(job.catalogue.films.list().filter((f) => ['neutral', 'reflective-medium'].includes(f.id)), (f) => f.id);
}

function optionRoom(job: PlanJob, of: { readonly films: readonly { readonly film: Film; readonly sheet: FilmOnClear }[]; readonly glazings: GlazingBook; readonly measured: MeasuredBook; readonly skies: SkiesOnFacades; readonly known: KnownPortfolio }): OptionRoom {
  const { catalogue } = job;
  const value = catalogue.assumptions.value;
  const blind = (kind: 'light' | 'medium' | 'dark') => {
    const optics = catalogue.glazing.blind(kind);
    if (optics === null) throw new RangeError(`blind must be in the catalogue, got ${kind}`);
    return optics;
  };
  return {
    sites: of.skies.sites,
    measured: of.measured.glass,
    designDays: new Map([...of.skies.sites].map(([key, site]) => [key, designDayOf(siteExtremes(site.weather, catalogue))])),
    albedo: value('albedo').value,
    glazings: new Map([...of.glazings].map(([key, g]) => [key, g.makeUp])),
    films: of.films.map(({ film, sheet }) => ({ id: film.id, sheet })),
    oldFilm: sheetOf(catalogue.films.get(value('oldFilm').value)),
    blinds: { light: blind('light'), medium: blind('medium'), dark: blind('dark') },
    screenPasses: { insect: value('screenPasses.insect').value, solar: value('screenPasses.solar').value },
    blindCovered: catalogue.glazing.blindCoveredShare.value,
    blindClosesAt_W_m2: catalogue.glazing.blindClosesAt_W_m2.value,
    tariffs: new Map(of.known.dwellings.map((d) => [d.meter.tariff.label, d.meter.tariff])),
    baseLoadShape: value('baseLoadShape').value,
    baseLoadToRoom: value('baseLoadToRoom').value,
    personHeat_W: value('personHeat_W').value,
    emptyShare: value('emptyShare').value,
    doubt: { setPoint_K: value('doubt.setPoint_K').value, filmCut: value('doubt.filmCut').value, useFactor: value('doubt.useFactor').value, efficiency: value('doubt.efficiency').value },
    plants: Object.fromEntries([...new Set(of.known.dwellings.map((d) => d.plantKind))].map((kind) => [kind, catalogue.plants.performance(kind)])),
  };
}

/** The film on each window of work already done; a film that is no longer on the list counts as none. */
function filmDone({ settled }: PlanJob, films: readonly { readonly film: Film }[]): ReadonlyMap<string, number> {
  const place = new Map(films.map(({ film }, i) => [film.id, i]));
  const done = (settled?.done ?? []).flatMap((d) => d.windows ?? []);
  return new Map(done.flatMap(({ window, film }): [string, number][] => (place.has(film) ? [[window, place.get(film)!]] : [])));
}

/** The film work already done binds a dwelling to, unless films may be mixed, and a building where one film is the rule. */
function filmOn({ settled, portfolio }: PlanJob, buildings: ReadonlyMap<string, Building>): ReadonlyMap<string, string> {
  return new Map((settled?.done ?? []).flatMap((d): [string, string][] => {
    const film = d.windows?.[0]?.film;
    if (film === undefined) return [];
    return [...(portfolio.settings.mixedFilm ? [] : [[d.dwelling, film] satisfies [string, string]]), ...(buildings.get(d.building)?.oneFilm === true ? [[d.building, film] satisfies [string, string]] : [])];
  }));
}

function limitFindings(films: readonly Film[], buildings: Iterable<Building>): PlanFinding[] {
  return [...buildings].flatMap((building) =>
    films.flatMap((film) => {
      const limit = filmLimit(film, building);
      return limit === null ? [] : [{ severity: 'note' as const, subject: building.id, text: limit, whatToDo: 'nothing, unless the limit of the building is wrong' }];
    }),
  );
}

/** Who may carry which film, from when; and each film priced by cutting all its candidate panes once. */
export function filmChoices(known: KnownPortfolio, skies: SkiesOnFacades, of: { readonly job: PlanJob; readonly terms: PlanTerms; readonly locks: HandLocks }): FilmChoices {
  const { job, terms } = of;
  const films = filmsOf(job).map((film) => ({ film, sheet: sheetOf(film) }));
  const windows = known.dwellings.flatMap((d) => d.windows);
  const defaultOf = defaultsOf(job.catalogue);
  const glazings = glazingBook(windows, { catalogue: job.catalogue, defaultOf });
  const measured = measuredGlass({ readings: job.portfolio.readings, windows, films, glazings, weather: job.weather });
  const filmable = filmableWindows({
    films,
    measured,
    buildings: known.buildings,
    consents: sortedBy(job.portfolio.consents, (c) => c.id),
    glazings,
    rules: job.catalogue.suitabilityRules,
    paneWeathers: new Map([...job.weather].map(([building, year]) => [building, paneWeathers(year, job.catalogue)])),
    onDate: terms.studyStart,
    windowsOut: of.locks.windowsOut,
    filmOn: filmOn(job, known.buildings),
  });
  const gains = gainPairs(glazings, new Map(films.map(({ film, sheet }) => [film.id, sheet])));
  const mayRotate = (film: Film): boolean => film.mayRotate ?? defaultOf<boolean>('mayRotate').value;
  const priced = films.map(({ film }, i) =>
    priceFilm(film, windows.filter((w) => filmable.of(w)[i]?.state !== 'no'), { rolls: job.portfolio.rolls, terms, mayRotate, areaPrice: defaultOf<number>('film_cents_m2'), assumedWidth_mm: defaultOf<number>('widestRoll_mm').value }),
  );
  return {
    films: priced,
    filmable,
    glazings,
    room: optionRoom(job, { films, glazings, measured, skies, known }),
    measured,
    filmDone: filmDone(job, films),
    terms,
    timeModel: job.catalogue.timeModel,
    lifeOf: ({ film }) => Math.round(film.life_yr ?? defaultOf<number>(`filmLife_yr.${film.side}`).value),
    mayRotate,
    rebatesOf: (option) => optionRebates(option, { rebates: job.portfolio.rebates, gains }),
    contractorOf: (id) => contractorPrice_cents_m2(known.buildings.get(id)),
    findings: [...of.locks.findings, ...measured.findings, ...limitFindings(films.map((f) => f.film), known.buildings.values())],
  };
}
