import type { Known } from '#calc';
import type { EntityManager } from 'typeorm';
import { JobRow, type JobState } from './kept/job.js';
import { putRows } from './record-write.js';

/** A piece of long work; `input` and `result` are plain JSON. Times are ISO and come from the caller. */
export interface Job {
  readonly id: string;
  readonly kind: string;
  readonly state: JobState;
  readonly input: unknown;
  /** 0…1. */
  readonly progress: number;
  readonly stage: Known<string>;
  readonly result: unknown;
  /** Why it failed. */
  readonly why: Known<string>;
  readonly made: string;
  readonly started: Known<string>;
  readonly ended: Known<string>;
}

export async function keepJob(rows: EntityManager, job: Job): Promise<void> {
  await putRows(rows, JobRow, [job]);
}

export async function jobById(rows: EntityManager, id: string): Promise<Job | null> {
  const row = await rows.findOneBy(JobRow, { id });
  return row === null ? null : { ...row };
}

export async function listJobs(rows: EntityManager): Promise<readonly Job[]> {
  const found = await rows.find(JobRow, { order: { made: 'DESC', id: 'ASC' } });
  return found.map((row) => ({ ...row }));
}
