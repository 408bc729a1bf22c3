import type { PhasePrice } from '../choice/explanations.js';
import type { Plan } from '../plan/plan.js';
import { termsUsed } from './assumptions-of.js';
import { type Figure, part, type ReceiptAt } from './figure.js';
import { digits, dollars, percent } from './receipt-numbers.js';
import { type Receipt, type ReceiptStep, workedOut } from './receipt.js';

interface PriceFigure extends Pick<Figure, 'id' | 'title'> {
  readonly price: PhasePrice;
  readonly asked: 'next-dollar' | 'next-crew-hour';
}

const WORDS = {
  'next-dollar': 'value of the next dollar of the cap = multiplier of the cap in the certificate ÷ (1 + contingency): at this price no choice of the options passes the bound; 0 where the cap does not bind',
  'next-crew-hour': 'value of the next person-hour = multiplier of the minutes in the certificate × 60',
} as const;
const OPEN = 'the plan searched longer than the kernel does: it may end at other prices that prove nearly as much';

/** Phases as the question of the choice numbers them, which is not the order they are shown in. */
export const numberedPhases = (plan: Plan): readonly string[] => (plan.explanations?.prices ?? []).map((p) => p.phase);

function priceReceipt(of: PriceFigure, { plan }: ReceiptAt): Receipt {
  const { record } = plan.proof;
  const phase = numberedPhases(plan).indexOf(of.price.phase);
  const isDollar = of.asked === 'next-dollar';
  const stated = isDollar ? of.price.nextDollar : (of.price.nextCrewHour_cents ?? 0);
  const multipliers = record?.result.value === null ? undefined : record?.result.certificate.multipliers;
  const each = (isDollar ? multipliers?.cap[phase] : multipliers?.crewMinutes[phase]) ?? 0;
  const { contingencyShare } = plan.terms;
  const worked = isDollar ? each / (1 + contingencyShare) : each * 60;
  const step: ReceiptStep = isDollar
    ? { label: 'next dollar', substituted: `${digits(each, 6)} ÷ (1 + ${percent(contingencyShare)}) = ${digits(worked, 6)} of value for a dollar of the cap`, value: worked, unit: 'ratio' }
    : { label: 'next person-hour', substituted: `${digits(each, 4)} cents a minute × 60 = ${dollars(worked)}`, value: worked, unit: 'cents' };
  const isProved = plan.proof.status === 'optimal';
  const kernel = record === undefined ? null : { kernel: 'select', input: record.problem, result: [{ pointer: `/certificate/multipliers/${isDollar ? 'cap' : 'crewMinutes'}/${String(phase)}`, times: isDollar ? 1 / (1 + contingencyShare) : 60 }], words: isDollar ? `certificate.multipliers.cap[${String(phase)}] ÷ (1 + contingency)` : `certificate.multipliers.crewMinutes[${String(phase)}] × 60` };
  return {
    figure: of.id, title: of.title, value: stated, unit: isDollar ? 'ratio' : 'cents', formula: WORDS[of.asked], steps: multipliers === undefined ? [] : [step], rows: [], assumptions: isDollar ? termsUsed(plan.terms, ['contingencyShare']) : [],
    compute: isProved ? kernel : null,
    computeWhy: record === undefined ? 'the plan was kept before its question was recorded' : isProved ? null : OPEN,
    worked: workedOut(stated, worked, 'the plan was kept before its question was recorded'),
    see: ['plan/value', 'plan/bound', `phase/${part(of.price.phase)}/left`],
  };
}

/** What one more of each limit would bring. */
export const priceFigures = (plan: Plan): Figure[] =>
  (plan.explanations?.prices ?? []).flatMap((price) =>
    (['next-dollar', 'next-crew-hour'] as const).filter((asked) => asked === 'next-dollar' || price.nextCrewHour_cents !== null).map((asked): Figure => {
      const about = { id: `limit/${part(price.phase)}/${asked}`, title: `Value of the next ${asked === 'next-dollar' ? 'dollar' : 'person-hour'} of ${price.phase}` };
      return { ...about, receipt: (at) => priceReceipt({ ...about, price, asked }, at) };
    }),
  );
