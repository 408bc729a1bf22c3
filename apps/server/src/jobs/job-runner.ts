import { Injectable, Logger, type OnApplicationBootstrap, type OnModuleDestroy } from '@nestjs/common';
import { PortfolioStore, type Job } from '#store';
import { Edge } from '../edge.js';
import type { Say } from '../work/plan-maker.js';

/** Long work: gives plain JSON, says how far it is. */
export type Work = (say: Say) => Promise<unknown>;

/** Runs long work one at a time and keeps how far it is, so that a request need not wait for it. */
@Injectable()
export class JobRunner implements OnApplicationBootstrap, OnModuleDestroy {
  readonly #log = new Logger('jobs');
  #last: Promise<void> = Promise.resolve();

  constructor(
    private readonly store: PortfolioStore,
    private readonly edge: Edge,
  ) {}

  /** Work that a server left behind when it ended will not go on. */
  async onApplicationBootstrap(): Promise<void> {
    for (const job of await this.store.jobs()) {
      if (job.state === 'waiting' || job.state === 'running') {
        await this.store.saveJob({ ...job, state: 'failed', why: 'The server ended before this was done; ask for it again.', ended: this.edge.now() });
      }
    }
  }

  /** Waits for the work under way before the store is closed. */
  async onModuleDestroy(): Promise<void> {
    await this.#last;
  }

  /** Puts work in line and gives back its job at once. */
  async start(kind: string, input: unknown, work: Work): Promise<Job> {
    const job: Job = { id: this.edge.newId(), kind, state: 'waiting', input, progress: 0, stage: null, result: null, why: null, made: this.edge.now(), started: null, ended: null };
    await this.store.saveJob(job);
    this.#last = this.#last.then(() => this.#run(job, work));
    return job;
  }

  async #run(waiting: Job, work: Work): Promise<void> {
    let job: Job = { ...waiting, state: 'running', started: this.edge.now() };
    const keep = async (change: Partial<Job>): Promise<void> => {
      job = { ...job, ...change };
      await this.store.saveJob(job);
    };
    try {
      await keep({});
      const result = await work((progress, stage) => keep({ progress, stage }));
      await keep({ state: 'done', progress: 1, result, ended: this.edge.now() });
    } catch (fault) {
      this.#log.error(`job ${job.id}`, fault instanceof Error ? fault.stack : String(fault));
      await keep({ state: 'failed', why: fault instanceof Error ? fault.message : String(fault), ended: this.edge.now() }).catch((unkept: unknown) => {
        this.#log.error(`job ${job.id} failed and that could not be kept`, String(unkept));
      });
    }
  }
}
