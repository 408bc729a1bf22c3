import { dollarsText, wholeDollarsText } from '#calc';
import { chanceWords, npvExpected, type Plan } from '#planning';
import type { Say } from '../texts/texts.js';

const percent = (share: number, digits = 0): string => `${(share * 100).toFixed(digits)} %`;
const dollars = wholeDollarsText;

/** What the plan costs and does, in two paragraphs. */
export function buysWords(plan: Plan, say: Say): string[] {
  const { payback, eligible } = plan;
  if (plan.lines.length === 0) return [say('memo.buys.nothing')];
  const buildings = [...new Set(plan.lines.map((l) => l.building))].sort();
  const spent = plan.phases.reduce((sum, p) => sum + p.spending.total_cents, 0);
  return [
    say('memo.buys.work', {
      panes: say('count.panes', { count: plan.phases.reduce((sum, p) => sum + p.panes, 0) }),
      dwellings: say('count.dwellings', { count: plan.lines.length }),
      buildings: buildings.join(', '),
      cost: dollars(spent),
      eligible: dollars(eligible.cost_cents),
      share: percent(eligible.boughtShare),
      payingShare: percent(eligible.payingBoughtShare),
      paying: dollars(eligible.payingCost_cents),
    }),
    say('memo.buys.saving', {
      kWh: Math.round(payback.firstYear_kWh).toLocaleString('en-US'),
      cooling: dollars(payback.firstYearCooling_cents),
      heating: dollars(payback.firstYearHeating_cents),
      payback: payback.simplePayback_yr === null ? say('memo.payback.none') : say('memo.payback.years', { years: payback.simplePayback_yr.toFixed(1) }),
    }),
    say('memo.value', { rate: percent(plan.terms.realDiscountRate, 1), whole: dollars(payback.npv_cents), owner: dollars(payback.npvOwner_cents), proof: proofWords(plan, say) }),
  ];
}

/** The decision in a few plain sentences, the verdict last; the verdict stands where it is known how much of the savings is expected. */
export function shortWords(plan: Plan, say: Say): { readonly facts: string[]; readonly verdict: string | null } {
  const { payback, phases, lines, bills, outlook } = plan;
  if (lines.length === 0) return { facts: [say('memo.buys.nothing')], verdict: null };
  const sum = (part: (p: Plan['phases'][number]) => number): number => phases.reduce((total, p) => total + part(p), 0);
  const gain = (cents: number): string => say(cents < 0 ? 'memo.short.lose' : 'memo.short.gain', { value: dollars(Math.abs(cents)) });
  const isModelled = bills === undefined || bills.setting === 'as-modelled';
  const spend = say('memo.short.spend', { cost: dollars(sum((p) => p.spending.total_cents)), cap: dollars(sum((p) => p.phase.cap_cents)), dwellings: say('count.dwellings', { count: lines.length }) });
  const life = Math.max(...payback.lines.map((l) => l.life_yr));
  const value = say(isModelled ? 'memo.short.modelled' : 'memo.short.found', { gain: gain(payback.npv_cents), life });
  if (bills === undefined) return { facts: [spend, value], verdict: null };
  const then_cents = npvExpected(plan)?.middle_cents ?? payback.npv_cents;
  const expected = isModelled ? [say('memo.short.expected', { share: percent(bills.plan.middle), gain: gain(then_cents) })] : [];
  const chance = isModelled && outlook !== null ? [say('memo.short.chance', { chance: chanceWords(outlook.inBills.paysBackShare) })] : [];
  return { facts: [spend, value, ...expected, ...chance], verdict: say(then_cents >= 0 ? 'memo.short.yes' : 'memo.short.no') };
}

function proofWords({ proof }: Plan, say: Say): string {
  if (proof.status === 'optimal') return say('memo.proof.optimal');
  return proof.status === 'bounded' ? say('memo.proof.bounded', { gap: percent(proof.gap, 2) }) : say('memo.proof.infeasible');
}

/** Cooling electricity cut in the first year as a share of what the filmed dwellings use for cooling. */
function cutShare(plan: Plan): number {
  const before = plan.lines.reduce((sum, l) => sum + l.option.asFoundCooling_kWh, 0);
  return before > 0 ? plan.payback.firstYear_kWh / before : 0;
}

/** The range in words: the draws where there are some, the share of the savings that must be found, and what they rest on. */
export function sureWords(plan: Plan, say: Say): string[] {
  const { payback, outlook } = plan;
  if (plan.lines.length === 0) return [];
  const drawn = outlook === null || outlook === undefined ? say('memo.sure.none') : say('memo.sure.draws', { draws: outlook.draws, words: outlook.words.join(' ') });
  // Savings count as present value of savings over that of all costs: at 1 / SIR of them the two are equal.
  const even = payback.sir > 1 ? say('memo.sure.even', { share: percent(1 / payback.sir) }) : say('memo.sure.never');
  const bills = plan.bills === undefined ? [] : [say('memo.sure.bills', { words: plan.bills.plan.words }), ...(plan.bills.setting === 'as-modelled' ? [say('memo.sure.modelled')] : [])];
  const isModel = plan.bills === undefined || plan.bills.plan.basis === 'model, not calibrated';
  return [drawn, even, ...bills, ...(isModel ? [say('memo.sure.model', { share: percent(cutShare(plan)) })] : [])];
}

/** Who keeps the savings. */
export function whoWords({ payback, lines }: Plan, say: Say): string[] {
  if (lines.length === 0) return [];
  const residents = payback.firstYear_cents - payback.firstYearOwner_cents;
  return [
    say('memo.who.first', { all: dollars(payback.firstYear_cents), owner: dollars(payback.firstYearOwner_cents), residents: dollars(residents) }),
    ...(payback.npvOwner_cents < 0 ? [say('memo.who.loss')] : []),
  ];
}

const MOST_LETTERS = 4;

/** The letters with most value behind them. */
export function waitsWords({ waiting }: Plan, say: Say): string[] {
  const worth = waiting.filter((w) => w.value_cents > 0);
  if (worth.length === 0) return [say('memo.waits.none')];
  const rest = worth.slice(MOST_LETTERS);
  return [
    ...worth.slice(0, MOST_LETTERS).map((w) => say('memo.waits.item', { subject: w.subject, dwellings: say('count.dwellings', { count: w.dwellings }), panes: say('count.panes', { count: w.panes }), value: dollars(w.value_cents) })),
    ...(rest.length === 0 ? [] : [say('memo.waits.more', { count: rest.length, value: dollars(rest[0]!.value_cents) })]),
    say('memo.waits.note'),
  ];
}

export function wrongWords({ outlook }: Plan, say: Say): string[] {
  const moves = (outlook?.influences ?? []).slice(0, 3).map((i) => i.parameter);
  return [...(moves.length === 0 ? [] : [say('memo.wrong.moves', { inputs: moves.join('; ') })]), say('memo.wrong.1'), say('memo.wrong.2'), say('memo.wrong.3'), say('memo.wrong.4')];
}

export function assumedWords({ terms, assumed }: Plan, say: Say): string[] {
  return [
    say('memo.assumed.terms', {
      rate: percent(terms.realDiscountRate, 1),
      rise: percent(terms.realEscalation, 1),
      loss: percent(terms.filmDegradation_1_yr, 1),
      removal: dollarsText(Math.round(terms.endRemoval_cents_m2 ?? 0)),
      contingency: percent(terms.contingencyShare),
      labour: dollars(terms.labour_cents_h),
      cash: say(terms.labourIsCash ? 'memo.cash.yes' : 'memo.cash.no'),
      count: assumed.length,
    }),
    say('memo.not'),
  ];
}
