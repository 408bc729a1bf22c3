import { billYear, payerShares, readTariff, splitCents, weightedPrice_cents_kWh, tariffClock } from '#calc';
import type { MeterResult } from '../plan/plan.js';
import { type Figure, part, type ReceiptAt } from './figure.js';
import { meterHours } from './meter-bill.js';
import { digits, dollars, percent } from './receipt-numbers.js';
import { type Receipt, type ReceiptCompute, type ReceiptPart, type ReceiptStep, workedOut } from './receipt.js';
import { dwellingRow } from './survey-rows.js';

type Asked = 'saving' | 'saving-owner' | 'saving-tenant' | 'price-saved' | 'price-average';

interface MeterFigure extends Pick<Figure, 'id' | 'title'> {
  readonly meter: string;
  readonly asked: Asked;
}

const FORMULA: Readonly<Record<Asked, string>> = {
  saving: 'saving of the meter = bill of the year as found − bill with all films of the plan together, both rounded month by month',
  'saving-owner': 'kept by the owner = saving × (vacancy + (1 − vacancy) × (late + (1 − late) × owner’s share)) in the first year after the work; late = part of the year in which the bill still follows the old use; cents by largest remainder',
  'saving-tenant': 'kept by the tenants = saving − what the owner keeps',
  'price-saved': 'price of a saved kWh = (bill as found − bill with the plan) ÷ (kWh as found − kWh with the plan), before rounding: it weighs the prices by when the film saves',
  'price-average': 'average price = bill of the year as found ÷ its kWh, before rounding',
};

const sum = (hours: Float64Array): number => hours.reduce((total, kWh) => total + kWh, 0);
const of = (bill: number, rest: string, times = 1): ReceiptPart => ({ pointer: `/${String(bill)}/${rest}`, times });
const CENTS = 'months/*/exact_cents';
const KWH = 'months/*/energy/*/kWh';

interface Worked {
  readonly value: number | string;
  readonly steps: ReceiptStep[];
  readonly compute: Pick<ReceiptCompute, 'result' | 'over' | 'words'> | null;
}

type Hours = NonNullable<Awaited<ReturnType<typeof meterHours>>>;

/** The saving and who keeps it. */
function savingOf(asked: Asked, { found, planned, payer }: { readonly found: Hours; readonly planned: Hours; readonly payer: Parameters<typeof payerShares>[0] }): Worked {
  const tariff = readTariff(found.tariff);
  const [before, after] = [billYear(tariff, found.use_kWh).total_cents, billYear(tariff, planned.use_kWh).total_cents];
  const saving = before - after;
  const shares = payerShares(payer, 1);
  const [owner = 0, tenant = 0] = splitCents(saving, [shares.owner, shares.tenant]);
  const first: ReceiptStep = { label: 'saving', substituted: `${dollars(before)} − ${dollars(after)} = ${dollars(saving)}`, value: saving, unit: 'cents' };
  if (asked === 'saving') return { value: saving, steps: [first], compute: { result: [of(0, 'total_cents'), of(1, 'total_cents', -1)], words: 'total_cents of the first bill less that of the second' } };
  const late = Math.min(1, payer.resetLag_yr);
  const kept: ReceiptStep = { label: 'owner', substituted: `${dollars(saving)} × (${percent(payer.vacancyShare)} + (1 − ${percent(payer.vacancyShare)}) × (${digits(late)} + (1 − ${digits(late)}) × ${percent(payer.ownerShare)})) = ${dollars(owner)}`, value: owner, unit: 'cents' };
  return { value: asked === 'saving-owner' ? owner : tenant, steps: [first, kept, { label: 'tenants', substituted: `${dollars(saving)} − ${dollars(owner)} = ${dollars(tenant)}`, value: tenant, unit: 'cents' }], compute: null };
}

/** What a kWh costs. */
function priceOf(asked: Asked, found: Hours, planned: Hours): Worked {
  const prices = weightedPrice_cents_kWh(tariffClock(readTariff(found.tariff)), { before_kWh: found.use_kWh, after_kWh: planned.use_kWh });
  const price = asked === 'price-saved' ? prices.saved_cents_kWh : prices.average_cents_kWh;
  if (typeof price !== 'number') return { value: `none: ${price.why}`, steps: [], compute: null };
  const [before, after] = [sum(found.use_kWh), sum(planned.use_kWh)];
  const kWh = asked === 'price-saved' ? before - after : before;
  const words = asked === 'price-saved' ? `${digits(before, 2)} − ${digits(after, 2)} kWh` : 'kWh as found';
  const both = asked === 'price-saved';
  return {
    value: price,
    steps: [{ label: both ? 'kWh saved' : 'kWh', substituted: `${words} = ${digits(kWh, 2)} kWh`, value: kWh, unit: 'kWh' }, { label: 'price', substituted: `${dollars(price * kWh)} ÷ ${digits(kWh, 2)} kWh = ${digits(price)} cents`, value: price, unit: 'cents/kWh' }],
    compute: { result: [of(0, CENTS), ...(both ? [of(1, CENTS, -1)] : [])], over: [of(0, KWH), ...(both ? [of(1, KWH, -1)] : [])], words: both ? 'exact_cents of the first bill’s months less those of the second, over the same difference of kWh' : 'exact_cents of the first bill’s months over their kWh' },
  };
}

/** As it stands in the plan. */
function statedOf({ togetherSaving_cents, prices }: MeterResult, asked: Asked): number | string {
  if (asked === 'saving') return togetherSaving_cents;
  if (asked === 'saving-owner') return prices!.owner_cents;
  if (asked === 'saving-tenant') return prices!.tenant_cents;
  return (asked === 'price-saved' ? prices!.saved_cents_kWh : prices!.average_cents_kWh) ?? `none: ${prices!.why ?? ''}`;
}

async function meterReceipt(figure: MeterFigure, at: ReceiptAt): Promise<Receipt> {
  const { plan } = at;
  const { asked } = figure;
  const meter = plan.meters.find((m) => m.meter === figure.meter)!;
  const survey = await at.survey();
  const [found, planned] = await Promise.all((['as-found', 'planned'] as const).map((state) => meterHours({ ...figure, state }, at)));
  const payer = survey.known.dwellings.find((d) => d.meter.id === figure.meter)?.meter.payerRule;
  const isPrice = asked.startsWith('price');
  const worked = found == null || planned == null || payer === undefined ? null : isPrice ? priceOf(asked, found, planned) : savingOf(asked, { found, planned, payer });
  const stated = statedOf(meter, asked);
  const sends = [found, planned].some((hours) => hours?.use_kWh.some((kWh) => kWh < 0) === true);
  const compute = worked?.compute == null || (isPrice && sends) ? null : { kernel: 'tariff-bill', input: [found!, planned!].map(({ tariff, use_kWh }) => ({ tariff, electricity_kWh: [...use_kWh] })), ...worked.compute };
  const dwellings = plan.lines.filter((l) => plan.uses.some((u) => u.meter === figure.meter && u.dwelling === l.dwelling));
  return {
    figure: figure.id, title: figure.title, value: stated, unit: typeof stated === 'string' ? '' : isPrice ? 'cents/kWh' : 'cents', formula: FORMULA[asked], steps: worked?.steps ?? [],
    rows: dwellings.flatMap((l) => dwellingRow(plan, l.dwelling, ['floor_area', 'occupants'])),
    assumptions: [{ name: 'tariff', value: meter.tariff, unit: '', source: 'tariffs.json', basis: 'given' }, { name: 'payer rule', value: meter.payerRule, unit: '', source: 'meters.csv', basis: 'given' }],
    compute,
    computeWhy: compute !== null ? null : worked === null ? 'the survey kept now does not hold this meter any more' : isPrice ? (sends ? 'electricity is sent out in some hours, which the kernel’s kWh do not tell' : 'nothing is saved or used') : 'a share to be taken by hand; the saving itself has a receipt with a kernel',
    worked: workedOut(stated, worked?.value ?? 'not worked', 'the survey was changed since the plan was made'),
    see: [`meter/${part(figure.meter)}/bill-as-found`, `meter/${part(figure.meter)}/bill-planned`, ...(asked === 'saving' ? [] : [`meter/${part(figure.meter)}/saving`])],
  };
}

const TITLES: Readonly<Record<Asked, string>> = { saving: 'Saving of a year', 'saving-owner': 'Kept by the owner in the first year', 'saving-tenant': 'Kept by the tenants in the first year', 'price-saved': 'Price of a saved kWh', 'price-average': 'Average price of a kWh' };

/** Saving of a meter with all films together, who keeps it, and what a kWh costs. */
export const meterSavings = (result: MeterResult): Figure[] =>
  (Object.keys(TITLES) as Asked[]).filter((asked) => asked === 'saving' || result.prices !== undefined).map((asked) => {
    const about = { id: `meter/${part(result.meter)}/${asked}`, title: `${TITLES[asked]}, meter ${result.meter}` };
    return { ...about, receipt: (at) => meterReceipt({ ...about, meter: result.meter, asked }, at) };
  });
