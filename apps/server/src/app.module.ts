import { Module, type DynamicModule, type Provider } from '@nestjs/common';
import { IntakeModule } from '#intake';
import { StoreModule, type StorePlace } from '#store';
import { ApiDescription, ApiDescriptionController } from './api-description.controller.js';
import { CalendarController } from './crew/calendar.controller.js';
import { BillsController } from './bills/bills.controller.js';
import { Edge } from './edge.js';
import { ExplainController } from './explain/explain.controller.js';
import { HealthController } from './health/health.controller.js';
import { ImportDesk } from './imports/import-desk.js';
import { SentRecords } from './imports/sent-records.js';
import { ImportsController } from './imports/imports.controller.js';
import { JobRunner } from './jobs/job-runner.js';
import { JobsController } from './jobs/jobs.controller.js';
import { LedgerController } from './ledger/ledger.controller.js';
import { NowController } from './now/now.controller.js';
import { ShelfNow } from './now/shelf-now.js';
import { PapersController } from './papers/papers.controller.js';
import { KeptPlans } from './plans/kept-plans.js';
import { PlanOrders } from './plans/plan-orders.js';
import { PlansController } from './plans/plans.controller.js';
import { PortfolioController } from './portfolio/portfolio.controller.js';
import { ProofController } from './proof/proof.controller.js';
import { RanksController } from './ranks/ranks.controller.js';
import { OpenReceipts } from './receipts/open-receipts.js';
import { ReceiptsController } from './receipts/receipts.controller.js';
import { RecordsController } from './records/records.controller.js';
import { RelayController } from './relay/relay.controller.js';
import { ShadowLineController } from './shadow-line/shadow-line.controller.js';
import { FormsController } from './start-page/forms.controller.js';
import { NewestPlan } from './start-page/newest-plan.js';
import { ReceiptPagesController } from './start-page/receipt-pages.controller.js';
import { StartPageController } from './start-page/start-page.controller.js';
import { VerificationController } from './verification/verification.controller.js';
import { RequestPool } from './work/request-pool.js';

/** What the server is put together from. */
export interface ServerParts extends StorePlace {
  /** Providers of `PlanMaker` and `WorkbookMaker`. */
  readonly makers: readonly Provider[];
}

@Module({})
export class AppModule {
  static forRoot({ database, makers }: ServerParts): DynamicModule {
    return {
      module: AppModule,
      imports: [StoreModule.forRoot({ database }), IntakeModule],
      controllers: [
        ApiDescriptionController, StartPageController, FormsController, ReceiptPagesController,
        PortfolioController, ImportsController, BillsController, LedgerController, RanksController, PlansController, PapersController,
        ExplainController, ReceiptsController, ProofController, CalendarController, RecordsController, RelayController, NowController,
        ShadowLineController, JobsController, VerificationController, HealthController,
      ],
      providers: [Edge, ApiDescription, ImportDesk, SentRecords, JobRunner, KeptPlans, NewestPlan, OpenReceipts, PlanOrders, RequestPool, ShelfNow, ...makers],
    };
  }
}
