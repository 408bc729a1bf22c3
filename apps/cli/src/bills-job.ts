import { resolve } from 'node:path';
import type { BillsJob } from '#planning';
import type { PortfolioStore } from '#store';

/** The kept portfolio with its weather, and the daily temperatures that lie in the folder. */
export async function billsJob(store: PortfolioStore, folder: string): Promise<BillsJob> {
  const { billsJobOf } = await import('#planning');
  return billsJobOf(await store.load(), (file) => resolve(folder, file));
}
