import { ticksOf_mm } from '#calc';
import type { OptionWindow } from '../options/option.js';
import type { Plan, PlanLine } from '../plan/plan.js';
import { pieceOf } from '../rolls/cut-list.js';
import { termsUsed } from './assumptions-of.js';
import type { Figure } from './figure.js';
import { part } from './figure.js';
import { digits } from './receipt-numbers.js';
import { type Receipt, type ReceiptStep, workedOut } from './receipt.js';
import { windowRows } from './survey-rows.js';

const EIGHTH_ticks = 1016;

/** One side of a piece in whole ticks of 1/320 mm, so that no eighth is added to a size that stands on one. */
function sideStep(label: string, sight: { readonly mm: number; readonly entered: string }, trim_mm: number): ReceiptStep {
  const [size, trim] = [ticksOf_mm(sight.mm), ticksOf_mm(trim_mm)];
  const eighths = Math.ceil((size + 2 * trim) / EIGHTH_ticks);
  return {
    label,
    substituted: `${sight.entered} = ${digits(sight.mm)} mm = ${String(size)} ticks; (${String(size)} + 2 × ${String(trim)}) ÷ ${String(EIGHTH_ticks)} = ${digits((size + 2 * trim) / EIGHTH_ticks)}, rounded up ${String(eighths)} eighths = ${digits(eighths / 8, 3)} in`,
    value: eighths / 8,
    unit: 'in',
  };
}

function sizeReceipt(plan: Plan, of: { readonly line: PlanLine; readonly window: OptionWindow; readonly id: string; readonly title: string }): Receipt {
  const { window, line } = of;
  const piece = pieceOf(window, plan.terms);
  const placed = plan.cuts.flatMap((c) => c.pieces).find((p) => p.window === window.window);
  const stated = placed === undefined ? `${piece.widthText} × ${piece.lengthText}` : `${placed.cutWidth} × ${placed.cutLength}`;
  const steps = [
    sideStep('width', { mm: window.width_mm, entered: window.enteredWidth }, plan.terms.trimPerEdge_mm),
    sideStep('length', { mm: window.height_mm, entered: window.enteredHeight }, plan.terms.trimPerEdge_mm),
  ];
  return {
    figure: of.id,
    title: of.title,
    value: stated,
    unit: 'in, width × length',
    formula: 'cut size = (sight size + 2 × trim per edge) rounded up to 1/8 in, in whole ticks of 1/320 mm (1/8 in = 1016 ticks); finished = sight − 2 × edge gap',
    steps,
    rows: windowRows([window], ['width', 'height']),
    assumptions: termsUsed(plan.terms, ['trimPerEdge_mm', 'edgeGap_mm']),
    compute: null,
    computeWhy: '`cut` takes pieces with their trim: the rounding above is by hand; where the piece lies on its roll is in the receipt of the rolls',
    worked: workedOut(stated, `${piece.widthText} × ${piece.lengthText}`, 'the piece was cut to another size'),
    see: [`rolls/${part(line.phase)}/${part(window.film)}/cost`],
  };
}

/** Cut size of each window of a line. */
export const cutSizes = (line: PlanLine): Figure[] =>
  line.windows.map((window) => {
    const about = { id: `window/${window.window}/cut-size`, title: `Cut size of ${window.window}` };
    return { ...about, receipt: ({ plan }) => sizeReceipt(plan, { ...about, line, window }) };
  });
