import { type Phase, presentValue } from '#calc';
import { meanCooling_cents } from '../options/film-options.js';
import { boughtWith, optionFlows } from '../options/value.js';
import type { PlanTerms } from '../plan/plan.js';
import { type DrawOrder, drawnValue } from './draw-book.js';
import { type DrawnSavings, optionInDraw } from './drawn-option.js';

/** An option in a phase under every draw. Shape of each: [draws]. */
export interface DrawnValue {
  /** Savings of the film's life worth today, in the plan's view, and what they are bought with, rebate taken off and the end of the film in it. */
  readonly saved_cents: Float64Array;
  readonly cost_cents: Float64Array;
  /** Mean yearly saving over the film's life, all payers, net of added heating, at base-date prices. */
  readonly yearly_cents: Float64Array;
  /** The same savings and cost added up without discount: it pays back where the one reaches the other. */
  readonly plainSaved_cents: Float64Array;
  readonly plainCost_cents: Float64Array;
}

const sum = (flows: readonly number[]): number => flows.reduce((total, flow) => total + flow, 0);

/** How a drawn saving is looked at: as modelled (1 in every draw), or as it is found in bills. Shape: [draws]. */
export type FoundShare = Float64Array | null;

/** Values an option in a phase under each draw by the same functions as the plan. */
export function drawnValue_cents(drawn: DrawnSavings, phase: Phase, at: { readonly order: DrawOrder; readonly terms: PlanTerms; readonly endYear: number | null }): DrawnValue {
  const { order, terms, endYear } = at;
  const of = { saved_cents: new Float64Array(order.draws), cost_cents: new Float64Array(order.draws), yearly_cents: new Float64Array(order.draws), plainSaved_cents: new Float64Array(order.draws), plainCost_cents: new Float64Array(order.draws) };
  for (let draw = 0; draw < order.draws; draw++) {
    const option = optionInDraw(drawn, order, draw);
    const drawnTerms = { ...terms, realEscalation: terms.realEscalation + drawnValue(order, 'escalation', { scope: '*', draw }) };
    const flows = optionFlows(option, phase, { terms: drawnTerms, endYear });
    const saved = terms.view === 'owner' ? flows.owner_cents : flows.whole_cents;
    of.saved_cents[draw] = presentValue(saved, terms.realDiscountRate);
    of.cost_cents[draw] = boughtWith(flows, (cents) => presentValue(cents, terms.realDiscountRate));
    of.yearly_cents[draw] = meanCooling_cents(option.segments, option.filmLife_yr);
    of.plainSaved_cents[draw] = sum(saved);
    of.plainCost_cents[draw] = boughtWith(flows, sum);
  }
  return of;
}

const shareIn = (found: FoundShare, draw: number): number => (found === null ? 1 : found[draw]!);

/** Net present value in each draw. @returns shape: [draws] */
export const netValues_cents = (drawn: DrawnValue, found: FoundShare): Float64Array => drawn.saved_cents.map((saved, d) => shareIn(found, d) * saved - drawn.cost_cents[d]!);

/** Yearly saving in each draw. @returns shape: [draws] */
export const yearly_cents = (drawn: DrawnValue, found: FoundShare): Float64Array => drawn.yearly_cents.map((saved, d) => shareIn(found, d) * saved);

/** Share of draws in which the savings of the film's life add up to its cost. */
export function paysBackShare(drawn: DrawnValue, found: FoundShare): number {
  let paid = 0;
  drawn.plainSaved_cents.forEach((saved, d) => (paid += shareIn(found, d) * saved >= drawn.plainCost_cents[d]! ? 1 : 0));
  return paid / drawn.plainSaved_cents.length;
}
