import { billYear, dollarsText, readTariff } from '#calc';
import { meterLoad_kWh } from '../dwelling/dwelling-options.js';
import { setOfOption } from '../options/valued-options.js';
import type { MeterResult } from '../plan/plan.js';
import type { Figure, ReceiptAt } from './figure.js';
import { part } from './figure.js';
import { digits } from './receipt-numbers.js';
import { type Receipt, type ReceiptStep, workedOut } from './receipt.js';
import { dwellingRow } from './survey-rows.js';

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/** Which hours of a meter. */
export interface BillFigure extends Pick<Figure, 'id' | 'title'> {
  readonly meter: string;
  readonly state: 'as-found' | 'planned';
}

/** Hourly use of a meter, all its dwellings together. */
export async function meterHours(of: BillFigure, at: ReceiptAt): Promise<{ readonly use_kWh: Float64Array; readonly tariff: Parameters<typeof readTariff>[0] } | null> {
  const survey = await at.survey();
  const tasks = await survey.tasksOn(of.meter, 'as found');
  if (tasks.length === 0) return null;
  const lines = new Map(at.plan.lines.map((l) => [l.dwelling, l]));
  const use_kWh = new Float64Array(8760);
  for (const task of tasks) {
    const line = lines.get(task.dwelling.id);
    const set = of.state === 'planned' && line !== undefined ? setOfOption(line.option, survey.choices) : null;
    const own = meterLoad_kWh(task, survey.bench, set);
    for (let h = 0; h < 8760; h++) use_kWh[h] = use_kWh[h]! + own[h]!;
  }
  return { use_kWh, tariff: tasks[0]!.dwelling.meter.tariff };
}

async function billReceipt(of: BillFigure, at: ReceiptAt): Promise<Receipt> {
  const { plan } = at;
  const meter = plan.meters.find((m) => m.meter === of.meter)!;
  const pick = (m: MeterResult['months'][number]): { readonly cents: number; readonly kWh: number } => (of.state === 'as-found' ? { cents: m.asFound_cents, kWh: m.asFound_kWh } : { cents: m.planned_cents, kWh: m.planned_kWh });
  const steps = meter.months.map((m): ReceiptStep => ({ label: MONTHS[m.month - 1] ?? String(m.month), substituted: `${digits(pick(m).kWh, 2)} kWh: ${dollarsText(pick(m).cents)}`, value: pick(m).cents, unit: 'cents' }));
  const stated = steps.reduce((sum, s) => sum + s.value, 0);
  const hours = await meterHours(of, at);
  const worked = hours === null ? null : billYear(readTariff(hours.tariff), hours.use_kWh).total_cents;
  const dwellings = plan.lines.filter((l) => plan.uses.some((u) => u.meter === of.meter && u.dwelling === l.dwelling));
  return {
    figure: of.id,
    title: of.title,
    value: stated,
    unit: 'cents',
    formula: 'bill of a year = Σ months of max(minimum, energy by period and tier + demand + fixed), each month rounded to the cent; hourly use = base load + cooling + electric heating of all dwellings on the meter',
    steps,
    rows: dwellings.flatMap((l) => dwellingRow(plan, l.dwelling, ['floor_area', 'occupants'])),
    assumptions: [{ name: 'tariff', value: meter.tariff, unit: '', source: 'tariffs.json', basis: 'given' }],
    compute: hours === null ? null : { kernel: 'tariff-bill', input: { tariff: hours.tariff, electricity_kWh: [...hours.use_kWh] }, result: [{ pointer: '/total_cents', times: 1 }], words: 'total_cents' },
    computeWhy: hours === null ? 'the survey kept now does not hold this meter any more' : null,
    worked: workedOut(stated, worked ?? 'not worked', 'the survey was changed since the plan was made'),
    see: dwellings.map((l) => `line/${l.dwelling}/saving`),
  };
}

/** Bills of a meter, present plant, first year. */
export const meterFigures = ({ meter }: MeterResult): Figure[] =>
  (['as-found', 'planned'] as const).map((state) => {
    const about = { id: `meter/${part(meter)}/bill-${state}`, title: `Bill of meter ${meter} ${state === 'as-found' ? 'as found' : 'with the plan'}` };
    return { ...about, receipt: (at) => billReceipt({ ...about, meter, state }, at) };
  });
