import type { Phase } from '#calc';
import { meanCooling_cents } from '../options/film-options.js';
import { optionFlows, phaseValue } from '../options/value.js';
import type { PlanTerms } from '../plan/plan.js';
import { type DrawOrder, drawnValue } from './draw-book.js';
import { type DrawnSavings, optionInDraw } from './drawn-option.js';

/** An option in a phase under every draw. Shape of each: [draws]. */
export interface DrawnValue {
  /** Net present value in the plan's view. */
  readonly value_cents: Float64Array;
  /** Mean yearly saving over the film's life, all payers, net of added heating, at base-date prices. */
  readonly yearly_cents: Float64Array;
  /** 1 where the savings of the film's life add up to its cost, undiscounted; 0 elsewhere. */
  readonly paysBack: Uint8Array;
}

const sum = (flows: readonly number[]): number => flows.reduce((total, flow) => total + flow, 0);

/** Values an option in a phase under each draw by the same functions as the plan. */
export function drawnValue_cents(drawn: DrawnSavings, phase: Phase, at: { readonly order: DrawOrder; readonly terms: PlanTerms; readonly endYear: number | null }): DrawnValue {
  const { order, terms, endYear } = at;
  const value_cents = new Float64Array(order.draws);
  const yearly_cents = new Float64Array(order.draws);
  const paysBack = new Uint8Array(order.draws);
  for (let draw = 0; draw < order.draws; draw++) {
    const option = optionInDraw(drawn, order, draw);
    const drawnTerms = { ...terms, realEscalation: terms.realEscalation + drawnValue(order, 'escalation', { scope: '*', draw }) };
    const value = phaseValue(option, phase, { terms: drawnTerms, endYear });
    const flows = optionFlows(option, phase, { terms: drawnTerms, endYear });
    value_cents[draw] = terms.view === 'owner' ? value.owner_cents : value.whole_cents;
    yearly_cents[draw] = meanCooling_cents(option.segments, option.filmLife_yr);
    paysBack[draw] = sum(terms.view === 'owner' ? flows.owner_cents : flows.whole_cents) >= sum(flows.cost_cents) - sum(flows.rebate_cents) ? 1 : 0;
  }
  return { value_cents, yearly_cents, paysBack };
}
