import type { View } from '#calc';
import type { Plan } from '#planning';

/** What may be set for one plan without changing the portfolio. */
export interface PlanRequest {
  readonly name?: string;
  readonly view?: View;
  readonly caps?: readonly { readonly phase: string; readonly cap_cents: number }[];
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
