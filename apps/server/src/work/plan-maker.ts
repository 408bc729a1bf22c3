import type { CutRule, LotRule, Plan, PlanAsk, PlanOrder } from '#planning';

/** What may be set for one plan without changing the portfolio. */
export interface PlanRequest extends Pick<PlanAsk, 'name' | 'view' | 'caps' | 'oneCap_cents'> {
  /** Seconds the choice may take; what it reached is said with its bound. */
  readonly timeLimit_s?: number;
  /** Draws of what is not known, 0 for none. */
  readonly draws?: number;
  readonly seed?: number;
  /** Seconds to go on until the choice is proved. */
  readonly prove_s?: number;
  readonly aim?: NonNullable<PlanOrder['aim']>;
  readonly cutRule?: CutRule;
  readonly lotRule?: LotRule;
  /** A kept plan to start from: what was recorded on it stands, the rest is planned again. */
  readonly replan?: string;
}

/** Says how far the work is, 0…1, and what it is at. */
export type Say = (progress: number, stage: string) => Promise<void>;

/** Makes and keeps a plan. The maker behind it is chosen in the application's module. */
export abstract class PlanMaker {
  /**
   * @param stop ends the work; what it was at is not kept
   * @returns the id of the kept plan
   */
  abstract make(request: PlanRequest, say: Say, stop: AbortSignal): Promise<string>;
}

/** Makes the workbook of a plan. */
export abstract class WorkbookMaker {
  abstract workbook(plan: Plan): Promise<Uint8Array>;
}
