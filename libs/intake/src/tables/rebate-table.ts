import type { Rebate } from '#calc';
import { sectorsCell } from '../cells/sectors-cell.js';
import { dateCell } from '../cells/date-cell.js';
import { areaPriceCell, moneyCell } from '../cells/money-cell.js';
import { numberCell, shareCell } from '../cells/number-cell.js';
import { quantityCell } from '../cells/quantity-cell.js';
import { idCell, yesNoCell } from '../cells/word-cell.js';
import { needed, optional } from '../columns/column.js';
import { defineTable, doubtful } from '../columns/table.js';

const solarHeatGain = numberCell({ min: 0, max: 1 });

export const rebateTable = defineTable({
  name: 'rebates',
  about: 'One row per offer of a fund: so much per area of film that meets its terms, never more than its caps.',
  columns: {
    rebate: needed('rebate', { also: ['rebate id', 'program', 'programme', 'fund'], about: 'short code of the offer', example: 'R1', read: idCell }),
    building: optional('building', { also: ['building id', 'building code', 'bldg', 'property', 'site'], about: 'building it is for; blank is all', example: '', read: idCell }),
    rate_cents_m2: needed('rate', { also: ['rebate rate', 'amount'], unit: 'per_ft2', quantity: 'areaPrice', about: 'money per area of film', example: '1.50', read: areaPriceCell }),
    cap_cents: optional('cap', { also: ['most', 'limit'], about: 'most it pays for a project, in money', example: '5000', read: moneyCell() }),
    costShare: optional('cost_share', { also: ['share of cost'], quantity: 'share', about: 'most it pays as a share of the cost, 0…1', example: '0.5', read: shareCell }),
    sectors: optional('sides', { also: ['orientations', 'sectors', 'facades'], about: 'sides that count: compass words apart by ;, or ranges clockwise such as 45-315; blank is all', example: 'E;S;W', read: sectorsCell }),
    solarHeatGainBeforeAtLeast: optional('shgc_before_at_least', { also: ['existing shgc at least'], about: 'SHGC of the glass as found, at least', example: '0.6', read: solarHeatGain }),
    solarHeatGainAfterAtMost: optional('shgc_after_at_most', { also: ['new shgc at most'], about: 'SHGC with film, at most', example: '0.4', read: solarHeatGain }),
    areaAtLeast_m2: optional('area_at_least', { also: ['minimum area'], unit: 'ft2', quantity: 'area', about: 'least area of film of a project', example: '100', read: quantityCell('area', { min: 0 }) }),
    needsPreApproval: optional('needs_pre_approval', { also: ['pre approval', 'preapproval'], about: 'yes when a letter must be there before the work', example: 'yes', read: yesNoCell }),
    preApprovedOn: optional('pre_approved_on', { also: ['approved on'], about: 'day of that letter', example: '2026-08-01', read: dateCell }),
    deadline: optional('deadline', { also: ['work done by', 'ends'], about: 'last day on which work may be done', example: '2027-06-30', read: dateCell }),
  },
  records: (of, inventoryRow, say): readonly Rebate[] => {
    if (of.needsPreApproval === null && of.preApprovedOn === null) say('needsPreApproval', doubtful('pre-approval-not-known', 'yes or no', 'ask the fund; taken as no'));
    const { rebate, ...rest } = of;
    return [{ ...rest, id: rebate ?? '', rate_cents_m2: of.rate_cents_m2 ?? 0, needsPreApproval: of.needsPreApproval ?? of.preApprovedOn !== null, inventoryRow }];
  },
});
