import { join } from 'node:path';
import type { Portfolio } from '#calc';
import { openCatalogue } from '#catalogue';
import { portfolioOf, readInventory } from '#intake';
import { buildingWeather, type Plan, planPortfolio, type Receipt, receiptFigures, receiptOf, surveyAgain, workersHere } from '#planning';

const catalogue = openCatalogue();

/** A plan as it comes back from the store, and its figures opened. */
export interface OpenedPlan {
  readonly plan: Plan;
  readonly ask: (figure: string) => ReturnType<typeof receiptOf>;
  /** @throws Error for a figure the plan does not have */
  readonly open: (figure: string) => Promise<Receipt>;
  readonly all: () => Promise<readonly Receipt[]>;
}

/** Plans an inventory, changed as a test asks, and opens its figures from the survey it was planned with, or another one. */
export async function openedPlan(folder: string, change: (portfolio: Portfolio) => Portfolio = (p) => p, later: (portfolio: Portfolio) => Portfolio = (p) => p): Promise<OpenedPlan> {
  const portfolio = change(portfolioOf(await readInventory(join(process.cwd(), folder)), '2026-07-01'));
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  const job = { portfolio, catalogue, weather, id: 'P', revision: 1, parent: null, madeOn: '2026-07-01', program: 'test', inputHash: 'none', findings: [], outlook: { seed: 7, draws: 10, selections: 1 } };
  const plan = JSON.parse(JSON.stringify(await planPortfolio(job, workersHere))) as Plan;
  const survey = await surveyAgain({ ...job, portfolio: later(portfolio) }, { plan, work: workersHere, resolve: (file) => file });
  const ask = (figure: string): ReturnType<typeof receiptOf> => receiptOf(figure, { plan, catalogue, survey: () => Promise.resolve(survey) });
  const open = async (figure: string): Promise<Receipt> => {
    const found = await ask(figure);
    if ('nearest' in found) throw new Error(`no figure ${figure}`);
    return found;
  };
  const all = async (): Promise<Receipt[]> => {
    const receipts: Receipt[] = [];
    for (const figure of receiptFigures(plan)) receipts.push(await open(figure.id));
    return receipts;
  };
  return { plan, ask, open, all };
}
