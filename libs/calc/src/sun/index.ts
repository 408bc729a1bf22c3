export type { Site } from './site.js';
export { checkSite } from './site.js';
export { sunPosition, type SunPosition } from './position.js';
export { extraterrestrialNormal_W_m2, SOLAR_CONSTANT_W_m2 } from './extraterrestrial.js';
export { sunYear, type SunYear } from './year.js';
