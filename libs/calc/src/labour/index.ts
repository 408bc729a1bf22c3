export type { TimeModel } from './time-model.js';
export { installMinutes, labour_cents, type InstallMinutes, type PaneWork, type PersonMinutes } from './install-minutes.js';
export { recalibrated, type RecalibratedTime, type VisitActual } from './recalibrated.js';
