export type * from './hourly-year.js';
export { MONTH_DAYS, yearOfDayTypes, type DayType, type DayTypeClimate } from './day-types.js';
export { relativeHumidityOf, saturationPressure_Pa, standardPressure_Pa, wetBulb_degC } from './psychrometrics.js';
