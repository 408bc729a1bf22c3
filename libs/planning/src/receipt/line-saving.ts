import type { TariffText } from '#calc';
import type { LineUse } from '../review/line-uses.js';
import type { Plan, PlanLine } from '../plan/plan.js';
import { firstYear_cents } from '../review/reasons.js';
import { filledFor } from './assumptions-of.js';
import type { Figure, ReceiptAt } from './figure.js';
import { lineHours } from './line-hours.js';
import { billOfUse, exactYear_cents, monthlyInput, monthUse_kWh } from './monthly-bill.js';
import { digits, dollars } from './receipt-numbers.js';
import { type Receipt, type ReceiptCompute, type ReceiptPart, type ReceiptStep, workedOut } from './receipt.js';
import { dwellingRow, windowRows } from './survey-rows.js';

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

interface Billed {
  readonly use: LineUse;
  readonly tariff: TariffText;
  /** Share of the modelled saving that is counted. */
  readonly counted: number;
}

function billedOf(plan: Plan, line: PlanLine): Billed | null {
  const use = plan.uses.find((u) => u.dwelling === line.dwelling);
  const tariff = plan.tariffs.find((t) => t.label === use?.tariff);
  return use === undefined || tariff === undefined ? null : { use, tariff, counted: line.option.counted ?? 1 };
}

/** Two bills month by month, their difference, the gas that the film adds, and the share that is counted. */
function stepsOf({ use, tariff, counted }: Billed): { readonly steps: ReceiptStep[]; readonly value: number; readonly gas: number } {
  const span = use.spans[0]!;
  const [found, planned] = [billOfUse(tariff, span.asFound), billOfUse(tariff, span.planned)];
  const months = found.months.map((month, m): ReceiptStep => {
    const [before, after] = [month.exact_cents, planned.months[m]!.exact_cents];
    return { label: MONTHS[m]!, substituted: `bill of ${digits(monthUse_kWh(span.asFound[m]!), 2)} kWh ${dollars(before)} − bill of ${digits(monthUse_kWh(span.planned[m]!), 2)} kWh ${dollars(after)} = ${dollars(before - after)}`, value: before - after, unit: 'cents' };
  });
  const bills = exactYear_cents(found) - exactYear_cents(planned);
  const gas = span.addedGas_kWh * use.gas_cents_kWh;
  const value = (bills - gas) * counted;
  const rest: ReceiptStep[] = [
    { label: 'two years of bills', substituted: `${dollars(exactYear_cents(found))} − ${dollars(exactYear_cents(planned))} = ${dollars(bills)}`, value: bills, unit: 'cents' },
    ...(gas === 0 ? [] : [{ label: 'gas the film adds', substituted: `${digits(span.addedGas_kWh, 2)} kWh × ${dollars(use.gas_cents_kWh)} = ${dollars(gas)}`, value: gas, unit: 'cents' }]),
    ...(counted === 1 ? [] : [{ label: 'counted as found in bills', substituted: `(${dollars(bills)} − ${dollars(gas)}) × ${digits(counted)} = ${dollars(value)}`, value, unit: 'cents' }]),
  ];
  return { steps: [...months, ...rest], value, gas };
}

const MONTHS_OF = (bill: number, times: number): ReceiptPart => ({ pointer: `/${String(bill)}/months/*/exact_cents`, times });

/** Both bills by `tariff-bill`: from months where they decide, else from hours of the survey. */
async function computeOf(line: PlanLine, billed: Billed & { readonly gas: number }, at: ReceiptAt): Promise<{ readonly compute: ReceiptCompute | null; readonly why: string | null }> {
  const { use, tariff, counted, gas } = billed;
  const span = use.spans[0]!;
  const rest = { kernel: 'tariff-bill', result: [MONTHS_OF(0, counted), MONTHS_OF(1, -counted)], ...(gas === 0 ? {} : { plus: -gas * counted }), words: `exact_cents of the twelve months of the first bill less those of the second${gas === 0 ? '' : ', less the gas'}${counted === 1 ? '' : ', times the share counted'}` };
  const [found, planned] = [monthlyInput(tariff, span.asFound), monthlyInput(tariff, span.planned)];
  if (!('why' in found) && !('why' in planned)) return { compute: { ...rest, input: [found, planned] }, why: 'from monthly use: this tariff asks for no hours' };
  const hours = await lineHours(line, use, await at.survey());
  if ('why' in hours) return { compute: null, why: hours.why };
  return { compute: { ...rest, input: [hours.asFound_kWh, hours.planned_kWh].map((kWh) => ({ tariff, electricity_kWh: [...kWh] })) }, why: 'from 8760 hours worked again on the survey: this tariff has prices by the hour, or demand' };
}

async function savingReceipt(line: PlanLine, at: ReceiptAt, of: Pick<Figure, 'id' | 'title'>): Promise<Receipt> {
  const { plan } = at;
  const stated = firstYear_cents(line.option);
  const billed = billedOf(plan, line);
  const worked = billed === null ? null : stepsOf(billed);
  const made = billed === null || worked === null ? null : await computeOf(line, { ...billed, gas: worked.gas }, at);
  return {
    figure: of.id,
    title: of.title,
    value: stated,
    unit: 'cents',
    formula: 'first-year saving = Σ months (bill of the meter as found − bill with the film of this dwelling alone) − gas for added heating; a month is billed before rounding',
    steps: worked?.steps ?? [],
    rows: [...windowRows(line.windows, ['facade', 'width', 'height', 'glazing']), ...dwellingRow(plan, line.dwelling, ['floor_area', 'cooling_set_point', 'cooling_kind', 'cooling_efficiency', 'occupants'])],
    assumptions: filledFor(plan, line.building, (field) => /base load|set point|efficiency|occupants|air change/.test(field)),
    compute: made?.compute ?? null,
    computeWhy: made === null ? 'the plan was kept before monthly use was recorded' : made.why,
    worked: workedOut(stated, worked?.value ?? 'not worked', 'the plan keeps no use of this line to bill again'),
    see: [`cooling/${line.dwelling}/load-as-found`, `cooling/${line.dwelling}/load-filmed`],
  };
}

/** First-year saving of a line, net of added heating, all payers. */
export function lineSaving(line: PlanLine): Figure {
  const about = { id: `line/${line.dwelling}/saving`, title: `First-year saving of ${line.dwelling}` };
  return { ...about, receipt: (at) => savingReceipt(line, at, about) };
}
