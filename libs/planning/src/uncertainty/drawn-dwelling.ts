import { dwellingLoads, electricityRatio, latentLoad_W, type PlantOnWeather } from '#calc';
import { AS_SURVEYED, asFound, dressedWith, type DwellingBench, dwellingBench, type OptionBench, runOf } from '../dwelling/dwelling-run.js';
import type { DwellingTask, FacadeSet, YearSpan } from '../dwelling/dwelling-task.js';
import { type MeterBill, meterBill, type UsePart } from '../dwelling/meter-bill.js';
import { coolingWith, heatingYear, type Machines, machinesOf } from '../dwelling/plant-run.js';
import { zoneBody } from '../dwelling/zone.js';
import { type DrawOrder, drawnValue } from './draw-book.js';
import { type DrawnGlass, drawnGlass, drawnSun_W } from './drawn-glass.js';

/** A dwelling whose sets are to be computed again under every draw. */
export interface DrawnTask {
  readonly task: DwellingTask;
  readonly sets: readonly FacadeSet[];
  readonly order: DrawOrder;
}

/** Yearly saving of each set in each span of years under each draw, all payers, net of added heating, at base-date prices. */
export interface DrawnDwelling {
  readonly dwelling: string;
  readonly spans: number;
  /** Shape: [sets × spans × draws], cents. */
  readonly savings_cents: Float64Array;
}

/** A dwelling's weather under a draw: every hour moved alike, and its machines in that weather. */
interface DrawnWeather {
  readonly outdoor_degC: Float64Array;
  readonly machines: Machines;
}

/** What is the same in all draws of a dwelling. */
interface Stand {
  readonly at: DwellingBench;
  readonly bench: OptionBench;
  readonly order: DrawOrder;
  readonly found: DrawnGlass;
  readonly meter: MeterBill;
  /** Arrays filled anew in each draw. */
  readonly setPoint_degC: Float64Array;
  readonly latentOf: (plant: YearSpan['plant']) => Float64Array;
  readonly weatherOf: (warmer_K: number) => DrawnWeather;
}

/** One draw as the dwelling feels it. */
interface Felt {
  readonly weather: DrawnWeather;
  readonly coolingSetPoint_degC: Float64Array;
  readonly sun: (glazing: string) => number;
  readonly cut: (film: number) => number;
  readonly perEfficiency: number;
}

function standOf(task: DwellingTask, bench: OptionBench, order: DrawOrder): Stand {
  const at = dwellingBench(task, bench.room);
  const { site } = at.zone;
  // A machine of unknown size is the same machine in every draw: sized by the load as surveyed.
  const peakSensible_W = runOf(at, bench, { dressing: asFound, departure: AS_SURVEYED }).peakCooling_W;
  const kept = new Map<number, DrawnWeather>();
  const weatherOf = (warmer_K: number): DrawnWeather => {
    let weather = kept.get(warmer_K);
    if (weather === undefined) {
      const outdoor_degC = site.weather.outdoor_degC.map((t) => t + warmer_K);
      kept.set(warmer_K, (weather = { outdoor_degC, machines: machinesOf(task.dwelling, { room: bench.room, site: { ...site, weather: { ...site.weather, outdoor_degC } }, peakSensible_W }) }));
    }
    return weather;
  };
  const meter = meterBill(bench.clockOf(task.dwelling.meter.tariff.label), task.others_kWh === null ? [at.zone.base_kWh] : [at.zone.base_kWh, task.others_kWh], bench.use_kWh);
  return { at, bench, order, found: drawnGlass(at, bench, asFound), meter, weatherOf, setPoint_degC: new Float64Array(8760), latentOf: byPlant(() => new Float64Array(8760)) };
}

/** One thing for each plant, made when it is first asked for. */
function byPlant<T>(make: () => T): (plant: YearSpan['plant']) => T {
  const kept = new Map<YearSpan['plant'], T>();
  return (plant) => {
    const made = kept.get(plant) ?? make();
    kept.set(plant, made);
    return made;
  };
}

function shifted(hours: Float64Array, by: number, out: Float64Array): Float64Array {
  for (let h = 0; h < out.length; h++) out[h] = hours[h]! + by;
  return out;
}

function feltIn(stand: Stand, draw: number): Felt {
  const { order, at, bench } = stand;
  const { id, building } = at.task.dwelling;
  const value = (key: Parameters<typeof drawnValue>[1], scope: string): number => drawnValue(order, key, { scope, draw });
  const arriving = value('shade', building) * value('use', id);
  const warmer = value('setPoint', id);
  const films = bench.room.films.map((film) => 1 + value('filmCut', film.id));
  const glass = new Map(stand.found.parts.map((part) => [part.glazing, value('glass', part.glazing)]));
  return {
    weather: stand.weatherOf(value('weather', '*')),
    coolingSetPoint_degC: shifted(at.drive.coolingSetPoint_degC, warmer, stand.setPoint_degC),
    sun: (glazing) => arriving * (glass.get(glazing) ?? 1),
    cut: (film) => films[film] ?? 1,
    perEfficiency: 1 / value('efficiency', id),
  };
}

/** Loads of a draw in the bench's buffers: read them before the next run. */
function loadsOf(stand: Stand, glass: DrawnGlass, felt: Felt) {
  const { at, bench } = stand;
  const solar_W = drawnSun_W(glass, felt, bench.solar_W);
  return dwellingLoads(zoneBody(at.task, at.zone, glass.windows), { ...at.drive, solar_W, outdoor_degC: felt.weather.outdoor_degC, coolingSetPoint_degC: felt.coolingSetPoint_degC }, bench.loads);
}

/** Electricity of a run as a part of the meter's use; the array is changed in place and may be used again after the bill. */
function coolingPart(stand: Stand, felt: Felt, electricity_kWh: Float64Array): UsePart {
  for (let h = 0; h < 8760; h++) electricity_kWh[h] = felt.perEfficiency * electricity_kWh[h]!;
  return stand.meter.part(electricity_kWh);
}

/** Heating of a run: as a part of the meter's use where it comes by wire, as the price of its fuel elsewhere. */
interface Warmth {
  readonly parts: readonly UsePart[];
  readonly fuel_cents: number;
}

function warmthOf(stand: Stand, heating_W: Float64Array, out: Float64Array): Warmth {
  const d = stand.at.task.dwelling;
  const { electricity_kWh, total_kWh } = heatingYear(d, heating_W, out);
  return electricity_kWh === null ? { parts: [], fuel_cents: total_kWh * d.heatingFuel_cents_kWh } : { parts: [stand.meter.part(electricity_kWh)], fuel_cents: 0 };
}

const bill_cents = (stand: Stand, cooling: UsePart, warmth: Warmth): number => stand.meter.cost_cents([cooling, ...warmth.parts]) + warmth.fuel_cents;

interface FoundBill {
  readonly latent_W: Float64Array;
  readonly bill_cents: number;
}

/** The states of the glass a set goes through, each with the spans it stands in. */
function standingsOf(stand: Stand, set: FacadeSet): Map<string, { readonly glass: DrawnGlass; readonly spans: number[] }> {
  const standings = new Map<string, { glass: DrawnGlass; spans: number[] }>();
  stand.at.task.spans.forEach(({ firstYear }, i) => {
    const dressing = dressedWith(set, firstYear);
    const key = stand.at.task.panels.map((p) => String(dressing(p))).join(',');
    let standing = standings.get(key);
    if (standing === undefined) standings.set(key, (standing = { glass: drawnGlass(stand.at, stand.bench, dressing), spans: [] }));
    standing.spans.push(i);
  });
  return standings;
}

/** A run under one machine, from which machines that differ in efficiency alone follow. */
interface UnderMachine {
  readonly on: PlantOnWeather;
  readonly part: UsePart;
}

/** Cooling of a run under a plant as a part of the meter's use; `before` is what was already run of the same loads. */
function coolingUnder(stand: Stand, felt: Felt, of: { readonly on: PlantOnWeather; readonly cooling_W: Float64Array; readonly latent_W: Float64Array; readonly before: UnderMachine | undefined }): UnderMachine {
  const ratio = of.before === undefined ? null : electricityRatio(of.on, of.before.on);
  if (of.before !== undefined && ratio !== null) return { on: of.before.on, part: stand.meter.scaled(of.before.part, ratio) };
  const out = of.before === undefined ? stand.bench.cooling_kWh : stand.bench.otherCooling_kWh;
  return { on: of.on, part: coolingPart(stand, felt, coolingWith(of.on, of, out).electricity_kWh) };
}

/** Bills of the dwelling as found in a draw, by its plant. */
function foundBills(stand: Stand, felt: Felt): Map<YearSpan['plant'], FoundBill> {
  const { cooling_W, heating_W } = loadsOf(stand, stand.found, felt);
  const warmth = warmthOf(stand, heating_W, stand.bench.heating_kWh);
  const bills = new Map<YearSpan['plant'], FoundBill>();
  let before: UnderMachine | undefined;
  for (const { plant } of stand.at.task.spans) {
    if (bills.has(plant)) continue;
    const on = felt.weather.machines.of(plant);
    const latent_W = latentLoad_W(on, cooling_W, stand.latentOf(plant));
    const under = coolingUnder(stand, felt, { on, cooling_W, latent_W, before });
    before ??= under;
    bills.set(plant, { latent_W, bill_cents: bill_cents(stand, under.part, warmth) });
  }
  return bills;
}

/** Savings of a state of the glass in a draw, by plant. */
function savingsOf(stand: Stand, felt: Felt, of: { readonly glass: DrawnGlass; readonly found: ReadonlyMap<YearSpan['plant'], FoundBill>; readonly plants: readonly YearSpan['plant'][] }): Map<YearSpan['plant'], number> {
  const { cooling_W, heating_W } = loadsOf(stand, of.glass, felt);
  const warmth = warmthOf(stand, heating_W, stand.bench.heating_kWh);
  let before: UnderMachine | undefined;
  return new Map(
    of.plants.map((plant) => {
      const bare = of.found.get(plant)!;
      const under = coolingUnder(stand, felt, { on: felt.weather.machines.of(plant), cooling_W, latent_W: bare.latent_W, before });
      before ??= under;
      return [plant, bare.bill_cents - bill_cents(stand, under.part, warmth)];
    }),
  );
}

/** All draws of a dwelling by full runs: each draw computes it as found and with every set, hour by hour, and bills both. */
export function drawnDwelling({ task, sets, order }: DrawnTask, bench: OptionBench): DrawnDwelling {
  const stand = standOf(task, bench, order);
  const { spans, dwelling } = task;
  const standings = sets.map((set) => [...standingsOf(stand, set).values()].map((standing) => ({ ...standing, plants: [...new Set(standing.spans.map((i) => spans[i]!.plant))] })));
  const savings_cents = new Float64Array(sets.length * spans.length * order.draws);
  for (let draw = 0; draw < order.draws; draw++) {
    const felt = feltIn(stand, draw);
    const found = foundBills(stand, felt);
    standings.forEach((standing, s) => {
      for (const { glass, spans: inSpans, plants } of standing) {
        const saved = savingsOf(stand, felt, { glass, found, plants });
        for (const i of inSpans) savings_cents[(s * spans.length + i) * order.draws + draw] = saved.get(spans[i]!.plant)!;
      }
    });
  }
  return { dwelling: dwelling.id, spans: spans.length, savings_cents };
}
