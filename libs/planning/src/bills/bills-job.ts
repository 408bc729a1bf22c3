import { openCatalogue } from '#catalogue';
import type { Portfolio } from '#calc';
import { buildingWeather } from '../job/building-weather.js';
import type { BillsJob } from './fit-bills.js';
import { temperaturesBeside } from './temperature-file.js';

/** A portfolio with its weather, and the daily temperatures that lie beside its weather files. */
export function billsJobOf(portfolio: Portfolio, resolve: (file: string) => string): BillsJob {
  const catalogue = openCatalogue();
  return { portfolio, catalogue, weather: buildingWeather(portfolio.buildings, catalogue, resolve).weather, temperatures: temperaturesBeside(resolve) };
}
