export { type HorizonPoint, type ShadeGeometry } from './geometry.js';
export { leafShare } from './leaf-season.js';
export { skyView } from './sky-view.js';
export { sunlitShare, sunOnGlass, type Sunlit, type SunlitGiven } from './sunlit.js';
export { shadeOnFacade, type FacadeShade } from './facade-year.js';
