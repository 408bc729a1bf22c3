import { latentLoad_W, monthStarts, type PlantOnWeather, runPlant } from '#calc';
import type { PlanLine } from '../plan/plan.js';
import { filledFor } from './assumptions-of.js';
import { loadAgain, type LoadAgain, machineAgain } from './dwelling-load.js';
import type { Figure, ReceiptAt } from './figure.js';
import { digits } from './receipt-numbers.js';
import { type Receipt, type ReceiptCompute, type ReceiptStep, workedOut } from './receipt.js';
import { buildingRow, dwellingRow, windowRows } from './survey-rows.js';

type About = Pick<Figure, 'id' | 'title'>;
const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
const GONE = 'the survey kept now does not hold this dwelling any more';
const CHANGED = 'the survey was changed since the plan was made';

const sum = (hours: Float64Array, from = 0, to = hours.length): number => {
  let total = 0;
  for (let h = from; h < to; h++) total += hours[h]!;
  return total;
};

/** What the physics of a dwelling stands on. */
function shared(line: PlanLine, { plan }: ReceiptAt): Pick<Receipt, 'rows' | 'assumptions'> {
  return {
    rows: [...dwellingRow(plan, line.dwelling, ['floor_area', 'ceiling_height', 'exposed_wall', 'exposed_roof', 'thermal_class', 'cooling_set_point', 'occupants', 'cooling_kind', 'cooling_capacity', 'cooling_efficiency']), ...windowRows(line.windows, ['facade', 'width', 'height', 'glazing', 'overhang_depth', 'blind']), ...buildingRow(plan, line.building, ['climate', 'weather_file', 'built_year', 'airtightness'])],
    assumptions: filledFor(plan, line.building, () => true),
  };
}

function loadSteps({ at, run, solar_W }: LoadAgain): ReceiptStep[] {
  const { drive } = at;
  return MONTHS.map((label, m): ReceiptStep => {
    const [from, to] = [monthStarts[m]!, monthStarts[m + 1]!];
    const kWh = (hours: Float64Array): number => sum(hours, from, to) / 1000;
    return { label, substituted: `sun ${digits(kWh(solar_W), 1)} kWh and people and base load ${digits(kWh(drive.internal_W), 1)} kWh in, air outside ${digits(sum(drive.outdoor_degC, from, to) / (to - from), 1)} °C: cooling ${digits(kWh(run.cooling_W), 2)} kWh`, value: kWh(run.cooling_W), unit: 'kWh' };
  });
}

async function loadReceipt(line: PlanLine, at: ReceiptAt, of: About & { readonly state: 'as-found' | 'filmed' }): Promise<Receipt> {
  const load = await loadAgain(line, of.state, await at.survey());
  return {
    figure: of.id,
    title: of.title,
    value: load?.run.cooling_kWh ?? 'not worked',
    unit: 'kWh',
    formula: 'sensible cooling of a year = Σ hours of the simple hourly method (five resistances, one mass): what must be taken out to hold the set point, given sun, people, base load and outdoor air',
    steps: load === null ? [] : loadSteps(load),
    ...shared(line, at),
    compute: load === null ? null : { kernel: 'dwelling-year', input: load.input, result: [{ pointer: '/cooling_kWh', times: 1 }], words: 'cooling_kWh' },
    computeWhy: load === null ? GONE : null,
    worked: { value: load?.run.cooling_kWh ?? 'not worked', agrees: load !== null, why: load === null ? GONE : null },
    see: [`cooling/${line.dwelling}/electricity`, ...line.windows.slice(0, 2).map((w) => `sun/${line.building}/${digits(w.azimuth_deg, 2)}`)],
  };
}

/** The machine's hours as `cooling-plant` takes them, or why it cannot. */
function plantCases(on: PlantOnWeather, load: LoadAgain, of: { readonly ageing_1_yr: number; readonly hours: readonly number[]; readonly latent_W?: Float64Array }): object[] | { readonly why: string } {
  const { plant, indoorWetBulb_degC } = on.machine;
  if (plant.ageing !== undefined && plant.ageing.loss_1_yr !== of.ageing_1_yr) return { why: 'the plan ages the machine at another rate than the kernel' };
  const fixed = {
    kind: plant.kind,
    ratedCapacity_W: plant.ratedCapacity_W,
    [plant.efficiency.scale]: plant.efficiency.value,
    ...(plant.ageing === undefined ? {} : { age_yr: plant.ageing.age_yr }),
    distributionEfficiency: on.machine.distributionEfficiency,
    indoorWetBulb_degC,
  };
  return of.hours.map((h) => ({ ...fixed, outdoor_degC: load.at.drive.outdoor_degC[h]!, sensibleLoad_W: load.run.cooling_W[h]!, ...(of.latent_W === undefined ? {} : { latentLoad_W: of.latent_W[h]! }) }));
}

interface PlantFigure extends About {
  readonly field: 'electricity' | 'peak';
}

function plantSteps(on: PlantOnWeather, load: LoadAgain, year: ReturnType<typeof runPlant>): ReceiptStep[] {
  const { plant, cop } = on.machine;
  const { scale, value } = plant.efficiency;
  const hour = year.peakHour ?? 0;
  return [
    { label: 'machine', substituted: `${plant.kind}, ${digits(plant.ratedCapacity_W, 0)} W, ${scale} ${digits(value)}: COP ${digits(cop)} at the rated point`, value: cop, unit: 'ratio' },
    { label: 'sensible cooling', substituted: `${digits(load.run.cooling_kWh, 2)} kWh`, value: load.run.cooling_kWh, unit: 'kWh' },
    { label: 'with its moisture and ducts', substituted: `${digits(load.run.cooling_kWh, 2)} ÷ ${digits(on.machine.sensibleHeatRatio)} ÷ ${digits(on.machine.distributionEfficiency)} = ${digits(load.run.cooling_kWh / on.machine.sensibleHeatRatio / on.machine.distributionEfficiency, 2)} kWh at the coil`, value: load.run.cooling_kWh / on.machine.sensibleHeatRatio / on.machine.distributionEfficiency, unit: 'kWh' },
    { label: 'electricity', substituted: `Σ hours of run share × power at the hour's outdoor air = ${digits(year.electricity_total_kWh, 2)} kWh`, value: year.electricity_total_kWh, unit: 'kWh' },
    { label: 'hardest hour', substituted: `hour ${String(hour)} of the year, ${digits(load.at.drive.outdoor_degC[hour]!, 1)} °C, ${digits(load.run.cooling_W[hour]!, 0)} W sensible: ${digits(year.peak_kW)} kW`, value: year.peak_kW, unit: 'kW' },
  ];
}

async function plantReceipt(line: PlanLine, at: ReceiptAt, of: PlantFigure): Promise<Receipt> {
  const survey = await at.survey();
  const load = await loadAgain(line, 'as-found', survey);
  const isPeak = of.field === 'peak';
  const stated = isPeak ? line.option.peak_kW.asFound : line.option.asFoundCooling_kWh;
  const on = load === null ? null : machineAgain(load, survey);
  const year = load === null || on === null ? null : runPlant(on, { sensibleLoad_W: load.run.cooling_W });
  const cooled = load === null ? [] : [...load.run.cooling_W].flatMap((W, h) => (W > 0 ? [h] : []));
  const hours = isPeak ? (year?.peakHour == null ? [] : [year.peakHour]) : cooled;
  const cases = on === null || load === null ? { why: GONE } : plantCases(on, load, { ageing_1_yr: at.catalogue.plants.ageing_1_yr.value, hours });
  const compute: ReceiptCompute | null = 'why' in cases || cases.length === 0 ? null : { kernel: 'cooling-plant', input: cases, result: [{ pointer: '/*/electricity_W', times: 0.001 }], words: isPeak ? 'electricity_W ÷ 1,000' : 'electricity_W of all hours with a load ÷ 1,000, added up' };
  const worked = year === null ? 'not worked' : isPeak ? year.peak_kW : year.electricity_total_kWh;
  return {
    figure: of.id,
    title: of.title,
    value: stated,
    unit: isPeak ? 'kW' : 'kWh',
    formula: 'electricity of an hour = run share × capacity × input factor ÷ COP at the hour’s outdoor temperature; load on the coil = sensible ÷ sensible heat ratio ÷ ducts; less efficient at part load',
    steps: load === null || on === null || year === null ? [] : plantSteps(on, load, year),
    ...shared(line, at),
    compute,
    computeWhy: 'why' in cases ? cases.why : cases.length === 0 ? 'nothing is cooled' : null,
    worked: workedOut(stated, worked, CHANGED),
    see: [`cooling/${line.dwelling}/load-as-found`],
  };
}

const ALL_HOURS = { result: [{ pointer: '/*/electricity_W', times: 0.001 }], words: 'electricity_W of all hours with a load ÷ 1,000, added up' };

/** Electricity of a year with the film: moisture as the dwelling has it bare, or following the shorter run where the room may get damper. */
async function filmedReceipt(line: PlanLine, at: ReceiptAt, of: About & { readonly isDamper: boolean }): Promise<Receipt> {
  const survey = await at.survey();
  const [bare, load] = [await loadAgain(line, 'as-found', survey), await loadAgain(line, 'filmed', survey)];
  const { option } = line;
  const saved_kWh = of.isDamper ? (at.plan.energy.options.find((o) => o.option === option.id)?.damper.cooling_kWh ?? 0) : (option.segments[0]?.saving.coolingElectricity_kWh ?? 0) / (option.counted ?? 1);
  const stated = option.asFoundCooling_kWh - saved_kWh;
  if (load === null || bare === null) return { figure: of.id, title: of.title, value: stated, unit: 'kWh', formula: '', steps: [], ...shared(line, at), compute: null, computeWhy: GONE, worked: workedOut(stated, 'not worked', GONE), see: [] };
  const on = machineAgain(bare, survey);
  const latent_W = of.isDamper ? undefined : latentLoad_W(on, bare.run.cooling_W);
  const year = runPlant(on, { sensibleLoad_W: load.run.cooling_W, ...(latent_W === undefined ? {} : { latentLoad_W: latent_W }) });
  const hours = [...load.run.cooling_W].flatMap((W, h) => (W + (latent_W?.[h] ?? 0) > 0 ? [h] : []));
  const cases = plantCases(on, load, { ageing_1_yr: at.catalogue.plants.ageing_1_yr.value, hours, ...(latent_W === undefined ? {} : { latent_W }) });
  const worked = year.electricity_total_kWh;
  return {
    figure: of.id, title: of.title, value: stated, unit: 'kWh',
    formula: `electricity with film = Σ hours of run share × capacity × input factor ÷ COP; sensible load of the filmed dwelling, ${of.isDamper ? 'moisture following the shorter run, so that the room gets damper: shown, used for nothing' : 'moisture taken out as in the dwelling as found'}`,
    steps: [
      { label: 'sensible cooling', substituted: `${digits(load.run.cooling_kWh, 2)} kWh, bare ${digits(bare.run.cooling_kWh, 2)} kWh`, value: load.run.cooling_kWh, unit: 'kWh' },
      ...(latent_W === undefined ? [] : [{ label: 'moisture as found', substituted: `${digits(sum(latent_W) / 1000, 2)} kWh`, value: sum(latent_W) / 1000, unit: 'kWh' }]),
      { label: 'electricity', substituted: `Σ hours = ${digits(worked, 2)} kWh, bare ${digits(option.asFoundCooling_kWh, 2)} kWh: ${digits(option.asFoundCooling_kWh - worked, 2)} kWh saved`, value: worked, unit: 'kWh' },
    ],
    ...shared(line, at),
    compute: 'why' in cases || cases.length === 0 ? null : { kernel: 'cooling-plant', input: cases, ...ALL_HOURS },
    computeWhy: 'why' in cases ? cases.why : cases.length === 0 ? 'nothing is cooled' : null,
    worked: workedOut(stated, worked, CHANGED),
    see: [`cooling/${line.dwelling}/load-filmed`, `cooling/${line.dwelling}/electricity`, `line/${line.dwelling}/saving`],
  };
}

/** Loads and electricity of the dwelling of a line. */
export function coolingFigures(line: PlanLine): Figure[] {
  const figure = (name: string, title: string, receipt: (at: ReceiptAt, of: About) => Promise<Receipt>): Figure => {
    const about = { id: `cooling/${line.dwelling}/${name}`, title: `${title} of ${line.dwelling}` };
    return { ...about, receipt: (at) => receipt(at, about) };
  };
  return [
    figure('load-as-found', 'Cooling load of a year as found', (at, of) => loadReceipt(line, at, { ...of, state: 'as-found' })),
    figure('load-filmed', 'Cooling load of a year with its film', (at, of) => loadReceipt(line, at, { ...of, state: 'filmed' })),
    figure('electricity', 'Cooling electricity of a year as found', (at, of) => plantReceipt(line, at, { ...of, field: 'electricity' })),
    figure('electricity-filmed', 'Cooling electricity of a year with its film', (at, of) => filmedReceipt(line, at, { ...of, isDamper: false })),
    figure('electricity-damper', 'Cooling electricity of a year with its film, in a damper room,', (at, of) => filmedReceipt(line, at, { ...of, isDamper: true })),
    figure('peak', 'Largest cooling electricity of an hour as found', (at, of) => plantReceipt(line, at, { ...of, field: 'peak' })),
  ];
}
