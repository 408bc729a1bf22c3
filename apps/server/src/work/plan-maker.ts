import type { Plan, PlanAsk } from '#planning';

/** What may be set for one plan without changing the portfolio. */
export interface PlanRequest extends Pick<PlanAsk, 'name' | 'view' | 'caps'> {
  /** Seconds the choice may take; what it reached is said with its bound. */
  readonly timeLimit_s?: number;
}

/** Says how far the work is, 0…1, and what it is at. */
export type Say = (progress: number, stage: string) => Promise<void>;

/** Makes and keeps a plan. The maker behind it is chosen in the application's module. */
export abstract class PlanMaker {
  /** @returns the id of the kept plan */
  abstract make(request: PlanRequest, say: Say): Promise<string>;
}

/** Makes the workbook of a plan. */
export abstract class WorkbookMaker {
  abstract workbook(plan: Plan): Promise<Uint8Array>;
}
