export type { CutJob, CutPiece, CutResult, CutRoll, Placement, SeamProposal, Unplaced, UsedRoll, WidthTotal } from './job.js';
export { EDGE_GAP_mm, TRIM_PER_EDGE_mm, pieceOfPane, type PaneToCut, type PieceSize } from './piece.js';
export { cut } from './cut.js';
export { checkLayout, type LayoutCheck } from './layout-check.js';
