export { relativeAirMass } from './air-mass.js';
export { clearSky, type ClearSky, type ClearSkyGiven } from './clear-sky.js';
export { diffuseShare } from './diffuse-share.js';
export { cosIncidence, irradianceOnFacade, type FacadeHour, type FacadeLight, type SkyModel } from './facade-hour.js';
export { facadeSky, skyYear, type FacadeAt, type FacadeSky, type SkyYear } from './facade-year.js';
export { clearDayGain, largestClearDayGain, type ClearDayGain, type ClearDayWindow } from './solar-gain-factor.js';
