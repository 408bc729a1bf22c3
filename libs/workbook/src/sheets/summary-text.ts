import { dollarsText } from '#calc';
import { earnedInBillsWords, type Plan, spokenForWords, unspentWords } from '#planning';
import { SHEET } from '../sheet-names.js';

const BEFORE = 'These are values of the lines less their visits, before freight, film beyond the pieces and contingency; with them see both views.';

/** What the ledger takes off the caps, and money left where nothing more pays. */
export const leftText = (plan: Plan): string[] => [...spokenForWords(plan), ...unspentWords(plan)];

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** What is expected of the modelled savings in bills: as modelled, and with what studies and bills found. */
export function realisationText(plan: Plan): string[] {
  const { bills, payback } = plan;
  if (bills === undefined) return earnedInBillsWords(plan);
  const year = (share: number): string => dollarsText(payback.firstYearCooling_cents * share);
  const first = bills.setting === 'as-found' ? 'Savings count as found, as asked.' : `First-year cooling saving as modelled ${dollarsText(payback.firstYearCooling_cents)}; with what studies and bills found ${year(bills.plan.middle)} (${year(bills.plan.low)} to ${year(bills.plan.high)}).`;
  return [`${first} ${capital(bills.plan.words)}. ${capital(bills.calibration.words)}`, ...earnedInBillsWords(plan), ...(bills.verification === null ? [] : [bills.verification.words])];
}

/** Bound and gap in words, and what became of the choice when whole rolls were bought. */
export function proofText({ proof, worth }: Plan): string {
  const found = dollarsText(proof.value_cents);
  const bound = dollarsText(proof.bound_cents);
  if (proof.status === 'infeasible') return `No choice keeps all caps and locks: ${proof.why ?? 'the reason is not known'}.`;
  const choice =
    proof.status === 'optimal'
      ? `The choice is proved best under the caps it was made with: value ${found}.`
      : `The choice is worth ${found}; under the caps it was made with none can be worth more than ${bound}, so at most ${(proof.gap * 100).toFixed(2)} % is left. It is not proved to be the best.${proof.why === null ? '' : ` ${proof.why}.`}`;
  return `${choice} The lines of the plan, after whole rolls, are worth ${dollarsText(worth.lines_cents)}, their visits take off ${dollarsText(worth.visits_cents ?? 0)}; under the full caps, with film priced by the piece, no plan passes ${dollarsText(worth.fullCapBound_cents)}. ${BEFORE}`;
}

/** Limits of what the figures can say. */
export function notKnown(plan: Plan): string[] {
  const assumed = plan.assumed.length;
  return [
    `${plan.bills?.plan.basis === 'calibrated to bills' ? 'The savings are a model brought towards bills; bills before the work show the cooling, not what film takes off it.' : 'The savings are a model, not calibrated with bills of these dwellings.'} Measured studies find less saved than modelled: see ${SHEET.calibration} for what is expected in bills.`,
    `${String(assumed)} groups of values are assumed because the survey leaves them blank: see ${SHEET.assumptions}.`,
    'It does not know how people use blinds, windows and set points from day to day, how weather and prices will turn out, or how long the film will really last.',
    'It does not decide whether film may go on a pane: the film maker’s chart, the warranties, local code and licensed practice do. Sizes are from the survey: measure before cutting.',
    'It does not know tax treatment or financing; rebates are counted as the offers say, and no cap counts on them. Depreciation is undecided: expense now (repair, or a de minimis election of 2,500 or 5,000 an item), 27.5 years straight line from the middle of the month, or straight line over the film’s life; ask the accountant.',
    'No money is counted for a longer life of machines (most that are taken out still run) or for comfort.',
  ];
}

const MOST_LETTERS = 6;

/** What waits behind which letter, largest value first. */
export function waitingText({ waiting }: Plan): string[] {
  if (waiting.length === 0) return ['Nothing waits for a letter or test.'];
  const rest = waiting.length - MOST_LETTERS;
  return [
    ...waiting.slice(0, MOST_LETTERS).map((w) => `${dollarsText(w.value_cents)} of value waits in ${w.building} behind: ${w.kind} (${w.state}); ${String(w.dwellings)} dwellings, ${String(w.panes)} panes.`),
    ...(rest > 0 ? [`${String(rest)} more: see ${SHEET.waiting}.`] : []),
  ];
}

/** The range of the plan in words. */
export const outlookText = ({ outlook }: Plan): readonly string[] => (outlook === null ? ['How sure this is has not been asked: no draws were made.'] : outlook.words);
