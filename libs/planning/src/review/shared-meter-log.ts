import type { MeterResult, RoundLog } from '../plan/plan.js';

/** Why the options of a meter are valued again. */
export const sharedMeterLog = (round: number, m: Pick<MeterResult, 'meter' | 'togetherSaving_cents' | 'firstInSaving_cents'>): RoundLog => ({
  round,
  kind: 'shared meter',
  subject: m.meter,
  text: `together the meter saves ${(m.togetherSaving_cents / 100).toFixed(2)}, one by one ${(m.firstInSaving_cents / 100).toFixed(2)} a year: options valued again with the plan in place`,
});
