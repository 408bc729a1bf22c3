import { basename, join } from 'node:path';
import { Injectable, type OnModuleDestroy, Optional } from '@nestjs/common';
import { PlanningService } from '#planning';
import { PortfolioStore } from '#store';
import { workerPool } from '#workers';
import { WeatherPlace } from '../verification/weather-place.js';

/** Where a weather file named in the survey lies on this machine. */
export type Resolve = (file: string) => string;

/** Heavy work a request waits for: one at a time, each on threads of its own, so that many requests do not start many pools. */
@Injectable()
export class RequestPool implements OnModuleDestroy {
  #last: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly store: PortfolioStore,
    @Optional() private readonly place?: WeatherPlace,
  ) {}

  run<T>(work: (planning: PlanningService, resolve: Resolve) => Promise<T>): Promise<T> {
    const done = this.#last.then(async () => {
      const pool = workerPool();
      try {
        // Only the name of a weather file counts: a survey must not point at other files of this machine.
        return await work(new PlanningService(pool, this.store), (file) => join(this.place?.folder ?? '.', basename(file)));
      } finally {
        await pool.end();
      }
    });
    // The one who asked hears of a failure; the next in line only waits for the end.
    this.#last = done.catch(() => undefined);
    return done;
  }

  /** Waits for the work under way before the store is closed. */
  async onModuleDestroy(): Promise<void> {
    await this.#last;
  }
}
