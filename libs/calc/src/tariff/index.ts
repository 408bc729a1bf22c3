export type { DaylightDates, FlatDemand, Netting, PeriodDemand, PeriodTable, PriceStep, Tariff, TariffFinding, TariffTime } from './tariff.js';
export { readTariff } from './read-tariff.js';
export { tariffDateFindings } from './tariff-dates.js';
export { tariffClock, type TariffClock } from './tariff-clock.js';
export { stepsCost_cents, stepShares, type StepShare } from './steps-cost.js';
export { billOfMonths, billYear, type MonthlyUse } from './bill-year.js';
export { billOfSums } from './bill.js'; // a year's bills from sums kept with a plan
export type { DemandLine, EnergyLine, ExportLine, MonthBill, TariffBill } from './bill.js';
export { isBilledBySums, partSums } from './part-sums.js';
export { partsCost_cents, yearCost_cents } from './year-cost.js';
export { weightedPrice_cents_kWh, type WeightedPrice } from './weighted-price.js';
export { monthSums, type MonthSums } from './month-sums.js'; // what a bill hangs on, by month
