import { type PayerRule, payerShares, splitCents, type Tariff, tariffClock, weightedPrice_cents_kWh } from '#calc';
import type { MeterPrices } from '../plan/plan.js';

interface MeterUse {
  readonly tariff: Tariff;
  readonly found: Float64Array;
  readonly planned: Float64Array;
  readonly payer: PayerRule;
  readonly saving_cents: number;
}

/** What the kWh of a meter are worth where the film saves them, beside what they cost on average, and who keeps the first year's saving. */
export function meterPrices({ tariff, found, planned, payer, saving_cents }: MeterUse): MeterPrices {
  const { saved_cents_kWh, average_cents_kWh } = weightedPrice_cents_kWh(tariffClock(tariff), { before_kWh: found, after_kWh: planned });
  const shares = payerShares(payer, 1);
  const [owner_cents = 0, tenant_cents = 0] = splitCents(saving_cents, [shares.owner, shares.tenant]);
  return {
    saved_cents_kWh: typeof saved_cents_kWh === 'number' ? saved_cents_kWh : null,
    average_cents_kWh: typeof average_cents_kWh === 'number' ? average_cents_kWh : null,
    why: typeof saved_cents_kWh === 'number' ? (typeof average_cents_kWh === 'number' ? null : average_cents_kWh.why) : saved_cents_kWh.why,
    owner_cents,
    tenant_cents,
  };
}
