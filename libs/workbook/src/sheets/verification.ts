import type { Plan, VerifiedMeter } from '#planning';
import type { Book } from '../book.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

function notesOf(plan: Plan): string[] {
  const { verification, learned } = plan.bills ?? {};
  if (verification === undefined || verification === null) return [];
  const buildings = verification.buildings.map((b) => `${b.building}: ${'why' in b.saving ? b.saving.why : `${percent(b.saving.share)} of use saved, ${percent(b.saving.low)} to ${percent(b.saving.high)}`}; ${String(b.treated)} filmed meters, ${b.against === 'nothing' ? 'none to compare with' : `${String(b.comparison)} of ${b.against} to compare with`}.`);
  const { realisation } = verification;
  return [
    verification.words,
    ...(realisation === null ? [] : [`Bills show ${percent(realisation.factor)} of the modelled saving, ${percent(realisation.low)} to ${percent(realisation.high)}.`]),
    ...buildings,
    ...verification.cautions.map((c) => `Mind: ${c}.`),
    ...(learned?.words ?? []),
    ...verification.leftOut.map((l) => `${l.meter} is not counted: ${l.why}.`),
  ];
}

/** Bills after the film against bills before it, meter by meter, with the answer above. */
export function verificationSheet(book: Book, plan: Plan): void {
  oneTableSheet<VerifiedMeter>(book, {
    name: SHEET.verification,
    about: `${plan.name}: did it pay? Use after the film against use before it in the same weather, beside meters without film`,
    notes: notesOf(plan),
    columns: [
      { head: 'Meter', unit: '', width: 16, value: (m) => m.meter },
      { head: 'Building', unit: '', width: 10, value: (m) => m.building },
      { head: 'Group', unit: '', width: 13, value: (m) => (m.group === 'treated' ? 'filmed' : 'to compare') },
      { head: 'Dwellings', unit: '', width: 10, format: FORMAT.whole, value: (m) => m.dwellings },
      { head: 'of these filmed', unit: '', width: 10, format: FORMAT.whole, value: (m) => m.filmedDwellings },
      { head: 'Use there would have been', unit: 'kWh', width: 13, format: FORMAT.whole, value: (m) => m.change.adjustedBaseline_kWh },
      { head: 'Use billed', unit: 'kWh', width: 11, format: FORMAT.whole, value: (m) => m.change.observed_kWh },
      { head: 'No longer used', unit: 'share', width: 10, format: FORMAT.percent, value: (m) => m.change.share },
      { head: 'Standard error', unit: 'share', width: 10, format: FORMAT.percent, value: (m) => m.change.standardError },
      { head: 'Modelled', unit: 'share', width: 10, format: FORMAT.percent, value: (m) => m.modelledShare ?? '' },
      { head: 'Bills before', unit: 'count', width: 8, format: FORMAT.whole, value: (m) => m.change.baselinePeriods },
      { head: 'Bills after', unit: 'count', width: 8, format: FORMAT.whole, value: (m) => m.change.reportingPeriods },
      { head: 'Weather', unit: '', width: 28, value: (m) => m.weather },
    ],
    rows: plan.bills?.verification?.meters ?? [],
    none: 'No film is noted on a dwelling with bills before and after it: nothing can be said yet.',
    frozenColumns: 1,
  });
}
