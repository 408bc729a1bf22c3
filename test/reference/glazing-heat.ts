import type { ReferenceTable } from './reference-table.js';

/** Heat passed inward by the EN 410 rules. */
export const secondaryHeats: ReferenceTable<{ readonly solarTransmittance: number; readonly layerAbsorptance: readonly number[]; readonly outdoor_W_m2K: number; readonly indoor_W_m2K: number; readonly gaps_m2K_W: readonly never[] | readonly number[] }, { readonly qi: number; readonly g: number }> = {
  of: 'calc/glass/inward-heat',
  source: 'EN 410:2011 / ISO 9050:2003 solar factor',
  seen: 'from memory',
  tolerance: { abs: 1e-06, why: 'printed to six digits' },
  rows: [
    { given: { solarTransmittance: 0.83, layerAbsorptance: [0.09], outdoor_W_m2K: 23, indoor_W_m2K: 8, gaps_m2K_W: [] }, expect: { qi: 0.023226, g: 0.853226 }, place: 'case en410-single; FROM MEMORY (formula), COMPUTED' },
    { given: { solarTransmittance: 0.46, layerAbsorptance: [0.49], outdoor_W_m2K: 23, indoor_W_m2K: 8, gaps_m2K_W: [] }, expect: { qi: 0.126452, g: 0.586452 }, place: 'case en410-single-absorbing; FROM MEMORY (formula), COMPUTED' },
    { given: { solarTransmittance: 0.703296, layerAbsorptance: [0.09649, 0.072257], outdoor_W_m2K: 23, indoor_W_m2K: 8.0, gaps_m2K_W: [0.1699999983] }, expect: { qi: 0.057967, g: 0.761263 }, place: 'case en410-double-clear3; FROM MEMORY (formula), COMPUTED' },
    { given: { solarTransmittance: 0.206032, layerAbsorptance: [0.120686, 0.326217], outdoor_W_m2K: 23, indoor_W_m2K: 8.0, gaps_m2K_W: [0.1699999983] }, expect: { qi: 0.221248, g: 0.427279 }, place: 'case en410-double-filmed-inner; FROM MEMORY (formula), COMPUTED' },
    { given: { solarTransmittance: 0.197, layerAbsorptance: [0.117, 0.368], outdoor_W_m2K: 23, indoor_W_m2K: 4.125687, gaps_m2K_W: [0.1699999983] }, expect: { qi: 0.183492, g: 0.380492 }, place: 'case en410-double-filmed-inner-lowe-film; FROM MEMORY (formula), COMPUTED' },
  ],
};

/** Room-side coefficient by emissivity, EN 410. */
export const roomFilms: ReferenceTable<{ readonly emissivity: number }, { readonly hi: number }> = {
  of: 'calc/glass/inward-heat',
  source: 'EN 410:2011 / ISO 9050:2003 solar factor',
  seen: 'from memory',
  tolerance: { abs: 1e-05, why: 'printed to six digits' },
  rows: [
    { given: { emissivity: 0.1 }, expect: { hi: 4.12569 }, place: 'case hi-from-emissivity; FROM MEMORY' },
  ],
};

/** Single panes in summer: inward share and solar heat gain. */
export const singleHeatGains: ReferenceTable<{ readonly T: number; readonly R: number; readonly roomEmissivity: number }, { readonly N: number; readonly SHGC: number }> = {
  of: 'calc/glass/inward-heat',
  source: 'closed formula stated in the text, evaluated independently in double precision',
  seen: 'computed from the stated formula',
  tolerance: { abs: 1e-05, why: 'printed to five digits' },
  rows: [
    { given: { T: 0.834, R: 0.075, roomEmissivity: 0.84 }, expect: { N: 0.2908, SHGC: 0.86046 }, place: 'case single-summer-clear3; COMPUTED' },
    { given: { T: 0.771, R: 0.07, roomEmissivity: 0.84 }, expect: { N: 0.2908, SHGC: 0.81724 }, place: 'case single-summer-clear6; COMPUTED' },
    { given: { T: 0.49, R: 0.05, roomEmissivity: 0.84 }, expect: { N: 0.2908, SHGC: 0.62377 }, place: 'case single-summer-bronze6; COMPUTED' },
    { given: { T: 0.11, R: 0.56, roomEmissivity: 0.72 }, expect: { N: 0.27219, SHGC: 0.19982 }, place: 'case single-summer-film-R56; COMPUTED' },
    { given: { T: 0.23, R: 0.34, roomEmissivity: 0.1 }, expect: { N: 0.15803, SHGC: 0.29795 }, place: 'case single-summer-film-lowe; COMPUTED' },
  ],
};

/** Double clear in summer by a full balance of radiation and convection. */
export const doubleHeatGain: ReferenceTable<{ readonly solarTransmittance: number; readonly layerAbsorptance: readonly number[] }, { readonly solarHeatGain: number }> = {
  of: 'calc/glass/glazing-optics',
  source: 'open reference code of a national laboratory example data: generic clear glass spectra 3.048 mm (id 102) and 5.715 mm (id 103), ASTM G173 and E891 spectra',
  seen: 'in the source',
  tolerance: { abs: 0.003, why: 'fixed surface coefficients and gap here, an iterated balance there: 0.003 of heat gain' },
  rows: [
    { given: { solarTransmittance: 0.703296, layerAbsorptance: [0.096489921, 0.072256759] }, expect: { solarHeatGain: 0.763304 }, place: 'case iso15099-double-summer; READ' },
  ],
};

/** Single clear in wind by a full balance; our fixed coefficients are not those of that wind. */
export const windySingle: ReferenceTable<{ readonly solarTransmittance: number; readonly absorptance: number; readonly outdoor_W_m2K: number; readonly indoor_W_m2K: number }, { readonly solarHeatGain: number }> = {
  of: 'calc/glass/inward-heat',
  source: 'open reference code of a national laboratory example data: generic clear glass spectra 3.048 mm (id 102) and 5.715 mm (id 103), ASTM G173 and E891 spectra',
  seen: 'in the source',
  tolerance: { abs: 0.002, why: 'heat gain with the inward share 0.213 of fixed coefficients 30.7 and 8.3 against 0.202 of the balance: 0.001 of heat gain' },
  rows: [
    { given: { solarTransmittance: 0.831249, absorptance: 0.094189159572, outdoor_W_m2K: 30.7, indoor_W_m2K: 8.3 }, expect: { solarHeatGain: 0.850291 }, place: 'case iso15099-single; READ (SHGC, U), COMPUTED (fraction)' },
  ],
};

/** Bare and tinted-film 4 mm clear as a laboratory published them. */
export const laboratoryPanes: ReferenceTable<{ readonly T: number; readonly R: number; readonly emissivityRoom: number }, { readonly SHGC: number }> = {
  of: 'calc/glass/inward-heat',
  source: 'an accredited glass-testing laboratory web page, Example 1: 4 mm clear glass alone and with a tinted solar-control film',
  seen: 'in the source',
  tolerance: { abs: 0.02, why: 'fixed inward share; the hotter filmed pane raises it, which is worth 0.014 here' },
  rows: [
    { given: { T: 0.828, R: 0.075, emissivityRoom: 0.847 }, expect: { SHGC: 0.856 }, place: 'case lab-bare-4mm; READ' },
    { given: { T: 0.439, R: 0.057, emissivityRoom: 0.894 }, expect: { SHGC: 0.599 }, place: 'case lab-tinted-film-4mm; READ' },
  ],
};

/** U-factor and room face on a winter night. */
export const winterFaces: ReferenceTable<{ readonly roomEmissivity: number; readonly hc: number; readonly hrPerEmissivity: number; readonly ho: number; readonly glassR: number; readonly Tin: number; readonly Tout: number }, { readonly hi: number; readonly U: number; readonly U_ip: number; readonly innerSurfaceC: number }> = {
  of: 'calc/glass/inward-heat',
  source: 'closed formula stated in the text, evaluated independently in double precision',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.002, why: 'printed to four digits' },
  rows: [
    { given: { roomEmissivity: 0.84, hc: 3.1, hrPerEmissivity: 5.4, ho: 29, glassR: 0.003, Tin: 21, Tout: -7 }, expect: { hi: 7.636, U: 5.9368, U_ip: 1.0455, innerSurfaceC: -0.769 }, place: 'case winter-bare; COMPUTED' },
    { given: { roomEmissivity: 0.05, hc: 3.3, hrPerEmissivity: 5.4, ho: 29, glassR: 0.003, Tin: 21, Tout: -7 }, expect: { hi: 3.57, U: 3.1487, U_ip: 0.5545, innerSurfaceC: -3.695 }, place: 'case winter-lowe-film-0.05; COMPUTED' },
  ],
};

/** Dew point of room air. */
export const dewPoints: ReferenceTable<{ readonly air_degC: number; readonly relativeHumidity: number }, { readonly dewC: number }> = {
  of: 'calc/glass/inward-heat',
  source: 'Magnus formula, 17.62 and 243.12',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.01, why: 'printed to 0.001 °C' },
  rows: [
    { given: { air_degC: 21, relativeHumidity: 0.3 }, expect: { dewC: 2.749 }, place: 'case dewpoint-21C-30; COMPUTED' },
    { given: { air_degC: 21, relativeHumidity: 0.4 }, expect: { dewC: 6.877 }, place: 'case dewpoint-21C-40; COMPUTED' },
    { given: { air_degC: 21, relativeHumidity: 0.5 }, expect: { dewC: 10.175 }, place: 'case dewpoint-21C-50; COMPUTED' },
  ],
};
