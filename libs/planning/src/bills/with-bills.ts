import type { Plan, PlanFinding } from '../plan/plan.js';
import type { BillsReview, StatedRealisation } from './review.js';

/** What is expected of a dwelling's modelled saving. */
export function realisationOfDwelling(review: BillsReview, dwelling: string): StatedRealisation {
  return review.byDwelling[dwelling] ?? review.uncalibrated;
}

const percent = (share: number): string => `${(share * 100).toFixed(0)} %`;

function aboutSavings(review: BillsReview): PlanFinding {
  const { calibration, plan } = review;
  if (plan.basis === 'model, not calibrated') {
    return {
      severity: 'warning',
      subject: 'all savings',
      text: `${plan.words}. ${calibration.words} Measured studies of film mostly find 1 to 10 % of cooling saved; models of unshaded glassy rooms 30 to 50 %.`,
      whatToDo: 'give bills of the last year, and compare bills after the first phase before spending the next cap on the strength of these savings',
    };
  }
  const shown = review.verification === null ? '' : ` ${review.verification.words}`;
  return { severity: 'note', subject: 'all savings', text: `${plan.words}. ${calibration.words}${shown}`, whatToDo: 'compare bills after the first phase: bills before it show the cooling, not what film takes off it' };
}

/** What the calibration left over, as findings. */
function leftOver({ calibration }: BillsReview): PlanFinding[] {
  const limits = calibration.groups.flatMap((g): PlanFinding[] => (g.why === null ? [] : [{ severity: 'warning', subject: `${g.building} ${g.planType}`, text: `bills and model do not meet: ${g.why}`, whatToDo: 'look at glass, shade, set point and machine again before trusting this group' }]));
  const outside = calibration.buildings.filter((b) => !b.isWithinLimits).map((b): PlanFinding => ({ severity: 'warning', subject: b.building, text: `after calibration the model misses the bills by CV(RMSE) ${percent(b.after.cvRmse)} and NMBE ${percent(b.after.nmbe)}; the published limits are ${percent(calibration.limits.cvRmse)} and ${percent(calibration.limits.nmbe)}`, whatToDo: 'look at the survey of the building, and at the bills that were left out' }));
  const apart = calibration.notCompared.map((m): PlanFinding => ({ severity: 'note', subject: m.meter, text: `its bills are not compared with the model: ${m.why}`, whatToDo: 'nothing, or give more bills' }));
  return [...limits, ...outside, ...apart];
}

/** The plan with what bills say of it: beside every ranked dwelling and line, and for the whole. No figure of the plan is changed here. */
export function withBills(plan: Plan, review: BillsReview): Plan {
  const named = <T extends { readonly dwelling: string }>(rows: readonly T[]): (T & { readonly realisation: StatedRealisation })[] => rows.map((row) => ({ ...row, realisation: realisationOfDwelling(review, row.dwelling) }));
  const lines = named(plan.lines);
  const saved = lines.reduce((sum, l) => sum + Math.max(0, l.option.yearlyCooling_cents), 0);
  const share = (part: 'low' | 'middle' | 'high'): number => lines.reduce((sum, l) => sum + Math.max(0, l.option.yearlyCooling_cents) * l.realisation[part], 0) / saved;
  const [low, middle, high] = saved > 0 ? [share('low'), share('middle'), share('high')] : [review.plan.low, review.plan.middle, review.plan.high];
  const basis = lines.find((l) => l.realisation.basis !== 'model, not calibrated')?.realisation.basis ?? (lines.length > 0 ? 'model, not calibrated' : review.plan.basis);
  const calibratedLines = lines.filter((l) => l.realisation.basis === 'calibrated to bills').length;
  const partly = basis === 'calibrated to bills' && calibratedLines < lines.length ? ` (${String(calibratedLines)} of ${String(lines.length)} lines)` : '';
  const whole: StatedRealisation = { low, middle, high, basis, words: `${basis}${partly}: of the modelled saving ${percent(middle)} is expected in bills, eight in ten between ${percent(low)} and ${percent(high)}` };
  const bills = { ...review, plan: whole };
  const others = plan.findings.filter((f) => f.subject !== 'all savings');
  return { ...plan, rankedDwellings: named(plan.rankedDwellings), rankedFacades: named(plan.rankedFacades), lines, bills, findings: [aboutSavings(bills), ...leftOver(bills), ...others] };
}
