export type * from './plan.js';
export type * from './option.js';
export type * from './payback.js';
export { askedPortfolio, type PlanAsk } from './asked-portfolio.js'; // what one plan may change
export { buildingWeather, type BuildingWeather } from './building-weather.js'; // a year for every building
export type { PlanJob } from './plan-job.js';
export { planPortfolio } from './plan-portfolio.js'; // the spine
export type { MeterLoadTask, Progress, Workers } from './workers.js'; // the heavy work, as an interface
export { workersHere } from './workers-here.js'; // in this thread
export type { DwellingResult, DwellingTask, FacadeSet } from './dwelling-task.js';
export type { OptionRoom } from './option-room.js';
export { optionBench, type OptionBench } from './dwelling-run.js'; // a thread's workplace
export { dwellingOptions, meterLoad_kWh } from './dwelling-options.js'; // one dwelling's options
export { PlanningService, type PlanOrder } from './planning.service.js'; // order → plan
