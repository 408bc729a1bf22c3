import type { Known } from '#calc';
import { Check, Entity, Index } from 'typeorm';
import { Json, Key, Real, Text, blank } from '../columns.js';

export type JobState = 'waiting' | 'running' | 'done' | 'failed';

/** A piece of long work: what was asked, how far it is, what came of it. */
@Entity('jobs')
@Index('jobs_by_state', ['state'])
@Check('jobs_state', "state IN ('waiting', 'running', 'done', 'failed')")
@Check('jobs_progress', 'progress BETWEEN 0 AND 1')
export class JobRow {
  @Key() id: string;
  @Text() kind: string;
  @Text() state: JobState;
  @Json(blank) input: unknown;
  @Real() progress: number;
  @Text(blank) stage: Known<string>;
  @Json(blank) result: unknown;
  @Text(blank) why: Known<string>;
  @Text() made: string;
  @Text(blank) started: Known<string>;
  @Text(blank) ended: Known<string>;
}
