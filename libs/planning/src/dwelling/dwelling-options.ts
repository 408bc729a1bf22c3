import { yearCost_cents } from '#calc';
import { AS_SURVEYED, asFound, dressedWith, type DwellingBench, dwellingBench, type DwellingRun, type OptionBench, runOf } from './dwelling-run.js';
import type { DwellingResult, DwellingTask, FacadeSet, SetResult, SpanSaving, YearSpan } from './dwelling-task.js';
import { type CoolingYear, coolingYear, type HeatingYear, heatingYear, type Machines, machinesOf } from './plant-run.js';
import { chainedSets } from './facade-chain.js';
import { savingSpread } from './saving-spread.js';

/** Electricity of a run under a plant, and heating as it shows. */
interface Energy {
  readonly cooling: CoolingYear;
  readonly heating: HeatingYear;
}

/** The dwelling as found under a plant: its energy and the meter's bill. */
interface Found {
  readonly energy: Energy;
  readonly bill_cents: number;
}

interface Stand {
  readonly at: DwellingBench;
  readonly bench: OptionBench;
  readonly machines: Machines;
  readonly run: DwellingRun;
}

function standOf(task: DwellingTask, bench: OptionBench): Stand {
  const at = dwellingBench(task, bench.room);
  const run = runOf(at, bench, { dressing: asFound, departure: AS_SURVEYED });
  return { at, bench, run, machines: machinesOf(task.dwelling, { room: bench.room, site: at.zone.site, peakSensible_W: run.peakCooling_W }) };
}

function energyOf(stand: Stand, run: DwellingRun, of: { readonly plant: YearSpan['plant']; readonly asFound: CoolingYear | null }): Energy {
  return { cooling: coolingYear(stand.machines.of(of.plant), run.cooling_W, of.asFound), heating: heatingYear(stand.at.task.dwelling, run.heating_W) };
}

/** Hourly use of the meter, into the bench's buffer. */
function meterUse(stand: Stand, cooling: CoolingYear, heating: HeatingYear): Float64Array {
  const use = stand.bench.use_kWh;
  const others = stand.at.task.others_kWh;
  const warm = heating.electricity_kWh;
  const { base_kWh } = stand.at.zone;
  const cool = cooling.electricity_kWh;
  for (let h = 0; h < 8760; h++) use[h] = base_kWh[h]! + cool[h]!;
  if (warm !== null) for (let h = 0; h < 8760; h++) use[h] = use[h]! + warm[h]!;
  if (others !== null) for (let h = 0; h < 8760; h++) use[h] = use[h]! + others[h]!;
  return use;
}

function billOf(stand: Stand, cooling: CoolingYear, heating: HeatingYear): number {
  return yearCost_cents(stand.bench.clockOf(stand.at.task.dwelling.meter.tariff.label), meterUse(stand, cooling, heating));
}

function foundByPlant(stand: Stand): Map<YearSpan['plant'], Found> {
  const found = new Map<YearSpan['plant'], Found>();
  for (const { plant } of stand.at.task.spans) {
    if (found.has(plant)) continue;
    const energy = energyOf(stand, stand.run, { plant, asFound: null });
    found.set(plant, { energy, bill_cents: billOf(stand, energy.cooling, energy.heating) });
  }
  return found;
}

/** Bill as found less bill with the set, first with its cooling alone, then with the heating it adds. */
function savingOf(stand: Stand, found: Found, filmed: Energy): SpanSaving {
  const d = stand.at.task.dwelling;
  const coolingOnly = billOf(stand, filmed.cooling, found.energy.heating);
  const both = filmed.heating.electricity_kWh === null ? coolingOnly : billOf(stand, filmed.cooling, filmed.heating);
  const added_kWh = filmed.heating.total_kWh - found.energy.heating.total_kWh;
  const fuel_cents = d.heatingKind === 'gas' ? added_kWh * d.heatingFuel_cents_kWh : 0;
  return {
    coolingElectricity_kWh: found.energy.cooling.total_kWh - filmed.cooling.total_kWh,
    cooling_cents: found.bill_cents - coolingOnly,
    addedHeating_cents: both - coolingOnly + fuel_cents,
    addedHeating_kWh: added_kWh,
  };
}

function setResult(stand: Stand, set: FacadeSet, found: ReadonlyMap<YearSpan['plant'], Found>): Omit<SetResult, 'spreadShare'> {
  const { at, bench } = stand;
  const runs = new Map<string, DwellingRun>();
  const energies: Energy[] = [];
  const spans = at.task.spans.map(({ firstYear, plant }) => {
    const dressing = dressedWith(set, firstYear);
    const standing = at.task.panels.map((p) => String(dressing(p))).join(',');
    let run = runs.get(standing);
    if (run === undefined) runs.set(standing, (run = runOf(at, bench, { dressing, departure: AS_SURVEYED })));
    const asFoundNow = found.get(plant);
    if (asFoundNow === undefined) throw new RangeError(`plant must be one of the spans, got ${plant}`);
    const energy = energyOf(stand, run, { plant, asFound: asFoundNow.energy.cooling });
    energies.push(energy);
    return savingOf(stand, asFoundNow, energy);
  });
  const now = energies[0]?.cooling;
  return { set, spans, peak_kW: now?.peak_kW ?? 0, runHours_h: now?.runHours_h ?? 0, coolingElectricity_kWh: now?.total_kWh ?? 0 };
}

/** All sets of one dwelling: bare and filmed run the same functions, a saving is the difference of two bills. */
export function dwellingOptions(task: DwellingTask, bench: OptionBench): DwellingResult {
  const stand = standOf(task, bench);
  const found = foundByPlant(stand);
  const spreadShare = savingSpread(stand.at, bench);
  const now = found.get(task.spans[0]?.plant ?? 'present')?.energy.cooling;
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
  const plant = task.spans[0]?.plant ?? 'present';
  const found = energyOf(stand, stand.run, { plant, asFound: null });
  if (set === null) return meterUse(stand, found.cooling, found.heating).slice();
  const run = runOf(stand.at, bench, { dressing: dressedWith(set, task.spans[0]?.firstYear ?? 0), departure: AS_SURVEYED });
  const filmed = energyOf(stand, run, { plant, asFound: found.cooling });
  return meterUse(stand, filmed.cooling, filmed.heating).slice();
}
