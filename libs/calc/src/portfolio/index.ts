export type * from './row.js';
export type * from './building.js';
export type * from './dwelling.js';
export type * from './window.js';
export type * from './film.js';
export type * from './meter.js';
export type * from './consent.js';
export type * from './portfolio.js';
