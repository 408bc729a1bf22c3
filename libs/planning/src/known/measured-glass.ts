import { type AssumedValue, type Film, filmAsMeasured, type FilmOnClear, glassAsMeasured, type GlazingMakeUp, glazingOptics, type HourlyYear, meterPair, pairGlass, type SolarReading } from '#calc';
import { buildingOf } from '../building-id.js';
import { grouped, sortedBy } from '../grouped.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import { type GlazingBook, glazingKeyOf } from './glazing-book.js';
import { apart_deg } from './bearings.js';
import type { PlacedWindow } from './placed-windows.js';
import { outdoorShare } from './outdoor-share.js';
import { pairedReadings, type ReadingPair } from './reading-pairs.js';

/** A film on a glass as a meter found it there. */
export interface MeasuredFilm {
  /** The sheet moved until it gives the measured heat gain. */
  readonly sheet: FilmOnClear;
  /** One standard deviation of the film's cut over the cut. */
  readonly cutDoubt: number;
}

/** Figures of one glass on one side of a building that were measured; they take the place of the catalogue's. Plain data. */
export interface MeasuredGlass {
  /** Null: as in the catalogue. */
  readonly makeUp: GlazingMakeUp | null;
  /** By place of the film in the plan. */
  readonly films: ReadonlyMap<number, MeasuredFilm>;
}

/** What the survey's readings give. */
export interface MeasuredBook {
  readonly glass: ReadonlyMap<string, MeasuredGlass>;
  /** Key in `glass` of what was measured for a window's glass on its side; null for most. */
  readonly keyOf: (window: PlacedWindow) => string | null;
  readonly assumed: readonly AssumedValue[];
  readonly findings: readonly PlanFinding[];
}

export interface MeasuredRequest {
  readonly readings: readonly SolarReading[];
  readonly windows: readonly PlacedWindow[];
  readonly films: readonly { readonly film: Film; readonly sheet: FilmOnClear }[];
  readonly glazings: GlazingBook;
  readonly weather: ReadonlyMap<string, HourlyYear>;
}

/** A reading stands for windows that look no more than half a compass wind away. */
const SAME_SIDE_deg = 22.5;

/** Readings of one glass on one side. */
interface Spot {
  readonly building: string;
  readonly azimuth_deg: number;
  /** As the reading names it. */
  readonly glazing: string;
  /** KEY in the book of the windows it stands for. */
  readonly booked: string;
  readonly readings: readonly SolarReading[];
}

const keyOfSpot = (of: Pick<Spot, 'building' | 'azimuth_deg' | 'booked'>): string => [of.building, of.azimuth_deg, of.booked].join('|');
const placeText = (of: Pick<Spot, 'building' | 'azimuth_deg' | 'glazing'>): string => `${of.building}, side ${String(Math.round(of.azimuth_deg))}°, ${of.glazing}`;

function spotsOf(request: MeasuredRequest): { readonly spots: readonly Spot[]; readonly findings: readonly PlanFinding[] } {
  const findings: PlanFinding[] = [];
  const spots = [...grouped(request.readings, (r) => [r.building, r.azimuth_deg, r.glazing].join('|')).values()].flatMap((readings): Spot[] => {
    const { building, azimuth_deg, glazing } = readings[0]!;
    const near = request.windows.filter((w) => buildingOf(w.dwelling) === building && apart_deg(w.azimuth_deg, azimuth_deg) <= SAME_SIDE_deg && (w.glazing === glazing || glazingKeyOf(w) === glazing));
    const booked = [...new Set(near.map(glazingKeyOf))].sort();
    if (booked.length === 0) findings.push({ severity: 'warning', subject: placeText(readings[0]!), text: 'readings not used: no window of this glass looks that way', whatToDo: 'correct side or glazing of the readings' });
    return booked.map((key) => ({ building, azimuth_deg, glazing, booked: key, readings }));
  });
  return { spots: sortedBy(spots, keyOfSpot), findings };
}

interface Judged {
  readonly glass: MeasuredGlass;
  readonly assumed: readonly AssumedValue[];
  readonly findings: readonly PlanFinding[];
}

const rowsText = (readings: readonly SolarReading[]): string => `${readings[0]?.inventoryRow.file ?? ''} row${readings.length === 1 ? '' : 's'} ${readings.map((r) => String(r.inventoryRow.row)).join(', ')}`;

/** The film of one spot: all its pairs pooled, the sheet moved to what they give. */
function judgedFilm(at: { readonly spot: Spot; readonly makeUp: GlazingMakeUp; readonly film: MeasuredRequest['films'][number] }, pairs: readonly ReadingPair[]): { readonly measured: MeasuredFilm | null; readonly assumed: readonly AssumedValue[]; readonly findings: readonly PlanFinding[] } {
  const { spot, makeUp, film } = at;
  const subject = `${placeText(spot)}, film ${film.film.id}`;
  const bare = glazingOptics(makeUp);
  const glass = pairGlass(bare, glazingOptics(makeUp, film.sheet), film.sheet.side);
  const { bare_W_m2, filmed_W_m2, accuracy } = pooled(pairs);
  const found = meterPair({ bare_W_m2, filmed_W_m2, ...glass, meterAccuracy: accuracy, highestBehindClear_W_m2: Infinity }); // each bare reading was judged before
  const sheet = filmAsMeasured(makeUp, film.sheet, found.solarHeatGain.best);
  if ('why' in sheet) return { measured: null, assumed: [], findings: [{ severity: 'warning', subject, text: `readings not used: ${sheet.why}`, whatToDo: 'read the pair again in the same sun, or check which film and glass it was' }] };
  const cut = found.cutInHeatGain.best;
  const cutDoubt = found.solarHeatGain.standardUncertainty / bare.solarHeatGain / cut;
  const value = (share: number): string => share.toFixed(2);
  const source = `meter behind the glass, ${String(pairs.length)} pair${pairs.length === 1 ? '' : 's'} (${rowsText(pairs.map((p) => p.filmed))}), by the heat balance of the pane`;
  const row = (field: string, text: string, unit: string): AssumedValue => ({ subject, field, value: text, unit, source, basis: 'measured' });
  const u = found.solarHeatGain.standardUncertainty;
  return {
    measured: { sheet, cutDoubt },
    assumed: [
      row('solar heat gain with film', value(found.solarHeatGain.best), `share of the sun (SHGC), ± ${value(u)} one standard deviation; ${value(glazingOptics(makeUp, film.sheet).solarHeatGain)} by the film's sheet`),
      row('cut in heat gain by the film', value(cut), `share, ± ${value(u / bare.solarHeatGain)}; the meter itself saw ${value(found.cutInReading)} less sunlight`),
    ],
    findings: found.warnings.slice(1).map((text) => ({ severity: 'warning', subject, text, whatToDo: 'look at the readings again' })),
  };
}

/** Pairs taken as one: mean ratio at the mean bare reading; what a meter scatters by falls with their number, unless they scatter more among themselves. */
export function pooled(pairs: readonly ReadingPair[]): { readonly bare_W_m2: number; readonly filmed_W_m2: number; readonly accuracy: { readonly relative: number; readonly absolute_W_m2: number } } {
  const mean = (of: (p: ReadingPair) => number): number => pairs.reduce((sum, p) => sum + of(p), 0) / pairs.length;
  const bare_W_m2 = mean((p) => p.bare_W_m2);
  const ratio = mean((p) => p.filmed_W_m2 / p.bare_W_m2);
  const alone = meterPair({ bare_W_m2, filmed_W_m2: ratio * bare_W_m2, bareTransmittance: 1, bareSolarHeatGain: 1 }).transmittanceRatioUncertainty;
  const spread = pairs.length < 2 ? 0 : Math.sqrt(pairs.reduce((sum, p) => sum + (p.filmed_W_m2 / p.bare_W_m2 - ratio) ** 2, 0) / (pairs.length - 1));
  const share = Math.max(1, spread / alone) / Math.sqrt(pairs.length);
  return { bare_W_m2, filmed_W_m2: ratio * bare_W_m2, accuracy: { relative: METER.relative * share, absolute_W_m2: METER.absolute_W_m2 * share } };
}

/** Accuracy of a handheld meter: 5 % or 10 W/m², whichever is more. Source: own judgement over makers' claims of 3 to 5 %. */
const METER = { relative: 0.05, absolute_W_m2: 10 };

function judged(spot: Spot, request: MeasuredRequest): Judged {
  const site = request.weather.get(spot.building)?.site;
  const catalogue = request.glazings.get(spot.booked)?.makeUp;
  if (site === undefined || catalogue === undefined) throw new RangeError(`readings must stand in a building with weather and a booked glazing, got ${placeText(spot)}`);
  const paired = pairedReadings(spot.readings, { site, makeUp: catalogue, place: placeText(spot) });
  const outdoors = outdoorShare(paired.used, { site, makeUp: catalogue, place: placeText(spot) });
  const bare = outdoors.transmittance === null ? null : glassAsMeasured(catalogue, outdoors.transmittance);
  const makeUp = bare === null || 'why' in bare ? null : bare;
  const assumed: AssumedValue[] = [];
  const findings: PlanFinding[] = [...paired.findings, ...outdoors.findings];
  if (bare !== null && 'why' in bare) findings.push({ severity: 'warning', subject: placeText(spot), text: `outdoor readings not used for the bare glass: ${bare.why}`, whatToDo: 'take bare and outdoor reading again in the same plane' });
  if (makeUp !== null) {
    const optics = glazingOptics(makeUp);
    assumed.push({ subject: placeText(spot), field: 'solar heat gain of the bare glass', value: optics.solarHeatGain.toFixed(2), unit: `share of the sun (SHGC); ${glazingOptics(catalogue).solarHeatGain.toFixed(2)} by the catalogue`, source: `readings behind the glass and outdoors (${rowsText(paired.used.filter((r) => r.outdoors_W_m2 !== null))})`, basis: 'measured' });
  }
  const films = new Map<number, MeasuredFilm>();
  request.films.forEach((film, place) => {
    const pairs = paired.pairs.filter((p) => p.film === film.film.id);
    if (pairs.length === 0) return;
    const found = judgedFilm({ spot, makeUp: makeUp ?? catalogue, film }, pairs);
    if (found.measured !== null) films.set(place, found.measured);
    assumed.push(...found.assumed);
    findings.push(...found.findings);
  });
  return { glass: { makeUp, films }, assumed, findings };
}

/** Turns the survey's readings into figures that stand in for the catalogue's where they were taken; what cannot be used says why. */
export function measuredGlass(request: MeasuredRequest): MeasuredBook {
  const { spots, findings } = spotsOf(request);
  const all = spots.map((spot) => ({ spot, ...judged(spot, request) }));
  const useful = all.filter(({ glass }) => glass.makeUp !== null || glass.films.size > 0);
  return {
    glass: new Map(useful.map(({ spot, glass }) => [keyOfSpot(spot), glass])),
    keyOf: (window) => {
      const near = useful.map((u) => u.spot).filter((s) => s.building === buildingOf(window.dwelling) && s.booked === glazingKeyOf(window) && apart_deg(s.azimuth_deg, window.azimuth_deg) <= SAME_SIDE_deg);
      const nearest = near.sort((a, b) => apart_deg(a.azimuth_deg, window.azimuth_deg) - apart_deg(b.azimuth_deg, window.azimuth_deg))[0];
      return nearest === undefined ? null : keyOfSpot(nearest);
    },
    assumed: all.flatMap((each) => each.assumed),
    findings: [...findings, ...all.flatMap((each) => each.findings)],
  };
}
