import type { ReferenceTable } from './reference-table.js';

/** One glass surface at an angle. */
export const surfaceCases: ReferenceTable<{ readonly refractiveIndex: number; readonly incidence_deg: number }, { readonly reflectance: number; readonly perpendicular?: number; readonly parallel?: number; readonly refraction_deg?: number }> = {
  of: 'calc/glass/clear-sheet',
  source: 'Duffie & Beckman, Solar Engineering of Thermal Processes, ch. 5 (Examples 5.1.1, 5.3.1)',
  seen: 'from memory',
  tolerance: { abs: 1e-05, why: 'printed to five or six digits; angle to 1e-6 degrees' },
  rows: [
    { given: { refractiveIndex: 1.526, incidence_deg: 0 }, expect: { reflectance: 0.043362 }, place: 'case fresnel-normal-1.526; FROM MEMORY (0.0434) and COMPUTED' },
    { given: { refractiveIndex: 1.526, incidence_deg: 60 }, expect: { reflectance: 0.093463, perpendicular: 0.185478, parallel: 0.001448, refraction_deg: 34.577007 }, place: 'case fresnel-60-1.526; FROM MEMORY (34.58, 0.185, 0.001, 0.093) and COMPUTED' },
  ],
};

/** An uncoated sheet at an angle, from its index and absorption. */
export const sheetCases: ReferenceTable<{ readonly refractiveIndex: number; readonly absorption: number; readonly incidence_deg: number }, { readonly T: number; readonly R: number; readonly A: number }> = {
  of: 'calc/glass/clear-sheet',
  source: 'Duffie & Beckman, Solar Engineering of Thermal Processes, ch. 5 (Examples 5.1.1, 5.3.1)',
  seen: 'computed from the stated formula',
  tolerance: { abs: 1e-05, why: 'printed to six digits' },
  rows: [
    { given: { refractiveIndex: 1.526, absorption: 0.0736, incidence_deg: 60 }, expect: { T: 0.768266, R: 0.147045, A: 0.084689 }, place: 'case single-cover-60; FROM MEMORY (0.915, 0.768, 0.147, 0.085) and COMPUTED' },
    { given: { refractiveIndex: 1.526, absorption: 0.1, incidence_deg: 30 }, expect: { T: 0.822311, R: 0.07773, A: 0.099958 }, place: 'case slab-KL0.1-30; COMPUTED' },
    { given: { refractiveIndex: 1.526, absorption: 0.1, incidence_deg: 45 }, expect: { T: 0.804199, R: 0.089757, A: 0.106044 }, place: 'case slab-KL0.1-45; COMPUTED' },
    { given: { refractiveIndex: 1.526, absorption: 0.1, incidence_deg: 70 }, expect: { T: 0.631753, R: 0.252391, A: 0.115856 }, place: 'case slab-KL0.1-70; COMPUTED' },
  ],
};

/** Index and absorption from figures at normal incidence. */
export const sheetMaterials: ReferenceTable<{ readonly solarTransmittance: number; readonly reflectance: number }, { readonly refractiveIndex: number; readonly absorption: number }> = {
  of: 'calc/glass/clear-sheet',
  source: 'a public engineering reference, window calculation module',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.0001, why: 'printed to five digits' },
  rows: [
    { given: { solarTransmittance: 0.834, reflectance: 0.075 }, expect: { refractiveIndex: 1.52067, absorption: 0.09582 }, place: 'case invert-clear3; READ (formulas), COMPUTED (numbers)' },
    { given: { solarTransmittance: 0.771, reflectance: 0.07 }, expect: { refractiveIndex: 1.51929, absorption: 0.17451 }, place: 'case invert-clear6; READ (formulas), COMPUTED (numbers)' },
    { given: { solarTransmittance: 0.46, reflectance: 0.05 }, expect: { refractiveIndex: 1.50512, absorption: 0.69393 }, place: 'case invert-grey6; READ (formulas), COMPUTED (numbers)' },
  ],
};

/** Sheets known by their normal figures, at an angle. */
export const sheetsByAngle: ReferenceTable<{ readonly solarTransmittance: number; readonly reflectance: number; readonly incidence_deg: number }, { readonly T: number; readonly R: number; readonly A: number }> = {
  of: 'calc/glass/pane-at-angle',
  source: 'a public engineering reference, window calculation module',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.0001, why: 'printed to five digits' },
  rows: [
    { given: { solarTransmittance: 0.834, reflectance: 0.075, incidence_deg: 50 }, expect: { T: 0.79647, R: 0.09928, A: 0.10424 }, place: 'case invert-clear3-50; COMPUTED' },
    { given: { solarTransmittance: 0.771, reflectance: 0.07, incidence_deg: 50 }, expect: { T: 0.72676, R: 0.09251, A: 0.18073 }, place: 'case invert-clear6-50; COMPUTED' },
    { given: { solarTransmittance: 0.771, reflectance: 0.07, incidence_deg: 70 }, expect: { T: 0.57261, R: 0.23719, A: 0.1902 }, place: 'case invert-clear6-70; COMPUTED' },
    { given: { solarTransmittance: 0.65, reflectance: 0.06, incidence_deg: 50 }, expect: { T: 0.59513, R: 0.07985, A: 0.32502 }, place: 'case invert-bronze3-50; COMPUTED' },
    { given: { solarTransmittance: 0.65, reflectance: 0.06, incidence_deg: 70 }, expect: { T: 0.45618, R: 0.21206, A: 0.33176 }, place: 'case invert-bronze3-70; COMPUTED' },
    { given: { solarTransmittance: 0.46, reflectance: 0.05, incidence_deg: 70 }, expect: { T: 0.29056, R: 0.18792, A: 0.52152 }, place: 'case invert-grey6-70; COMPUTED' },
  ],
};

/** A sheet in light from the whole half-space. */
export const hemisphericalSheet: ReferenceTable<{ readonly refractiveIndex: number; readonly absorption: number }, { readonly T: number; readonly R: number }> = {
  of: 'calc/glass/glazing-optics',
  source: 'closed formula stated in the text, evaluated independently in double precision',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.0005, why: 'printed to four digits; another ten-degree rule differs by a few 1e-3' },
  rows: [
    { given: { refractiveIndex: 1.526, absorption: 0.1 }, expect: { T: 0.7525, R: 0.1417 }, place: 'case slab-KL0.1-hemi; COMPUTED' },
  ],
};

/** Fitted curves of coated glass, as fitted. */
export const coatedCurves: ReferenceTable<{ readonly incidence_deg: number }, { readonly clear: number; readonly bronze: number }> = {
  of: 'calc/glass/coated-angle',
  source: 'a public engineering reference, window calculation module',
  seen: 'in the source',
  tolerance: { abs: 1e-05, why: 'printed to six digits' },
  rows: [
    { given: { incidence_deg: 40 }, expect: { clear: 0.981411, bronze: 0.959665 }, place: 'case coated-poly-40; READ (coefficients), COMPUTED' },
    { given: { incidence_deg: 60 }, expect: { clear: 0.9003, bronze: 0.849531 }, place: 'case coated-poly-60; READ (coefficients), COMPUTED' },
  ],
};
