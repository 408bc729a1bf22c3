export type * from './hourly-year.js';
export { MONTH_DAYS, yearOfDayTypes, type DayType, type DayTypeClimate } from './day-types.js';
export { dewPointOf_degC, relativeHumidityOf, saturationPressure_Pa, standardPressure_Pa, wetBulb_degC } from './psychrometrics.js';
export * from './extremes.js';
