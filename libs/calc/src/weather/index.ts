export type * from './hourly-year.js';
