import type { DynamicModule } from '@nestjs/common';
import { openStore, type StorePlace } from './open-store.js';
import { PortfolioStore } from './portfolio-store.js';

/**
 * The store for a Nest application: `imports: [StoreModule.forRoot({ database })]`, then inject `PortfolioStore`.
 * It carries no decorator, and only types come from the framework, so a command that needs the store alone does not load it.
 */
export class StoreModule {
  static forRoot(place: StorePlace): DynamicModule {
    return {
      module: StoreModule,
      global: true,
      providers: [{ provide: PortfolioStore, useFactory: () => openStore(place) }],
      exports: [PortfolioStore],
    };
  }
}
