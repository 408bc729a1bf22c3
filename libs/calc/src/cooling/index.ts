export { checkPlant, ratedOutdoor_degC, ratedWetBulb_degC, type Biquadratic, type PlantPerformance, type PlantSpeed, type PlantState } from './plant.js';
export { curveAt, type PlantAir } from './curve.js';
export { copOf_eer, copOf_kW_ton, degradationOf, ratedCop, seasonalChain, seasonOverRated, type SeasonalChain, type Why } from './efficiency.js';
export { coolingPlant, machineOf, type Machine, type PlantHour, type PlantHourGiven } from './plant-hour.js';
export { electricityRatio, latentLoad_W, plantCurves, plantOnWeather, sensibleLimit_W, type PlantCurves, type PlantOnWeather, type SpeedYear } from './plant-on-weather.js';
export { plantYear, runPlant, type PlantLoads, type PlantYear } from './plant-year.js';
export { heatingUse, type HeatingState, type HeatingUse } from './heating.js';
export { savingBand_kWh_ft2, savingWarnings, shareBand, type FilmSaving } from './sanity-band.js';
