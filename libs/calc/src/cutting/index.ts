export type { CutJob, CutPiece, CutResult, CutRoll, Placement, SeamProposal, Unplaced, UsedRoll, WidthTotal } from './job.js';
export { EDGE_GAP_mm, TRIM_PER_EDGE_mm, pieceOfPane, type PaneToCut, type PieceSize } from './piece.js';
export { cut } from './cut.js';
export { checkLayout, type LayoutCheck } from './layout-check.js';
export { cutTogether, type TogetherJob, type TogetherResult } from './together.js';
export { buyFilm, offCuts, purchaseList, type FilmPurchase, type OffCut, type PurchaseLine } from './purchase.js';
export { nearMisses, type NearMiss } from './near-miss.js';
export { seeded } from './random.js';
export { relay, type OpenedRoll, type RelayJob, type RelayResult } from './relay.js';
