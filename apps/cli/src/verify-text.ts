import type { VerifiedMeter, VerifyReview } from '#planning';
import { counted } from './said.js';

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

function meterLine(m: VerifiedMeter): string {
  const model = m.modelledShare === null ? '' : `, modelled ${percent(m.modelledShare)}`;
  return `  ${m.meter.padEnd(14)} ${m.building.padEnd(6)} ${percent(m.change.share).padStart(8)} ± ${percent(m.change.standardError)}${model}; ${counted(m.change.baselinePeriods, 'bill')} before, ${String(m.change.reportingPeriods)} after`;
}

/** Did it pay, in words first; then who was counted, who was not, and what was learned. */
export function verifyText(review: VerifyReview): string {
  const { verification, learned, money } = review;
  const group = (name: VerifiedMeter['group']): VerifiedMeter[] => verification.meters.filter((m) => m.group === name);
  const block = (title: string, lines: readonly string[]): string[] => (lines.length === 0 ? [] : ['', title, ...lines]);
  return [
    verification.words,
    ...(money === null ? [] : [money.words]),
    ...(verification.realisation === null ? [] : [`Bills show ${percent(verification.realisation.factor)} of the saving modelled by plan ${review.plan ?? ''} (${percent(verification.realisation.low)} to ${percent(verification.realisation.high)}).`]),
    ...block('Mind', verification.cautions.map((c) => `  ${c}`)),
    ...block('By building (share of use saved)', verification.buildings.map((b) => `  ${b.building}: ${'why' in b.saving ? b.saving.why : `${percent(b.saving.share)}, ${percent(b.saving.low)} to ${percent(b.saving.high)}`}; ${String(b.treated)} filmed against ${String(b.comparison)} of ${b.against}`)),
    ...block('Filmed meters: share of use no longer used, weather taken out', group('treated').map(meterLine)),
    ...block('Meters to compare with', group('comparison').map(meterLine)),
    ...block('Not counted', verification.leftOut.map((l) => `  ${l.meter}: ${l.why}`)),
    ...block('The film itself, by the meter behind the glass', review.filmReadings.map((r) => `  ${r.building} ${String(r.azimuth_deg)}°, ${r.glazing}, film ${r.film ?? 'not named'}: lets through ${percent(r.passes)} of what the bare glass does (${r.taken})`)),
    ...block('Learned for the next phase', learned.words.map((w) => `  ${w}`)),
  ].join('\n');
}
