import { calibratedRealisation, type LogSpread, realisationOf, studiedRealisation } from '#calc';
import type { DefaultOf } from '../job/assumption-book.js';
import { defaultsOf, type PlanJob } from '../job/plan-job.js';
import type { KnownPortfolio } from '../known/known-portfolio.js';
import { planTypesOf } from './compared-meters.js';
import type { BillsReview, CalibrationReview, StatedRealisation } from './review.js';

const STUDIES = ['bronzeOffice', 'lowEFilmOffices', 'stormWindowHomes', 'absorbingTestRooms', 'reflectiveTestRooms'] as const;

/** What published studies found of modelled savings. */
export function studied(defaultOf: DefaultOf): LogSpread {
  const modelledShare = defaultOf<number>('study.modelledShare').value;
  return studiedRealisation(STUDIES.map((name) => ({ name, modelledShare, measuredShare: defaultOf<number>(`study.${name}`).value })));
}

/** The factor of dwellings whose bills decide the calibration by a weight; 0 where no bills were compared. */
export function expectedRealisation(weight: number, defaultOf: DefaultOf): LogSpread {
  return calibratedRealisation(studied(defaultOf), weight, { explainedShare: defaultOf<number>('realisation.explainedShare').value, leftSpread: defaultOf<number>('realisation.leftSpread').value });
}

const percent = (share: number): string => `${(share * 100).toFixed(0)} %`;

/** The factor in words: what it rests on and how wide it is. */
export function stated(spread: LogSpread, basis: StatedRealisation['basis']): StatedRealisation {
  const { low, middle, high } = realisationOf(spread);
  return { low, middle, high, basis, words: `${basis}: of a modelled saving ${percent(middle)} is expected in bills, eight in ten between ${percent(low)} and ${percent(high)}` };
}

/** The mean of the dwellings' factors, as if all were wrong together: no dwelling makes up for another. */
export function overAll(each: readonly StatedRealisation[], none: StatedRealisation): StatedRealisation {
  if (each.length === 0) return none;
  const mean = (part: 'low' | 'middle' | 'high'): number => each.reduce((sum, r) => sum + r[part], 0) / each.length;
  const calibrated = each.filter((r) => r.basis !== none.basis).length;
  const basis = calibrated > 0 ? 'calibrated to bills' : none.basis;
  const [low, middle, high] = [mean('low'), mean('middle'), mean('high')];
  const partly = calibrated > 0 && calibrated < each.length ? ` (${String(calibrated)} of ${String(each.length)} dwellings)` : '';
  return { low, middle, high, basis, words: `${basis}${partly}: of a modelled saving ${percent(middle)} is expected in bills, eight in ten between ${percent(low)} and ${percent(high)}` };
}

/** What bills say of the savings of a portfolio, dwelling by dwelling. */
export function billsReview(known: KnownPortfolio, of: { readonly calibration: CalibrationReview; readonly weightOf: (building: string, planType: string) => number | null; readonly job: PlanJob }): BillsReview {
  const defaultOf = defaultsOf(of.job.catalogue);
  const planTypeOf = planTypesOf(of.job.portfolio.dwellings);
  const uncalibrated = stated(expectedRealisation(0, defaultOf), 'model, not calibrated');
  const byGroup = new Map<string, StatedRealisation>();
  const byDwelling: Record<string, StatedRealisation> = {};
  for (const d of known.dwellings) {
    const weight = of.weightOf(d.building, planTypeOf(d.id));
    if (weight === null) continue;
    const key = `${d.building}|${planTypeOf(d.id)}`;
    const found = byGroup.get(key) ?? stated(expectedRealisation(weight, defaultOf), 'calibrated to bills');
    byGroup.set(key, found);
    byDwelling[d.id] = found;
  }
  return { calibration: of.calibration, uncalibrated, byDwelling, verification: null, learned: null, plan: overAll(known.dwellings.map((d) => byDwelling[d.id] ?? uncalibrated), uncalibrated), setting: of.job.portfolio.settings.realisation ?? 'as-modelled' };
}
