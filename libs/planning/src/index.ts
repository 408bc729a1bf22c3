export type * from './plan.js';
export type * from './option.js';
