import { ApiProperty } from '@nestjs/swagger';
import type { Job, JobState } from '#store';

/** A piece of long work as the server tells of it. */
export class JobAnswer {
  @ApiProperty() id: string;
  @ApiProperty({ example: 'plan' }) kind: string;
  @ApiProperty({ enum: ['waiting', 'running', 'done', 'failed'] }) state: JobState;
  @ApiProperty({ minimum: 0, maximum: 1, description: 'how far the stage is that it is at; only the state says that all is done' }) progress: number;
  @ApiProperty({ type: String, nullable: true, description: 'what it is at' }) stage: string | null;
  @ApiProperty({ type: String, nullable: true, description: 'why it failed' }) why: string | null;
  @ApiProperty({ format: 'date-time' }) made: string;
  @ApiProperty({ type: String, format: 'date-time', nullable: true }) started: string | null;
  @ApiProperty({ type: String, format: 'date-time', nullable: true }) ended: string | null;
  @ApiProperty({ description: 'address of this job' }) self: string;
  @ApiProperty({ type: String, nullable: true, description: 'address of what came of it, when done' }) result: string | null;
}

export const jobAddress = (id: string): string => `/api/jobs/${encodeURIComponent(id)}`;

function resultAddress({ kind, state, result }: Job): string | null {
  const plan = (result as { plan?: unknown } | null)?.plan;
  return kind === 'plan' && state === 'done' && typeof plan === 'string' ? `/api/plans/${encodeURIComponent(plan)}` : null;
}

export function jobAnswer(job: Job): JobAnswer {
  const { id, kind, state, progress, stage, why, made, started, ended } = job;
  return { id, kind, state, progress, stage, why, made, started, ended, self: jobAddress(id), result: resultAddress(job) };
}
