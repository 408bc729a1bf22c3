import { Injectable, Logger, type OnApplicationBootstrap, type OnModuleDestroy } from '@nestjs/common';
import { PortfolioStore, type Job } from '#store';
import { Edge } from '../edge.js';
import type { Say } from '../work/plan-maker.js';

/** Long work: gives plain JSON, says how far it is, and ends early when told to. */
export type Work = (say: Say, stop: AbortSignal) => Promise<unknown>;

const STOPPED = 'It was stopped as asked.';

const hasEnded = ({ state }: Job): boolean => state === 'done' || state === 'failed';

/** Runs long work one at a time and keeps how far it is, so that a request need not wait for it. */
@Injectable()
export class JobRunner implements OnApplicationBootstrap, OnModuleDestroy {
  readonly #log = new Logger('jobs');
  /** Work waiting or under way, by the id of its job. */
  readonly #open = new Map<string, { readonly stop: AbortController; readonly ended: Promise<void> }>();
  #last: Promise<void> = Promise.resolve();

  constructor(
    private readonly store: PortfolioStore,
    private readonly edge: Edge,
  ) {}

  /** Work that a server left behind when it ended will not go on. */
  async onApplicationBootstrap(): Promise<void> {
    for (const job of await this.store.jobs()) {
      if (!hasEnded(job)) await this.store.saveJob({ ...job, state: 'failed', why: 'The server ended before this was done; ask for it again.', ended: this.edge.now() });
    }
  }

  /** Ends the work under way and what waits, and waits for it, before the store is closed. */
  async onModuleDestroy(): Promise<void> {
    for (const { stop } of this.#open.values()) stop.abort(new Error('The server ended before this was done; ask for it again.'));
    await this.#last;
  }

  /** Puts work in line and gives back its job at once. */
  async start(kind: string, input: unknown, work: Work): Promise<Job> {
    const job: Job = { id: this.edge.newId(), kind, state: 'waiting', input, progress: 0, stage: null, result: null, why: null, made: this.edge.now(), started: null, ended: null };
    await this.store.saveJob(job);
    const stop = new AbortController();
    this.#last = this.#last.then(() => this.#run(job, work, stop.signal)).finally(() => this.#open.delete(job.id));
    this.#open.set(job.id, { stop, ended: this.#last });
    return job;
  }

  /**
   * Stops a job. One that waits ends at once; one under way ends when its threads have ended.
   *
   * @returns the job as it is then, null for one that had ended before
   */
  async stop(id: string): Promise<Job | null> {
    const open = this.#open.get(id);
    const job = await this.store.loadJob(id);
    if (open === undefined || job === null || hasEnded(job)) return null;
    open.stop.abort(new Error(STOPPED));
    if (job.state === 'running') await open.ended;
    else await this.store.saveJob({ ...job, state: 'failed', why: STOPPED, ended: this.edge.now() });
    return this.store.loadJob(id);
  }

  async #run(waiting: Job, work: Work, stop: AbortSignal): Promise<void> {
    // Stopped while it waited, and kept as that.
    if (stop.aborted) return;
    let job: Job = { ...waiting, state: 'running', started: this.edge.now() };
    const keep = async (change: Partial<Job>): Promise<void> => {
      job = { ...job, ...change };
      await this.store.saveJob(job);
    };
    try {
      await keep({});
      const result = await work((progress, stage) => keep({ progress, stage }), stop);
      await keep({ state: 'done', progress: 1, result, ended: this.edge.now() });
    } catch (fault) {
      // Threads that are ended fail in their own words; what a person asked for is the reason.
      const why: unknown = stop.aborted ? stop.reason : fault;
      if (!stop.aborted) this.#log.error(`job ${job.id}`, fault instanceof Error ? fault.stack : String(fault));
      await keep({ state: 'failed', why: why instanceof Error ? why.message : String(why), ended: this.edge.now() }).catch((unkept: unknown) => {
        this.#log.error(`job ${job.id} failed and that could not be kept`, String(unkept));
      });
    }
  }
}
