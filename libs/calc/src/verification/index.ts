export { degreeDays_K, type MeteredPeriod } from './metered-period.js';
export { datedPeriods, type DailyTemperatures, type DatedUse } from './dated-periods.js';
export { leastSquares, type LinearFit } from './least-squares.js';
export { fitStatistics, modelledUse_kWh, type FitStatistics, type UseFit, type UseModel } from './use-model.js';
export { changePointFit } from './change-point-fit.js';
export { degreeDayFit, searchedDegreeDayFit, type BalancePoints } from './degree-day-fit.js';
export { studentT } from './student-t.js';
export { meteredSaving, type MeteredSaving } from './metered-saving.js';
