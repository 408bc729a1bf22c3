import type { CalibratedGroup, MeterFit, Plan } from '#planning';
import type { Book } from '../book.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

/** Building by building, before and after, against the published limits. */
function fitnessText(plan: Plan): string[] {
  const { buildings, limits } = plan.bills!.calibration;
  return buildings.map((b) => `${b.building}, ${String(b.meters)} meters: CV(RMSE) ${percent(b.before.cvRmse)} before, ${percent(b.after.cvRmse)} after (limit ${percent(limits.cvRmse)}); NMBE ${percent(b.before.nmbe)} before, ${percent(b.after.nmbe)} after (limit ±${percent(limits.nmbe)}): ${b.isWithinLimits ? 'within the limits' : 'outside the limits'}.`);
}

function meterText(fit: MeterFit): string {
  const { split } = fit;
  if ('why' in split) return `${fit.meter}: not split, ${split.why}.`;
  const part = (of: { readonly kWh: number; readonly standardError_kWh: number }): string => `${of.kWh.toFixed(0)} ± ${of.standardError_kWh.toFixed(0)}`;
  return `${fit.meter}: base load ${part(split.base)}, cooling ${part(split.cooling)}, heating ${part(split.heating)} kWh a typical year; ${split.fit.model}, CV(RMSE) ${percent(split.fit.cvRmse)}, ${String(split.periods)} bills used, ${String(fit.leftOut.length)} left out${split.seesBase ? '' : '; no month without cooling'}.`;
}

/** What bills did to the model before the plan was made, group by group. */
export function calibrationSheet(book: Book, plan: Plan): void {
  const review = plan.bills;
  oneTableSheet<CalibratedGroup>(book, {
    name: SHEET.calibration,
    about: `${plan.name}: ${review?.calibration.words ?? 'model, not calibrated: this plan was made before bills were looked at'}`,
    notes:
      review === undefined
        ? []
        : [
            `${review.plan.words}. Without bills: ${review.uncalibrated.words.replace(/^[^:]*: /, '')}.`,
            'Dwellings of one plan type in one building are moved together, drawn towards building and portfolio; what one tenant does is not given to his dwelling. Errors are one standard error.',
            ...fitnessText(plan),
            ...review.calibration.notCompared.map((m) => `${m.meter} is not compared: ${m.why}.`),
            ...review.calibration.meters.map(meterText),
          ],
    columns: [
      { head: 'Building', unit: '', width: 10, value: (g) => g.building },
      { head: 'Plan type', unit: '', width: 16, value: (g) => g.planType },
      { head: 'Dwellings', unit: '', width: 10, format: FORMAT.whole, value: (g) => g.dwellings },
      { head: 'Meters compared', unit: '', width: 10, format: FORMAT.whole, value: (g) => g.meters },
      { head: 'Billed over modelled cooling, as seen', unit: 'ratio', width: 14, format: FORMAT.two, value: (g) => g.seenRatio ?? 'none of its own' },
      { head: 'after pooling', unit: 'ratio', width: 10, format: FORMAT.two, value: (g) => g.pooledRatio },
      { head: 'Decided by bills', unit: 'share', width: 10, format: FORMAT.percent, value: (g) => g.weight },
      { head: 'Modelled cooling before', unit: 'kWh/yr', width: 12, format: FORMAT.whole, value: (g) => g.modelledBefore_kWh },
      { head: 'after', unit: 'kWh/yr', width: 12, format: FORMAT.whole, value: (g) => g.modelledAfter_kWh },
      { head: 'What was moved', unit: 'of its first dwelling', width: 60, value: (g) => g.moved.map((m) => `${m.field} ${m.before} to ${m.after} ${m.unit}${m.atLimit ? ' (limit)' : ''}`).join('; ') },
      { head: 'What stays open', unit: '', width: 34, value: (g) => g.why ?? '' },
    ],
    rows: review?.calibration.groups ?? [],
    none: 'No bills could be compared with the model: nothing was moved.',
    frozenColumns: 2,
  });
}
