import type { Provider } from '@nestjs/common';
import { Test } from '@nestjs/testing';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { App } from 'supertest/types.js';
import type { Plan } from '#planning';
import { PortfolioStore, contentHash } from '#store';
import { AppModule } from '../../apps/server/src/app.module.js';
import { setUpHttp } from '../../apps/server/src/http-setup.js';
import { PlanMaker, WorkbookMaker, type PlanRequest, type Say } from '../../apps/server/src/work/plan-maker.js';

/** The server as the program sets it up, without a port. */
export interface ServerForTest {
  readonly http: App;
  readonly store: PortfolioStore;
  readonly maker: PlanMaker;
  readonly close: () => Promise<void>;
}

const rankLine = (rank: number): Plan['rankedDwellings'][number] => ({
  rank,
  band: 'A',
  dwelling: `EC/${String(rank).padStart(3, '0')}`,
  building: 'EC',
  option: `EC/${rank}|270|A`,
  perDollar: 1 / (rank + 3),
  perDollarLow: 1 / (rank + 4),
  perDollarHigh: 1 / (rank + 2),
  yearlyCooling_cents: 10_000,
  cost_cents: 10_000 * (rank + 3),
  simplePayback_yr: rank + 3,
  paybackWhy: null,
  reason: 'made up for this test',
  inPlan: 'OWNER1/2027',
  differs: null,
});

/** Stands for the real planning where a test is about the way in and out: a plan of five ranked dwellings, made up. */
export class MadeUpPlans extends PlanMaker {
  fails: string | null = null;
  /** Goes on until it is stopped. */
  goesOn = false;

  constructor(private readonly store: PortfolioStore) {
    super();
  }

  override async make(request: PlanRequest, say: Say, stop: AbortSignal): Promise<string> {
    await say(0.5, 'choosing');
    if (this.goesOn) await new Promise((_, end) => stop.addEventListener('abort', () => end(new Error('a thread was ended'))));
    if (this.fails !== null) throw new Error(this.fails);
    const body = { name: request.name ?? 'Plan', rankedDwellings: [1, 2, 3, 4, 5].map(rankLine), rankedFacades: [] };
    const id = `P-${(await this.store.plans()).length + 1}`;
    await this.store.savePlan({ id, title: body.name, parent: null, made: `2026-06-0${id.slice(2)}T08:00:00Z`, programVersion: '0', inputsHash: contentHash(request), signed: false, body });
    return id;
  }
}

class MadeUpWorkbooks extends WorkbookMaker {
  override workbook(plan: Plan): Promise<Uint8Array> {
    return Promise.resolve(new TextEncoder().encode(`PK ${plan.name}`));
  }
}

/** Providers of made-up plans and workbooks. */
export const madeUpMakers: readonly Provider[] = [
  { provide: PlanMaker, useFactory: (store: PortfolioStore) => new MadeUpPlans(store), inject: [PortfolioStore] },
  { provide: WorkbookMaker, useClass: MadeUpWorkbooks },
];

/** Starts the server on an empty database in memory. */
export async function startServer(makers: readonly Provider[]): Promise<ServerForTest> {
  const module = await Test.createTestingModule({ imports: [AppModule.forRoot({ database: ':memory:', makers })] }).compile();
  const app = module.createNestApplication<NestExpressApplication>({ logger: false });
  setUpHttp(app);
  await app.init();
  return { http: app.getHttpServer() as App, store: app.get(PortfolioStore), maker: app.get(PlanMaker), close: () => app.close() };
}
