import { defaultsOf, type PlanJob } from '../job/plan-job.js';
import { type MeterBills, meterBills } from './meter-bills.js';
import { meterFit, type MeterFit } from './meter-fit.js';

export type { MeterFit } from './meter-fit.js';

/** What looking at bills needs of a job. */
export type BillsJob = Pick<PlanJob, 'portfolio' | 'weather' | 'temperatures' | 'catalogue'>;

/** Bills of the portfolio joined to weather. */
export function billsOf(job: BillsJob): MeterBills[] {
  return meterBills(job.portfolio, { weather: job.weather, temperatures: job.temperatures ?? null, typicalWeatherError: defaultsOf(job.catalogue)<number>('bills.typicalWeatherError').value });
}

/** Base load, cooling and heating of every meter with bills, from before any film. */
export function fitBills(job: BillsJob): MeterFit[] {
  return billsOf(job).map((bills) => meterFit(bills, job.weather.get(bills.building)!));
}
