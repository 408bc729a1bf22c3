import type { ReferenceTable } from './reference-table.js';

/** Factors of a design manual: gain behind glass and venetian blind over that behind ordinary glass. */
export const oldBlindFactors: ReferenceTable<{ readonly glass: string }, { readonly noShade: number; readonly lightBlind: number; readonly mediumBlind: number; readonly darkBlind?: number }> = {
  of: 'calc/glass/glazing-optics',
  source: 'a 1960s air-conditioning system design manual, Part 1 Load Estimating, Tables 6/15 (solar heat gain through ordinary glass) and 16 (overall factors)',
  seen: 'in the source',
  tolerance: { why: 'reported, no pass line: the manual names no transmittance for its blinds and glass; the layer model is held against the trend' },
  rows: [
    { given: { glass: 'ordinary' }, expect: { noShade: 1.0, lightBlind: 0.56, mediumBlind: 0.65, darkBlind: 0.75 }, place: 'case acman16-ordinary; READ (factors), COMPUTED (IAC = shaded/unshaded)' },
    { given: { glass: 'regular plate 1/4 in' }, expect: { noShade: 0.94, lightBlind: 0.56, mediumBlind: 0.65, darkBlind: 0.74 }, place: 'case acman16-regular-plate-1-4-in; READ (factors), COMPUTED (IAC = shaded/unshaded)' },
    { given: { glass: 'heat absorbing 48-56 %' }, expect: { noShade: 0.73, lightBlind: 0.53, mediumBlind: 0.59, darkBlind: 0.62 }, place: 'case acman16-heat-absorbing-48-56-; READ (factors), COMPUTED (IAC = shaded/unshaded)' },
    { given: { glass: 'heat absorbing 56-70 %' }, expect: { noShade: 0.62, lightBlind: 0.51, mediumBlind: 0.54, darkBlind: 0.56 }, place: 'case acman16-heat-absorbing-56-70-; READ (factors), COMPUTED (IAC = shaded/unshaded)' },
    { given: { glass: 'double ordinary' }, expect: { noShade: 0.9, lightBlind: 0.54, mediumBlind: 0.61 }, place: 'case acman16-double-ordinary; READ (factors), COMPUTED (IAC = shaded/unshaded)' },
    { given: { glass: 'double 48-56 % outside, ordinary inside' }, expect: { noShade: 0.52, lightBlind: 0.36, mediumBlind: 0.39 }, place: 'case acman16-double-48-56-outside-ordinary-inside; READ (factors), COMPUTED (IAC = shaded/unshaded)' },
    { given: { glass: 'double 48-56 % outside, plate inside' }, expect: { noShade: 0.5, lightBlind: 0.36, mediumBlind: 0.39 }, place: 'case acman16-double-48-56-outside-plate-inside; READ (factors), COMPUTED (IAC = shaded/unshaded)' },
    { given: { glass: 'triple ordinary' }, expect: { noShade: 0.83, lightBlind: 0.48, mediumBlind: 0.56 }, place: 'case acman16-triple-ordinary; READ (factors), COMPUTED (IAC = shaded/unshaded)' },
  ],
};

/** Factor on the solar gain of curtains and blinds: C1 − C2 × SHGC of the glazing. */
export const curtainRegression: ReferenceTable<{ readonly kind: string }, { readonly c1: number; readonly c2: number }> = {
  of: 'calc/glass/glazing-optics',
  source: 'ASHRAE Handbook of Fundamentals 2021, ch. 15 table 14, as quoted',
  seen: 'quoted elsewhere',
  tolerance: { abs: 0.06, why: 'a straight line in SHGC alone through a table; it knows neither where the heat is taken up nor what the room face of the glass throws back. Worst of the bare glazings 0.056 (light, triple clear)' },
  rows: [
    { given: { kind: 'light' }, expect: { c1: 0.84, c2: 0.42 }, place: 'light curtains' },
    { given: { kind: 'medium' }, expect: { c1: 0.94, c2: 0.37 }, place: 'medium curtains' },
    { given: { kind: 'dark' }, expect: { c1: 0.98, c2: 0.25 }, place: 'dark curtains' },
  ],
};
