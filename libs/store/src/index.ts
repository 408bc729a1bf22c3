export { openStore, type StorePlace } from './open-store.js'; // a file, memory or PostgreSQL
export { StoreModule } from './store.module.js'; // the same for a Nest application
export { PortfolioStore, type PortfolioChanges, type StoreContents } from './portfolio-store.js'; // load and write
export type { WriteCounts } from './record-write.js';
export type { ListName } from './kept-kind.js';
export type { FileTakenIn, FileWithFindings, ImportFinding, ImportNote } from './import-log.js'; // what came in from which file, and what was found in it
export type { UndoCounts } from './import-undo.js'; // what came in, taken back
export { contentHash, type KeptPlan, type PlanHeading, type PlanToKeep } from './plan-shelf.js'; // plans, never edited
export type { Job } from './job-list.js'; // long work
export type { JobState } from './kept/job.js';
export { StoreFault } from './store-fault.js'; // what a person can put right, in one sentence
