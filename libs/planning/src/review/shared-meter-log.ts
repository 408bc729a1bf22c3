import { dollarsText } from '#calc';
import type { MeterResult, RoundLog } from '../plan/plan.js';

/** Why the options of a meter are valued again. */
export const sharedMeterLog = (round: number, m: Pick<MeterResult, 'meter' | 'togetherSaving_cents' | 'firstInSaving_cents'>): RoundLog => ({
  round,
  kind: 'shared meter',
  subject: m.meter,
  text: `together the meter saves ${dollarsText(m.togetherSaving_cents)}, one by one ${dollarsText(m.firstInSaving_cents)} a year: options valued again with the plan in place`,
});
