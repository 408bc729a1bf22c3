export { normalQuantile } from './normal-quantile.js'; // chance → standard deviations
export { drawnShare, drawnShares, type DrawKey } from './draw.js'; // (seed, what, for whom) and number → share
export { valueAt, type Distribution } from './distribution.js'; // share → value
export { quantileOf, shareReaching, spreadOf, type DrawSpread } from './spread.js'; // draws → nine in ten, middle, one in ten
export { influences, rankCorrelation, type Influence } from './influence.js'; // what moves a result
