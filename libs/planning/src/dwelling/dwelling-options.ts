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

/** Bill as found less bill with the set, first with its cooling alone, then with the heating it adds. */
function savingOf(stand: Stand, found: Found, filmed: { readonly cooling: CoolingYear; readonly warmth: Warmth }): SpanSaving {
  const { meter, at } = stand;
  const d = at.task.dwelling;
  const cool = meter.part(filmed.cooling.electricity_kWh);
  const coolingOnly = meter.cost_cents(withHeat(cool, stand.warmth));
  const both = filmed.warmth.part === null ? coolingOnly : meter.cost_cents(withHeat(cool, filmed.warmth));
  const added_kWh = filmed.warmth.total_kWh - stand.warmth.total_kWh;
  const fuel_cents = d.heatingKind === 'gas' ? added_kWh * d.heatingFuel_cents_kWh : 0;
  return {
    coolingElectricity_kWh: found.cooling.total_kWh - filmed.cooling.total_kWh,
    cooling_cents: found.bill_cents - coolingOnly,
    addedHeating_cents: both - coolingOnly + fuel_cents,
    addedHeating_kWh: added_kWh,
  };
}

/** Runs a set through its spans in order; loads and electricity stand in the bench's arrays until the next run. */
function setResult(stand: Stand, set: FacadeSet, found: ReadonlyMap<YearSpan['plant'], Found>): Omit<SetResult, 'spreadShare'> {
  const { at, bench, sun } = stand;
  let standing = '';
  let filmed: { readonly run: DwellingRun; readonly warmth: Warmth } | undefined;
  let now: CoolingYear | undefined;
  const spans = at.task.spans.map(({ firstYear, plant }) => {
    const dressing = dressedWith(set, firstYear);
    const hangs = at.task.panels.map((p) => String(dressing(p))).join(',');
    if (filmed === undefined || hangs !== standing) {
      const run = runOf(at, bench, { dressing, departure: AS_SURVEYED, sun });
      filmed = { run, warmth: warmthOf(stand, run, bench.heating_kWh) };
      standing = hangs;
    }
    const asFoundNow = found.get(plant);
    if (asFoundNow === undefined) throw new RangeError(`plant must be one of the spans, got ${plant}`);
    const cooling = coolingWith(stand.machines.of(plant), { cooling_W: filmed.run.cooling_W, latent_W: asFoundNow.cooling.latent_W }, bench.cooling_kWh);
    now ??= cooling;
    return savingOf(stand, asFoundNow, { cooling, warmth: filmed.warmth });
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
