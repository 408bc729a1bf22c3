import type { InventoryRow, Window, WindowShade } from '#calc';
import { facingCell } from '../cells/compass-cell.js';
import { dateCell, yearCell } from '../cells/date-cell.js';
import { lengthCell, lengthCell_m } from '../cells/length-cell.js';
import { numberCell, shareCell } from '../cells/number-cell.js';
import { quantityCell } from '../cells/quantity-cell.js';
import { glazingCell, idCell, textCell, wordCell, wordsCell, yesNoCell } from '../cells/word-cell.js';
import { needed, optional, type RowValues, type Said } from '../columns/column.js';
import { defineTable, doubtful, noted, wrong, type Say } from '../columns/table.js';
import { dwellingId, dwellingPlace, WINDOW_HEADERS } from './place.js';

// Sight sizes outside 2 in to 20 ft are slips of the pen; above 12 ft they are rare. Common practice, no source.
const SIGHT = { min_mm: 50, max_mm: 6100, usualMax_mm: 3700 };
const NEARBY = { min_mm: 0, max_mm: 15_000 };

const sight = (name: string, said: Said) => needed(name, { ...said, unit: 'in', quantity: 'length', read: lengthCell(SIGHT) });
const nearby = (name: string, said: Said) => optional(name, { unit: 'ft', ...said, quantity: 'length', read: lengthCell_m(NEARBY) });

export const windowColumns = {
  ...dwellingPlace,
  planType: optional('plan_type', { also: ['unit type', 'layout', 'floor plan', 'plan'], about: 'plan type this window belongs to, instead of a dwelling', example: 'EC-A', read: idCell }),
  mark: optional('mark', { also: WINDOW_HEADERS, about: 'mark of the window, kept for good; blank: one is made from room, side and size', example: 'W03', read: idCell }),
  room: optional('room', { also: ['location', 'space'], about: 'room it is in', example: 'bedroom', read: textCell }),
  facade: optional('facade', { also: ['facade elevation', 'elevation', 'elev', 'orientation', 'exposure', 'side', 'facing', 'azimuth', 'bearing', 'aspect', 'heading', 'azimuth deg'], about: 'side it looks to: compass word or degrees; of a plan type front, right, back or left, as seen by one who looks out of the front', example: 'W', read: facingCell }),
  tilt_deg: optional('tilt_deg', { also: ['tilt', 'slope'], about: 'slope of the glass: 90 wall, 0 roof light; blank is a wall', example: '90', read: numberCell({ min: 0, max: 180 }) }),
  width: sight('width', { also: ['wdth', 'glass width', 'sight width', 'pane width', 'w'], about: 'sight width of ONE pane, the glass that is seen', example: '35 1/2' }),
  height: sight('height', { also: ['hght', 'glass height', 'sight height', 'pane height', 'h'], about: 'sight height of ONE pane', example: '47 3/8' }),
  liteRows: optional('lite_rows', { also: ['rows', 'rows of lites'], about: 'panes above one another; blank is 1', example: '4', read: numberCell({ min: 1, max: 40, whole: true }) }),
  liteColumns: optional('lite_columns', { also: ['columns', 'columns of lites'], about: 'panes side by side; blank is 1', example: '3', read: numberCell({ min: 1, max: 40, whole: true }) }),
  count: optional('count', { also: ['qty', 'quantity', 'number of windows', 'no of windows'], about: 'equal windows this row stands for', example: '1', read: numberCell({ min: 1, max: 60, whole: true }) }),
  frameShare: optional('frame_share', { also: ['frame fraction'], quantity: 'share', about: 'share of the opening that is frame, 0…1', example: '0.15', read: shareCell }),
  glazing: optional('glazing', { also: ['glazing type', 'glass', 'glass type', 'pane type'], about: 'glazing KEY, or words for the kind of glass', example: 'single clear 1/8 in', read: glazingCell }),
  labelSolarHeatGain: optional('shgc', { also: ['label shgc', 'g value', 'solar factor', 'solar heat gain coefficient'], quantity: 'share', about: 'SHGC from the label, 0…1', example: '0.25', read: shareCell }),
  labelUFactor_W_m2K: optional('u_factor', { also: ['u value', 'u', 'label u factor'], unit: 'Btu_h_ft2F', quantity: 'uFactor', about: 'U-factor from the label', example: '0.30', read: quantityCell('uFactor', { min: 0.3, max: 9 }) }),
  overhangDepth_m: nearby('overhang_depth', { about: 'depth of the overhang or balcony above, out from the glass', example: '3' }),
  overhangGap_m: nearby('overhang_gap', { about: 'from the top of the glass up to the overhang', example: '1' }),
  finDepth_m: nearby('fin_depth', { about: 'depth of a fin or return wall beside the glass', example: '2' }),
  finGap_m: nearby('fin_gap', { about: 'from the side of the glass to the fin', example: '0.5' }),
  reveal_m: nearby('reveal', { unit: 'in', about: 'how far the glass stands back from the wall face', example: '4' }),
  insectScreenShare: optional('insect_screen_share', { also: ['screen share', 'insect screen'], quantity: 'share', about: 'share of the glass behind a screen outside, 0…1', example: '0.5', read: shareCell }),
  screenKind: optional('screen_kind', { also: ['kind of screen', 'screen type'], about: 'what the screen outside is; blank is an insect screen', example: 'solar', read: wordCell({ insect: ['bug', 'fly'], solar: ['sun', 'solar screen', 'sun screen'] }) }),
  blind: optional('blind', { also: ['blinds', 'interior blind', 'shade inside'], about: 'blind inside', example: 'light', read: wordCell({ none: ['no'], light: ['white'], medium: [], dark: [] }) }),
  sillHeight_m: nearby('sill_height', { about: 'from the floor up to the glass', example: '3' }),
  reach: optional('reach', { also: ['access', 'ladder'], about: 'how the crew reaches it', example: 'floor', read: wordCell({ floor: ['none', 'ground', 'no ladder'], ladder: ['yes', 'step ladder', 'stair'], 'over-furniture': ['over furniture', 'furniture'] }) }),
  flags: optional('flags', { also: ['notes on glass', 'glass flags'], about: 'what was seen, apart by ;', example: 'tempered-mark-seen;escape', read: wordsCell({ escape: ['egress'], 'tempered-mark-seen': ['tempered', 'tempered mark'], wired: [], laminated: [], patterned: ['textured'], fogged: ['fog'], cracked: ['crack'], 'old-seal': ['old seal'], 'fire-rated': ['fire rated'], skylight: ['roof light'], 'heavy-curtain': ['heavy curtain', 'curtain'] }) }),
  warrantyEnd: optional('warranty_end', { also: ['glass warranty end', 'warranty until'], about: 'day the glass maker\'s warranty ends', example: '2029-05-31', read: dateCell }),
  replacementYear: optional('replacement_year', { also: ['window replacement year'], about: 'year in which the window is due to be replaced', example: '2031', read: yearCell }),
  existingFilm: optional('existing_film', { also: ['film there', 'old film', 'as found film'], about: 'none or present', example: 'none', read: wordCell({ none: ['no'], present: ['yes', 'peeling'] }) }),
  existingFilmCondition: optional('existing_film_condition', { also: ['film condition', 'old film condition'], about: 'how the old film looks', example: 'peeling', read: textCell }),
  dropped: optional('dropped', { also: ['drop', 'removed'], about: 'yes: the plan type\'s window of this mark is not in this dwelling', example: 'no', read: yesNoCell }),
} as const;

/** A window as surveyed: it may not have its mark yet, and a dropped one may have no size. */
export type SurveyedWindow = Omit<Window, 'id' | 'mark'> & { readonly mark: string | null };

type Values = RowValues<typeof windowColumns>;

function shadeOf(of: Values, say: Say<typeof windowColumns>): WindowShade | null {
  const parts = [of.overhangDepth_m, of.overhangGap_m, of.finDepth_m, of.finGap_m, of.reveal_m];
  if (parts.every((part) => part === null)) return null;
  if (parts.some((part) => part === null)) {
    say(null, noted('shade-part-absent', 'overhang, fin and reveal', 'parts of the shade left blank beside filled ones are taken as not there'));
  }
  const [overhangDepth_m, overhangGap_m, finDepth_m, finGap_m, reveal_m] = parts.map((part) => part ?? 0) as [number, number, number, number, number];
  return { overhangDepth_m, overhangGap_m, finDepth_m, finGap_m, reveal_m };
}

function azimuthOf(of: Values, say: Say<typeof windowColumns>): number | null {
  if (of.facade === null) return null;
  const ofPlan = of.planType !== null && of.dwelling === null;
  const fits = of.facade.from === 'number' || (of.facade.from === 'front') === ofPlan;
  if (!fits) {
    say('facade', ofPlan
      ? wrong('plan-side-expected', 'front, right, back, left, or degrees clockwise from the plan\'s front', 'a plan type has no compass: give the side as seen from its own front')
      : wrong('compass-side-expected', 'a compass word or degrees', 'front and back hold for plan types only; give the compass side'));
  }
  return of.facade.azimuth_deg;
}

function lookOver(of: Values, say: Say<typeof windowColumns>): void {
  if (of.width !== null && of.height !== null && of.width.mm > 4 * of.height.mm) {
    say('width', doubtful('sizes-swapped', 'width before height', 'check that width and height are not swapped'));
  }
  if (of.existingFilm === 'present' && of.existingFilmCondition === null) {
    say('existingFilmCondition', doubtful('film-condition-missing', 'sound, peeling, scratched…', 'say how the old film looks: taking it off costs time'));
  }
  if ((of.labelSolarHeatGain === null) !== (of.labelUFactor_W_m2K === null) && of.glazing === null) {
    say('glazing', doubtful('label-incomplete', 'SHGC and U-factor together, or a glazing type', 'add the missing one; until then the glass is not known'));
  }
}

function placeOf(of: Values, say: Say<typeof windowColumns>): { readonly dwelling: string | null; readonly planType: string | null } | null {
  if (of.dwelling === null && of.planType !== null) return { dwelling: null, planType: of.planType };
  const place = dwellingId(of.building, of.dwelling);
  if (place !== null) return { dwelling: place.id, planType: null };
  say('dwelling', wrong('missing-value', 'building and dwelling, or a plan type', 'say where this window is'));
  return null;
}

function recordOf(of: Values, inventoryRow: InventoryRow, say: Say<typeof windowColumns>): SurveyedWindow | null {
  const place = placeOf(of, say);
  const azimuth_deg = azimuthOf(of, say);
  lookOver(of, say);
  if (place === null || of.width === null || of.height === null) return null;
  return {
    ...place, mark: of.mark, room: of.room, azimuth_deg, tilt_deg: of.tilt_deg, width: of.width, height: of.height,
    liteRows: of.liteRows, liteColumns: of.liteColumns, frameShare: of.frameShare, glazing: of.glazing,
    labelSolarHeatGain: of.labelSolarHeatGain, labelUFactor_W_m2K: of.labelUFactor_W_m2K, shade: shadeOf(of, say),
    insectScreenShare: of.insectScreenShare, screenKind: of.screenKind, blind: of.blind, sillHeight_m: of.sillHeight_m, reach: of.reach, flags: of.flags ?? [],
    warrantyEnd: of.warrantyEnd, replacementYear: of.replacementYear, existingFilm: of.existingFilm,
    existingFilmCondition: of.existingFilmCondition, dropped: of.dropped ?? false, inventoryRow,
  };
}

export const windowTable = defineTable({
  name: 'windows',
  about: 'One row per window of a dwelling or of a plan type. Sizes are the sight size of one pane.',
  columns: windowColumns,
  records: (of, inventoryRow, say): readonly SurveyedWindow[] => {
    const window = recordOf(of, inventoryRow, say);
    const count = of.count ?? 1;
    if (window === null) return [];
    if (count === 1) return [window];
    const { mark } = window;
    return Array.from({ length: count }, (_, i) => ({ ...window, mark: mark === null ? null : `${mark}-${i + 1}` }));
  },
});
