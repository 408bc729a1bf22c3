export { isFigure, nominalRate, presentValue, realRate, singlePresentValue, uniformPresentValue, type Missing } from './present-value.js';
export { modifiedRateOfReturn, rateOfReturn, ratesOfReturn } from './rate-of-return.js';
export { paybackYears } from './payback.js';
export { projectFlows, type Project } from './project-flows.js';
export { lifeCycle, projectLifeCycle, type LifeCycleResult, type LifeCycleTerms } from './life-cycle.js';
export { yearlyStream, type SavingState, type SavingStream, type StreamTerms, type StreamYear, type WindowLoss } from './saving-stream.js';
export { payerShares, type PayerShares } from './payer-shares.js';
export { depreciation, type DepreciationMethod, type DepreciationYear } from './depreciation.js';
export { rebate_cents, type RebateTerms } from './rebate.js';
