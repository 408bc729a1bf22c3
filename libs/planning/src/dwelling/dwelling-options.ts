import { electricityRatio, type PlantOnWeather } from '#calc';
import { AS_SURVEYED, asFound, dressedWith, type DwellingBench, dwellingBench, type OptionBench, type DwellingRun, runOf } from './dwelling-run.js';
import type { DwellingResult, DwellingTask, FacadeSet, SetResult, SpanSaving, YearSpan } from './dwelling-task.js';
import { type MeterBill, meterBill, type UsePart, useOf } from './meter-bill.js';
import { type CoolingYear, coolingWith, coolingYear, heatingYear, type Machines, machinesOf } from './plant-run.js';
import { chainedSets } from './facade-chain.js';
import { savingSpread } from './saving-spread.js';
import { type SideSun, sideSun } from './side-sun.js';

/** Heating of a run: all of it, and the part that shows on the meter. */
interface Warmth {
  readonly total_kWh: number;
  readonly part: UsePart | null;
}

/** The dwelling as found under a plant: its cooling and the meter's bill. */
interface Found {
  readonly cooling: CoolingYear;
  readonly bill_cents: number;
}

interface Stand {
  readonly at: DwellingBench;
  readonly bench: OptionBench;
  readonly sun: SideSun;
  readonly machines: Machines;
  readonly run: DwellingRun;
  readonly meter: MeterBill;
  readonly warmth: Warmth;
}

function standOf(task: DwellingTask, bench: OptionBench): Stand {
  const at = dwellingBench(task, bench.room);
  const sun = sideSun(at, bench);
  const run = runOf(at, bench, { dressing: asFound, departure: AS_SURVEYED, sun, into: bench.foundLoads });
  const meter = meterBill(bench.clockOf(task.dwelling.meter.tariff.label), task.others_kWh === null ? [at.zone.base_kWh] : [at.zone.base_kWh, task.others_kWh], bench.use_kWh);
  const machines = machinesOf(task.dwelling, { room: bench.room, site: at.zone.site, peakSensible_W: run.peakCooling_W });
  return { at, bench, sun, run, machines, meter, warmth: warmthOf({ at, meter }, run, new Float64Array(8760)) };
}

function warmthOf({ at, meter }: Pick<Stand, 'at' | 'meter'>, run: DwellingRun, out: Float64Array): Warmth {
  const d = at.task.dwelling;
  if (d.heatingKind === 'gas') return { total_kWh: run.heating_kWh / d.heatingEfficiency, part: null };
  const { electricity_kWh, total_kWh } = heatingYear(d, run.heating_W, out);
  return { total_kWh, part: electricity_kWh === null ? null : meter.part(electricity_kWh) };
}

const withHeat = (cooling: UsePart, { part }: Warmth): UsePart[] => (part === null ? [cooling] : [cooling, part]);

function foundByPlant({ at, machines, meter, run, warmth }: Stand): Map<YearSpan['plant'], Found> {
  const found = new Map<YearSpan['plant'], Found>();
  for (const { plant } of at.task.spans) {
    if (found.has(plant)) continue;
    const cooling = coolingYear(machines.of(plant), run.cooling_W, null);
    found.set(plant, { cooling, bill_cents: meter.cost_cents(withHeat(meter.part(cooling.electricity_kWh), warmth)) });
  }
  return found;
}

/** A set under one plant: electricity of its cooling, in all and on the meter, and its heating. */
interface Filmed {
  readonly cooling_kWh: number;
  readonly cool: UsePart;
  readonly warmth: Warmth;
}

/** Bill as found less bill with the set, first with its cooling alone, then with the heating it adds. */
function savingOf(stand: Stand, found: Found, { cooling_kWh, cool, warmth }: Filmed): SpanSaving {
  const { meter, at } = stand;
  const d = at.task.dwelling;
  const coolingOnly = meter.cost_cents(withHeat(cool, stand.warmth));
  const both = warmth.part === null ? coolingOnly : meter.cost_cents(withHeat(cool, warmth));
  const added_kWh = warmth.total_kWh - stand.warmth.total_kWh;
  const fuel_cents = d.heatingKind === 'gas' ? added_kWh * d.heatingFuel_cents_kWh : 0;
  return {
    coolingElectricity_kWh: found.cooling.total_kWh - cooling_kWh,
    cooling_cents: found.bill_cents - coolingOnly,
    addedHeating_cents: both - coolingOnly + fuel_cents,
    addedHeating_kWh: added_kWh,
  };
}

/** A set in one standing of its windows, with the plant it was run under; loads and electricity stand in the bench's arrays until the next run. */
interface Standing {
  readonly hangs: string;
  readonly run: DwellingRun;
  readonly warmth: Warmth;
  readonly on: PlantOnWeather;
  readonly cooling: CoolingYear;
  readonly cool: UsePart;
}

function standingOf(stand: Stand, span: YearSpan, of: { readonly set: FacadeSet; readonly hangs: string; readonly latent_W: Float64Array }): Standing {
  const { at, bench, sun, meter } = stand;
  const run = runOf(at, bench, { dressing: dressedWith(of.set, span.firstYear), departure: AS_SURVEYED, sun });
  const on = stand.machines.of(span.plant);
  const cooling = coolingWith(on, { cooling_W: run.cooling_W, latent_W: of.latent_W }, bench.cooling_kWh);
  return { hangs: of.hangs, run, on, cooling, cool: meter.part(cooling.electricity_kWh), warmth: warmthOf(stand, run, bench.heating_kWh) };
}

/** The standing under a plant: machines that differ in efficiency alone share a run. */
function underPlant({ meter, machines, bench }: Stand, { run, on, cooling, cool, warmth }: Standing, of: { readonly plant: YearSpan['plant']; readonly latent_W: Float64Array }): Filmed {
  const asked = machines.of(of.plant);
  if (asked === on) return { cooling_kWh: cooling.total_kWh, cool, warmth };
  const ratio = electricityRatio(asked, on);
  if (ratio !== null) return { cooling_kWh: ratio * cooling.total_kWh, cool: meter.scaled(cool, ratio), warmth };
  const other = coolingWith(asked, { cooling_W: run.cooling_W, latent_W: of.latent_W }, bench.otherCooling_kWh);
  return { cooling_kWh: other.total_kWh, cool: meter.part(other.electricity_kWh), warmth };
}

/** Runs a set through its spans in order. */
function setResult(stand: Stand, set: FacadeSet, found: ReadonlyMap<YearSpan['plant'], Found>): Omit<SetResult, 'spreadShare'> {
  let standing: Standing | undefined;
  let now: CoolingYear | undefined;
  const spans = stand.at.task.spans.map((span) => {
    const { plant, firstYear } = span;
    const asFoundNow = found.get(plant);
    if (asFoundNow === undefined) throw new RangeError(`plant must be one of the spans, got ${plant}`);
    const { latent_W } = asFoundNow.cooling;
    const hangs = stand.at.task.panels.map(dressedWith(set, firstYear)).join(',');
    if (standing?.hangs !== hangs) standing = standingOf(stand, span, { set, hangs, latent_W });
    now ??= standing.cooling;
    return savingOf(stand, asFoundNow, underPlant(stand, standing, { plant, latent_W }));
  });
  return { set, spans, peak_kW: now?.peak_kW ?? 0, runHours_h: now?.runHours_h ?? 0, coolingElectricity_kWh: now?.total_kWh ?? 0 };
}

/** All sets of one dwelling: bare and filmed run the same functions, a saving is the difference of two bills. */
export function dwellingOptions(task: DwellingTask, bench: OptionBench): DwellingResult {
  const stand = standOf(task, bench);
  const found = foundByPlant(stand);
  const spreadShare = savingSpread(stand.at, bench, { sun: stand.sun, found_kWh: stand.run.cooling_kWh });
  const now = found.get(task.spans[0]?.plant ?? 'present')?.cooling;
  const compute = (set: FacadeSet): SetResult => ({ ...setResult(stand, set, found), spreadShare });
  const sets = task.sets.map(compute);
  return {
    key: task.key,
    sets: [...sets, ...chainedSets(sets, compute)],
    asFound: {
      coolingElectricity_kWh: now?.total_kWh ?? 0,
      peak_kW: now?.peak_kW ?? 0,
      runHours_h: now?.runHours_h ?? 0,
      hoursOverSetPoint: stand.run.hoursOverSetPoint,
      coolingLoad_kWh: stand.run.cooling_kWh,
    },
  };
}

/** Hourly electricity of a dwelling on its meter under its present plant, as found or with a set; for meters that serve several. */
export function meterLoad_kWh(task: DwellingTask, bench: OptionBench, set: FacadeSet | null): Float64Array {
  const stand = standOf({ ...task, others_kWh: null }, bench);
  const { at, machines, sun } = stand;
  const on = machines.of(task.spans[0]?.plant ?? 'present');
  const found = coolingYear(on, stand.run.cooling_W, null);
  const use = (cooling: CoolingYear, { part }: Warmth): Float64Array => useOf([at.zone.base_kWh, cooling.electricity_kWh, ...(part === null ? [] : [part.kWh])], new Float64Array(8760));
  if (set === null) return use(found, stand.warmth);
  const run = runOf(at, bench, { dressing: dressedWith(set, task.spans[0]?.firstYear ?? 0), departure: AS_SURVEYED, sun });
  return use(coolingWith(on, { cooling_W: run.cooling_W, latent_W: found.latent_W }, bench.cooling_kWh), warmthOf(stand, run, bench.heating_kWh));
}
