import { resolve } from 'node:path';
import type { BillsJob } from '#planning';
import type { PortfolioStore } from '#store';

/** The kept portfolio with its weather, and the daily temperatures that lie in the folder. */
export async function billsJob(store: PortfolioStore, folder: string): Promise<BillsJob> {
  const [{ openCatalogue }, { buildingWeather, temperaturesBeside }] = await Promise.all([import('#catalogue'), import('#planning')]);
  const catalogue = openCatalogue();
  const portfolio = await store.load();
  const at = (file: string): string => resolve(folder, file);
  return { portfolio, catalogue, weather: buildingWeather(portfolio.buildings, catalogue, at).weather, temperatures: temperaturesBeside(at) };
}
