import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { randomUUID } from 'node:crypto';
import type { IntakeReport } from '#intake';
import type { CutRule, LotRule, OutlookOrder, Plan, PlanAsk } from '#planning';
import type { PortfolioStore } from '#store';
import { betterText } from './better-text.js';
import { progressOn } from './said.js';
import { Unusable } from './unusable.js';

/** Where commands keep the portfolio. */
export const DATABASE = 'rollout.sqlite';

/** A path that is mistyped must not become an empty database. @throws Unusable where no file is there */
function mustBeThere(database: string): void {
  if (database === ':memory:' || /^postgres(ql)?:\/\//.test(database) || existsSync(database)) return;
  throw new Unusable(`There is no database at ${database}; import first: rollout import <folder> --database ${database}`);
}

/** Opens the store for one piece of work. Only a command that takes a survey in makes a file where none is. */
export async function withStore<T>(database: string, work: (store: PortfolioStore) => Promise<T>, of: { readonly mayCreate: boolean } = { mayCreate: false }): Promise<T> {
  if (!of.mayCreate) mustBeThere(database);
  const { openStore } = await import('#store');
  const store = await openStore({ database });
  try {
    return await work(store);
  } finally {
    await store.close();
  }
}

export async function takeIn(store: PortfolioStore, folder: string, dry: boolean): Promise<IntakeReport> {
  const { IntakeService } = await import('#intake');
  const service = new IntakeService(store);
  return dry ? service.check(folder, { today: new Date().toISOString().slice(0, 10) }) : service.import(folder);
}

/** Makes a plan of what the store holds, on all processors, and keeps it. */
export async function makePlan(store: PortfolioStore, of: { readonly ask: PlanAsk; readonly folder: string; readonly timeLimit_s: number; readonly quiet: boolean; readonly outlook?: OutlookOrder; readonly aim?: Plan['aim']; readonly prove_s?: number; readonly replan?: string; readonly cutRule?: CutRule; readonly lotRule?: LotRule }): Promise<Plan> {
  const [{ PlanningService }, { workerPool }] = await Promise.all([import('#planning'), import('#workers')]);
  const pool = workerPool();
  try {
    return await new PlanningService(pool, store).make({
      ask: of.ask,
      id: randomUUID().slice(0, 8),
      made: new Date().toISOString(),
      resolve: (file) => resolve(of.folder, file),
      timeLimit_s: of.timeLimit_s,
      ...(of.outlook === undefined ? {} : { outlook: of.outlook }),
      ...(of.aim === undefined ? {} : { aim: of.aim }),
      ...(of.replan === undefined ? {} : { replan: of.replan }),
      ...(of.cutRule === undefined ? {} : { cutRule: of.cutRule }),
      ...(of.lotRule === undefined ? {} : { lotRule: of.lotRule }),
      progress: progressOn(process.stderr, of.quiet),
      ...(of.prove_s === undefined ? {} : { prove_s: of.prove_s, better: (found) => void (of.quiet || process.stderr.write(`${betterText(found)}\n`)) }),
    });
  } finally {
    await pool.end();
  }
}

/** The newest kept plan, or the one named. */
export async function keptPlan(store: PortfolioStore, id: string | undefined): Promise<Plan> {
  const wanted = id ?? (await store.plans())[0]?.id;
  if (wanted === undefined) throw new Error('No plan is kept yet; `rollout plan` makes one.');
  const kept = await store.loadPlan(wanted);
  if (kept === null) throw new Unusable(`There is no plan ${wanted}.`);
  return kept.body as Plan;
}

/**
 * Caps of the command line: `OWNER1/2026-27=14000` for a phase, `14000` alone for one cap in each owner's first year.
 *
 * @throws Unusable for anything else
 */
export function asked(caps: readonly string[], view: string | undefined): PlanAsk {
  if (view !== undefined && view !== 'whole' && view !== 'owner') throw new Unusable(`--view must be whole or owner, got ${view}`);
  const money = (text: string): number => {
    const dollars = Number(text.replace(/[$,]/g, ''));
    if (!(dollars >= 0)) throw new Unusable(`--cap must be dollars, got ${text}`);
    return Math.round(dollars * 100);
  };
  const byPhase = caps.filter((c) => c.includes('=')).map((c) => ({ phase: c.slice(0, c.lastIndexOf('=')), cap_cents: money(c.slice(c.lastIndexOf('=') + 1)) }));
  const alone = caps.find((c) => !c.includes('='));
  return { ...(view === undefined ? {} : { view }), ...(byPhase.length === 0 ? {} : { caps: byPhase }), ...(alone === undefined ? {} : { oneCap_cents: money(alone) }) };
}

/** Selections made again under draws, for how often a dwelling is in the plan. */
const SELECTIONS = 200;

/** Draws of the command line; none for 0. @throws Unusable for anything that is not a whole number */
export function askedOutlook(draws: string, seed: string): { readonly outlook?: OutlookOrder } {
  const [count, start] = [Number(draws), Number(seed)];
  if (!Number.isInteger(count) || count < 0 || count === 1) throw new Unusable(`--draws must be 0 or a whole number from 2, got ${draws}`);
  if (!Number.isInteger(start)) throw new Unusable(`--seed must be a whole number, got ${seed}`);
  return count === 0 ? {} : { outlook: { seed: start, draws: count, selections: Math.min(SELECTIONS, count) } };
}

/** What the choice aims at, as asked. @throws Unusable for any other word */
export function askedAim(aim: string): Plan['aim'] {
  if (aim !== 'middle' && aim !== 'nine-in-ten') throw new Unusable(`--aim must be middle or nine-in-ten, got ${aim}`);
  return aim;
}
