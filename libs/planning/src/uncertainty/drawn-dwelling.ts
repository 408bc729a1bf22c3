import { dwellingLoads } from '#calc';
import { AS_SURVEYED, asFound, dressedWith, type DwellingBench, dwellingBench, type OptionBench, runOf } from '../dwelling/dwelling-run.js';
import type { DwellingTask, FacadeSet, YearSpan } from '../dwelling/dwelling-task.js';
import { type MeterBill, meterBill, type UsePart } from '../dwelling/meter-bill.js';
import { coolingWith, coolingYear, heatingYear, type Machines, machinesOf } from '../dwelling/plant-run.js';
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
  return { at, bench, order, found: drawnGlass(at, bench, asFound), meter, weatherOf };
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
    coolingSetPoint_degC: at.drive.coolingSetPoint_degC.map((t) => t + warmer),
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

/** Bills of the dwelling as found in a draw, by its plant. */
function foundBills(stand: Stand, felt: Felt): Map<YearSpan['plant'], FoundBill> {
  const bare = loadsOf(stand, stand.found, felt);
  const warmth = warmthOf(stand, bare.heating_W, stand.bench.heating_kWh);
  const bills = new Map<YearSpan['plant'], FoundBill>();
  for (const { plant } of stand.at.task.spans) {
    if (bills.has(plant)) continue;
    const cooling = coolingYear(felt.weather.machines.of(plant), bare.cooling_W, null);
    bills.set(plant, { latent_W: cooling.latent_W, bill_cents: bill_cents(stand, coolingPart(stand, felt, cooling.electricity_kWh), warmth) });
  }
  return bills;
}

/** All draws of a dwelling by full runs: each draw computes it as found and with every set, hour by hour, and bills both. */
export function drawnDwelling({ task, sets, order }: DrawnTask, bench: OptionBench): DrawnDwelling {
  const stand = standOf(task, bench, order);
  const { spans, dwelling } = task;
  const standings = sets.map((set) => [...standingsOf(stand, set).values()]);
  const savings_cents = new Float64Array(sets.length * spans.length * order.draws);
  for (let draw = 0; draw < order.draws; draw++) {
    const felt = feltIn(stand, draw);
    const found = foundBills(stand, felt);
    standings.forEach((standing, s) => {
      for (const { glass, spans: inSpans } of standing) {
        const filmed = loadsOf(stand, glass, felt);
        const warmth = warmthOf(stand, filmed.heating_W, bench.heating_kWh);
        const byPlant = new Map<YearSpan['plant'], number>();
        for (const i of inSpans) {
          const { plant } = spans[i]!;
          const bare = found.get(plant)!;
          if (!byPlant.has(plant)) {
            const cooling = coolingWith(felt.weather.machines.of(plant), { cooling_W: filmed.cooling_W, latent_W: bare.latent_W }, bench.cooling_kWh);
            byPlant.set(plant, bare.bill_cents - bill_cents(stand, coolingPart(stand, felt, cooling.electricity_kWh), warmth));
          }
          savings_cents[(s * spans.length + i) * order.draws + draw] = byPlant.get(plant)!;
        }
      }
    });
  }
  return { dwelling: dwelling.id, spans: spans.length, savings_cents };
}
