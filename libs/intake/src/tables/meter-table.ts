import type { DwellingMeter, Meter, PayerRule } from '#calc';
import { numberCell, shareCell } from '../cells/number-cell.js';
import { idCell, textCell, wordCell } from '../cells/word-cell.js';
import { needed, optional, type RowValues } from '../columns/column.js';
import { defineTable, noted, wrong, type Say } from '../columns/table.js';
import { dwellingId, dwellingPlace } from './place.js';

const KINDS = { owner: ['landlord', 'master meter'], tenant: ['resident'], 'sub-meter': ['submeter', 'submetered'], ratio: ['rubs', 'ratio billed', 'billed back'], common: ['common area', 'house meter'] } as const;
const USES = { all: ['whole', 'total'], cooling: ['ac', 'chilled water'], heating: ['heat'], common: ['common areas', 'house'] } as const;

export const meterColumns = {
  meter: needed('meter', { also: ['meter id', 'meter no', 'meter number'], about: 'id of the meter, kept as typed', example: 'EC-M1', read: idCell }),
  building: needed('building', { also: dwellingPlace.building.also, about: 'code of the building', example: 'EC', read: idCell }),
  tariff: optional('tariff', { also: ['rate', 'rate plan', 'tariff label'], about: 'label of a tariff in tariffs.json', example: 'FLAT', read: textCell }),
  use: optional('use', { also: ['serves', 'meter use'], about: 'what it measures', example: 'all', read: wordCell(USES) }),
  payerKind: optional('payer_rule', { also: ['payer', 'who pays', 'responsibility'], about: 'who pays the bill', example: 'owner', read: wordCell(KINDS) }),
  ownerShare: optional('owner_share', { also: ['owner pays', 'landlord share'], quantity: 'share', about: 'share of the bill that stays with the owner, 0…1', example: '1', read: shareCell }),
  tenantShare: optional('tenant_share', { also: ['tenant pays', 'resident share'], quantity: 'share', about: 'share the tenant pays; both must sum to 1', example: '0', read: shareCell }),
  resetLag_yr: optional('reset_lag_yr', { also: ['reset lag', 'lag'], about: 'years until billed shares follow a lower use', example: '1', read: numberCell({ min: 0, max: 20 }) }),
  vacancyShare: optional('vacancy_share', { also: ['vacancy'], quantity: 'share', about: 'share of the time dwellings stand empty and the owner pays', example: '0.05', read: shareCell }),
  vacancyMonths: optional('vacancy_months', { also: ['months vacant', 'empty months'], about: 'months of a year dwellings stand empty, in place of vacancy_share', example: '', read: numberCell({ min: 0, max: 12 }) }),
  baseLoad_kWh_yr: optional('base_load_kwh_yr', { also: ['base load', 'base load kwh'], about: 'yearly electricity of ONE dwelling served, other than cooling and heating', example: '2600', read: numberCell({ min: 0, max: 200_000 }) }),
  usagePoint: optional('usage_point', { also: ['service point', 'usage point id'], about: 'what the supplier\'s files of readings (XML) call this meter: its title or the end of its link', example: '', read: textCell }),
} as const;

const OWNER_SHARE = { owner: 1, tenant: 0, 'sub-meter': 0, common: 1 } as const;

const MONTHS = 12;
/** Two ways of saying it must say the same to a day or so. */
const VACANCY_ROOM = 0.005;

function vacancyOf({ vacancyShare, vacancyMonths }: RowValues<typeof meterColumns>, say: Say<typeof meterColumns>): number {
  const byMonths = vacancyMonths === null ? null : vacancyMonths / MONTHS;
  if (vacancyShare !== null && byMonths !== null && Math.abs(vacancyShare - byMonths) > VACANCY_ROOM) {
    say('vacancyMonths', wrong('vacancy-twice', `one of the two, or months that are the share of a year (${(vacancyShare * MONTHS).toFixed(1)})`, 'take one of the two out'));
  }
  return byMonths ?? vacancyShare ?? 0;
}

function payerRule(of: RowValues<typeof meterColumns>, say: Say<typeof meterColumns>): PayerRule | null {
  const { payerKind, ownerShare, tenantShare } = of;
  if (payerKind === null && ownerShare === null && tenantShare === null) return null;
  if (ownerShare !== null && tenantShare !== null && Math.abs(ownerShare + tenantShare - 1) > 1e-6) {
    const sum_pct = Math.round((ownerShare + tenantShare) * 1000) / 10;
    say('ownerShare', wrong('payer-shares', 'owner and tenant shares that sum to 1', `they sum to ${sum_pct} %; correct one of them`));
    return null;
  }
  const kind = payerKind ?? 'ratio';
  const share = ownerShare ?? (tenantShare === null ? (kind === 'ratio' ? null : OWNER_SHARE[kind]) : 1 - tenantShare);
  if (share === null) {
    say('ownerShare', wrong('missing-value', 'the owner\'s share of a bill that is passed on by ratio', 'fill in owner_share or tenant_share'));
    return null;
  }
  if (of.resetLag_yr === null && kind === 'ratio') {
    say('resetLag_yr', noted('reset-lag-absent', 'years until the ratio follows a lower use', 'taken as at once (0 years)'));
  }
  return { id: `${of.meter ?? ''} ${kind}`, kind, ownerShare: share, resetLag_yr: of.resetLag_yr ?? 0, vacancyShare: vacancyOf(of, say) };
}

export const meterTable = defineTable({
  name: 'meters',
  about: 'One row per electricity meter.',
  columns: meterColumns,
  records: (of, inventoryRow, say): readonly Meter[] => {
    if (of.use === null) say('use', noted('meter-use-assumed', 'all, cooling, heating or common', 'taken as all use'));
    return [{
      id: of.meter ?? '', building: of.building ?? '', tariff: of.tariff, payerRule: payerRule(of, say), use: of.use ?? 'all',
      baseLoad_kWh_yr: of.baseLoad_kWh_yr, usagePoint: of.usagePoint, inventoryRow,
    }];
  },
});

export const dwellingMeterTable = defineTable({
  name: 'dwelling-meters',
  about: 'One row per dwelling and meter that serves it.',
  columns: { ...dwellingPlace, meter: meterColumns.meter },
  records: (of, inventoryRow, say): readonly DwellingMeter[] => {
    const place = dwellingId(of.building, of.dwelling);
    if (place !== null) return [{ dwelling: place.id, meter: of.meter ?? '', inventoryRow }];
    say('dwelling', wrong('missing-value', 'building and dwelling', 'name the dwelling'));
    return [];
  },
});
