export type * from './plan/plan.js';
export type * from './crew/work-order-types.js';
export type * from './crew/calendar-types.js';
export { bestUseNow, type NowAnswer, type NowQuestion, type NowUse } from './crew/best-use-now.js'; // some hours, some dwellings, film on the shelf
export type { StockRoll } from './rolls/cut-list.js';
export { filmOnShelf } from './crew/shelf.js'; // what some hours can be worked with
export { shadowLine, shadowQuestion, type ShadowLine, type ShadowQuestion } from './crew/shadow-line.js'; // where a shadow should fall
export { calendarFile } from './crew/calendar-file.js'; // working days as iCalendar
export { DEFECT_CODES, ENGLISH, inEnglish, planSentences, ROOM_NOT_NAMED, tell, told, toldWord, type Filling, type Holes, type Language, type Told } from './words/told.js'; // every sentence of a plan that a crew reads
export type * from './record/settled-work.js';
export { whatHappened, type Happened } from './record/happened.js'; // site records against a plan
export { settledWords } from './record/settled-words.js'; // what a plan made again starts from
export { afterWork, type AfterWork } from './record/after-work.js'; // what a new revision starts from
export type * from './rolls/cut-types.js';
export { relayPlan, type RelaidPlan, type RelaidRoll, type ReMeasured } from './rolls/relay-plan.js'; // field sizes against opened rolls
export type * from './options/option.js';
export type * from './energy/energy-types.js';
export type * from './review/payback.js';
export { spokenForWords, unspentWords, waitingDwellings } from './review/what-is-left.js'; // money left, and what waits
export { chanceWords } from './uncertainty/outlook-words.js'; // a share of draws in words
export { earnedInBillsWords } from './review/earned-in-bills.js'; // as modelled against expected in bills
export { npvExpected, type NpvExpected } from './review/npv-expected.js'; // the same in money
export { askedPortfolio, type PlanAsk } from './job/asked-portfolio.js'; // what one plan may change
export { buildingWeather, type BuildingWeather } from './job/building-weather.js'; // a year for every building
export type { PlanJob } from './job/plan-job.js';
export type * from './ledger/ledger-types.js';
export { ledgerReport, type LedgerBooks } from './ledger/ledger-report.js'; // money already spoken for
export { remainingCaps } from './ledger/remaining-caps.js';
export type * from './bills/review.js';
export { readTemperatures, type TemperaturesByPlace } from './bills/day-weather.js';
export { temperaturesBeside } from './bills/temperature-file.js';
export { billsJobOf } from './bills/bills-job.js'; // a portfolio with the weather its bills are held against
export { fitBills, type BillsJob, type MeterFit } from './bills/fit-bills.js'; // base load, cooling, heating of every meter
export { wholePlan } from './record/whole-plan.js'; // with the work of the revisions before
export { verifyPlan, type VerifiedMoney, type VerifyReview } from './bills/verify-plan.js'; // did it pay, and what was learned
export type { BuildingSaving, VerifiedMeter, Verification } from './bills/did-it-pay.js';
export { planPortfolio } from './plan-portfolio.js'; // the spine
export type { BetterPlan, ChooseHow, MeterLoadTask, Progress, Workers } from './workers.js'; // the heavy work, as an interface
export { workersHere } from './workers-here.js'; // in this thread
export type { DwellingResult, DwellingTask, FacadeSet } from './dwelling/dwelling-task.js';
export type { OptionRoom } from './dwelling/option-room.js';
export { optionBench, type OptionBench } from './dwelling/dwelling-run.js'; // a thread's workplace
export { dwellingOptions, meterLoad_kWh } from './dwelling/dwelling-options.js'; // one dwelling's options
export { checkedPlan, checkProof, type ProofCheck } from './choice/check-proof.js'; // the proof of a kept plan, again
export type * from './choice/explanations.js';
export type { ProofRecord } from './choice/proof-record.js';
export { dwellingEnergy, energyBench, type DwellingEnergy, type EnergyBench, type EnergyTask } from './energy/dwelling-energy.js'; // one set looked at closely
export { optionUse, type OptionUseTask, type SpanUse } from './dwelling/option-use.js'; // a line's use by month and price period
export type * from './review/line-uses.js';
export { drawnDwelling, type DrawnDwelling, type DrawnTask } from './uncertainty/drawn-dwelling.js'; // one dwelling under every draw
export type * from './uncertainty/outlook.js'; // how sure the plan is
export { PlanningService, type PlanOrder } from './planning.service.js'; // order → plan
export * from './receipt/index.js'; // any figure, opened to one page
