import {
  billOfMonths, depreciation, isFigure, lifeCycle, modifiedRateOfReturn, presentValue, projectLifeCycle, rateOfReturn, readTariff, singlePresentValue, stepsCost_cents, uniformPresentValue, type TariffText,
} from '#calc';
import {
  factorsAtThreePercent, filmProjects, midMonthDepreciation, modifiedRates, presentValueFactors, presentValuesPrinted, ratesOfReturnPrinted, stormWindows, stormWindowsDerived,
} from '../finance.js';
import { demandSteps, energyBlocks, marginalSaving, type Steps } from '../tariff-steps.js';
import type { ReferenceTable } from '../reference-table.js';
import { byName, check, type Check } from './check.js';

/** A figure, or null where there is none. */
const figure = (value: number | { readonly why: string }): number | null => (isFigure(value) ? value : null);
const rate = (wanted: { readonly rate: number; readonly within: number }, ours: number | { readonly why: string }, times = 1): ReturnType<typeof byName> => {
  const value = figure(ours);
  return [{ what: 'rate', expected: wanted.rate, ours: value === null ? null : value * times, limit: wanted.within }];
};

type StormGiven = (typeof stormWindows)['rows'][number]['given'];
const energy = ({ factors }: StormGiven, yearly: readonly number[]): number => yearly.reduce((sum, cost, i) => sum + cost * factors[i]!, 0);
/** The same saving as level flows of equal worth: net savings, ratio and adjusted rate follow from it. */
function storm(given: StormGiven): ReturnType<typeof lifeCycle> {
  const yearly = energy(given, given.yearly.base.map((cost, i) => cost - given.yearly.alternative[i]!)) / uniformPresentValue(given.rate, given.years);
  return lifeCycle([-given.cost, ...Array<number>(given.years).fill(yearly)], { basis: 'real', discountRate: given.rate });
}
const toldStorm = ({ cost, years, rate: discount }: StormGiven): string => `cost ${cost}, ${years} years at ${discount}`;

export const finance: readonly Check[] = [
  check({
    title: 'Present-value factors as printed',
    table: presentValueFactors,
    compare: ({ given: { kind, rate: discount, years, escalation }, expect: printed }) => [
      { what: 'factor', expected: printed.factor, ours: kind === 'SPV' ? singlePresentValue(discount, years) : uniformPresentValue(discount, years, escalation), limit: 0.5 * 10 ** -printed.digits },
    ],
  }),
  check({
    title: 'Present-value factors at 3 % in full digits',
    table: factorsAtThreePercent,
    compare: ({ given: { rate: discount, years }, expect: wanted }) => byName(wanted, { single: singlePresentValue(discount, years), uniform: uniformPresentValue(discount, years) }),
  }),
  check({ title: 'Present value of flows as printed', table: presentValuesPrinted, compare: ({ given, expect: wanted }) => byName(wanted, { value: presentValue(given.flows, given.rate) }) }),
  check({
    title: 'Storm windows of the handbook',
    table: stormWindows,
    told: toldStorm,
    compare: ({ given, expect: printed }) =>
      byName(printed, { lifeCycleBase: energy(given, given.yearly.base), lifeCycleAlternative: given.cost + energy(given, given.yearly.alternative), netSavings: storm(given).npv_cents }),
  }),
  check({
    title: 'Storm windows of the handbook, ratio and rate from its figures',
    table: stormWindowsDerived,
    told: toldStorm,
    compare: ({ given, expect: derived }) => {
      const { sir, airr } = storm(given);
      return byName(derived, { sir: figure(sir), airr: figure(airr) });
    },
  }),
  check({
    title: 'Internal rates of return',
    table: ratesOfReturnPrinted,
    told: ({ flows, perYear }) => `${flows.length} flows, ${perYear} a year, first ${flows.slice(0, 3).join(', ')}`,
    compare: ({ given, expect: printed }) => rate(printed, rateOfReturn(given.flows), given.perYear),
  }),
  check({ title: 'Modified rates of return', table: modifiedRates, compare: ({ given, expect: printed }) => rate(printed, modifiedRateOfReturn(given.flows, given)) }),
  check({
    title: 'Three films as projects',
    table: filmProjects,
    compare: ({ given, expect: { flows, ...printed } }) => {
      const ours = projectLifeCycle(given.project, { basis: 'real', discountRate: given.discountRate });
      return [
        ...flows.map((expected, i) => ({ what: `flow of year ${i + 1}`, expected, ours: ours.flows_cents[i + 1] ?? NaN })),
        ...byName(printed, {
          npv: ours.npv_cents, sir: figure(ours.sir), airr: figure(ours.airr), irr: figure(ours.irr),
          simplePayback: figure(ours.simplePayback_years), discountedPayback: figure(ours.discountedPayback_years),
        }),
      ];
    },
  }),
  check({
    title: 'Mid-month write-off over 27.5 years, percent and cents',
    table: midMonthDepreciation,
    compare: ({ given, expect: percent }) => {
      const years = depreciation(100_000, { method: 'mid-month-27.5', monthInService: given.monthInService });
      return percent.flatMap((expected, i) => [
        { what: `year ${i + 1}, %`, expected, ours: (years[i]?.share ?? NaN) * 100 },
        { what: `year ${i + 1}, cents of 1000 dollars`, expected: Math.round(expected * 1000), ours: years[i]?.cents ?? NaN, limit: 0 },
      ]);
    },
  }),
];

const everyHour = (period: number): number[][] => Array.from({ length: 12 }, () => Array<number>(24).fill(period));
export const flatTariff = (tiers: readonly object[], more: object = {}): TariffText =>
  ({ label: 'test', clock: 'standard', energyratestructure: [tiers], energyweekdayschedule: everyHour(0), energyweekendschedule: everyHour(0), ...more }) as TariffText;
const monthly_cents = (tiers: Steps['tiers'], kWh: number): number => billOfMonths(readTariff(flatTariff(tiers)), { use_kWh: [...Array<number>(11).fill(0), kWh] }).total_cents;

const bySteps = (title: string, table: ReferenceTable<Steps, { readonly dollars: number }>): Check =>
  check({
    title,
    table,
    compare: ({ given, expect: { dollars } }) => {
      const [steps] = readTariff(flatTariff(given.tiers)).energy;
      return [{ what: 'dollars', expected: dollars, ours: steps === undefined ? NaN : stepsCost_cents(steps, given.amount, 30) / 100 }];
    },
  });

export const tariff: readonly Check[] = [
  bySteps('Energy by blocks', energyBlocks),
  bySteps('Demand by steps', demandSteps),
  check({
    title: 'Energy by blocks on a whole bill, to the cent',
    table: energyBlocks,
    compare: ({ given, expect: { dollars } }) => [{ what: 'cents of a month', expected: Math.round(dollars * 100), ours: monthly_cents(given.tiers, given.amount), limit: 0 }],
  }),
  check({
    title: 'What is saved is billed at the blocks it leaves, to the cent',
    table: marginalSaving,
    compare: ({ given, expect: { dollars } }) => [{ what: 'cents', expected: dollars * 100, ours: monthly_cents(given.tiers, given.before) - monthly_cents(given.tiers, given.after), limit: 0 }],
  }),
];
