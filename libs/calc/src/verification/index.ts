export { degreeDays_K, type MeteredPeriod } from './metered-period.js';
export { datedPeriods, type DailyTemperatures, type DatedUse } from './dated-periods.js';
export { leastSquares, type LinearFit } from './least-squares.js';
export { fitStatistics, modelledUse_kWh, type FitStatistics, type UseFit, type UseModel } from './use-model.js';
export { changePointFit } from './change-point-fit.js';
export { degreeDayFit, searchedDegreeDayFit, type BalancePoints } from './degree-day-fit.js';
export { studentT } from './student-t.js';
export { meteredSaving, type MeteredSaving } from './metered-saving.js';
export { coefficientCovariance } from './coefficient-errors.js';
export { useSplit, type TriedModel, type UsePart, type UseSplit } from './use-split.js'; // base load, cooling, heating with errors
export { partialPooling, type Pooled, type PooledMember, type PoolingSpreads, type Posterior } from './partial-pooling.js';
export { billFitness, calibrationMoves, type BillFitness, type MovableParameter, type ParameterMove } from './calibration.js';
export { calibratedRealisation, learnedRealisation, realisationOf, studiedRealisation, type CalibrationTerms, type LogSpread, type Realisation, type SavingStudy } from './realisation.js';
export { meterChange, type MeterChange } from './meter-change.js';
export { groupMean, pooledSaving, type GroupMean, type GroupMember, type PooledSaving } from './pooled-saving.js'; // did it pay
export { drawnOrder } from './drawn-order.js';
export { defectShare } from './defect-share.js';
export { billDays, usableBills, type BillGap, type BillTrouble, type BillTroubleKind, type LeftOutBill, type UsableBills } from './usable-bills.js';
export { oddAmounts, type OddAmount } from './bill-amounts.js';
