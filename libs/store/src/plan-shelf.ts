import { createHash } from 'node:crypto';
import type { Known } from '#calc';
import type { EntityManager } from 'typeorm';
import { PlanRow } from './kept/plan.js';
import { sameText } from './record-write.js';
import { StoreFault } from './store-fault.js';

/** A plan to be kept. Id and time come from the caller; the body is plain JSON. */
export interface PlanToKeep {
  readonly id: string;
  readonly title: string;
  /** The plan this one was made from by a change; null for a first one. */
  readonly parent: Known<string>;
  /** ISO date and time. */
  readonly made: string;
  readonly programVersion: string;
  /** Hash of the portfolio and settings the plan was made from. */
  readonly inputsHash: string;
  readonly signed: boolean;
  readonly body: unknown;
}

export interface PlanHeading extends Omit<PlanToKeep, 'body'> {
  /** 1 for a first plan, its parent's number and one for a change. */
  readonly revision: number;
  /** SHA-256 of the body's text with its fields in order. */
  readonly hash: string;
}

export interface KeptPlan extends PlanHeading {
  readonly body: unknown;
}

/** SHA-256 of a JSON value, the same for the same content whatever the order of its fields. */
export function contentHash(value: unknown): string {
  return createHash('sha256').update(sameText(value)).digest('hex');
}

export async function planById(rows: EntityManager, id: string): Promise<KeptPlan | null> {
  const row = await rows.findOneBy(PlanRow, { id });
  if (row === null) return null;
  const body = JSON.parse(row.body) as unknown;
  if (contentHash(body) !== row.hash) throw new StoreFault(`Plan ${id} was changed in the database after it was kept: its text no longer fits its hash.`);
  return { ...row, body };
}

async function nextRevision(rows: EntityManager, parent: Known<string>): Promise<number> {
  if (parent === null) return 1;
  const kept = await rows.findOneBy(PlanRow, { id: parent });
  if (kept === null) throw new StoreFault(`Plan ${parent}, which this plan names as its parent, is not kept.`);
  return kept.revision + 1;
}

export async function keepPlan(rows: EntityManager, plan: PlanToKeep): Promise<KeptPlan> {
  const kept = await planById(rows, plan.id);
  const hash = contentHash(plan.body);
  if (kept !== null) {
    if (kept.hash === hash) return kept;
    throw new StoreFault(`Plan ${plan.id} is kept and never edited; keep the change as a new plan that names it as its parent.`);
  }
  const heading = { ...plan, revision: await nextRevision(rows, plan.parent), hash };
  await rows.insert(PlanRow, { ...heading, body: JSON.stringify(plan.body) });
  return heading;
}

export async function listPlans(rows: EntityManager): Promise<readonly PlanHeading[]> {
  const found = await rows.find(PlanRow, { order: { made: 'DESC', id: 'ASC' } });
  return found.map(({ body: _body, ...heading }) => heading);
}

/** Marks a plan as signed; its content is never touched. */
export async function signPlan(rows: EntityManager, id: string): Promise<void> {
  const kept = await planById(rows, id);
  if (kept === null) throw new StoreFault(`There is no plan ${id}.`);
  if (kept.signed) throw new StoreFault(`Plan ${id} is signed already.`);
  await rows.update(PlanRow, { id }, { signed: true });
}
