import type { Plan, PlanLine } from '../plan/plan.js';
import { lessRemoval, optionFlows, type OptionFlows } from '../options/value.js';

/** The money of a line by year of the study, worked out again from the plan alone. */
export interface LineFlows extends OptionFlows {
  /** All payers: savings less cost and taking film off, rebate added. */
  readonly net_cents: readonly number[];
  /** The same for the owner. */
  readonly ownerNet_cents: readonly number[];
}

/** @throws RangeError when the plan has no phase of the line: a mistake of the program */
export function lineFlows(plan: Plan, line: PlanLine): LineFlows {
  const phase = plan.phases.find((p) => p.phase.id === line.phase)?.phase;
  if (phase === undefined) throw new RangeError(`phase must be one of the plan, got ${line.phase}`);
  const flows = optionFlows(line.option, phase, { terms: plan.terms, endYear: plan.buildings.find((b) => b.id === line.building)?.endYear ?? null });
  const net = (saved: readonly number[]): number[] => lessRemoval(saved, flows).map((flow, year) => flow - flows.cost_cents[year]! + flows.rebate_cents[year]!);
  return { ...flows, net_cents: net(flows.whole_cents), ownerNet_cents: net(flows.owner_cents) };
}
