import type { ReferenceTable } from './reference-table.js';

/** Layers one behind the other, some alike from neither side. */
export const layerCases: ReferenceTable<{ readonly layers: readonly ({ readonly solarTransmittance: number; readonly frontReflectance: number; readonly backTransmittance: number; readonly backReflectance: number })[] }, { readonly solarTransmittance: number; readonly frontReflectance: number; readonly absorptance?: number; readonly backTransmittance?: number; readonly backReflectance?: number; readonly layerAbsorptance?: readonly number[]; readonly layerAbsorptanceFromBack?: readonly number[] }> = {
  of: 'calc/glass/layers',
  source: 'open reference code of a national laboratory example data: generic clear glass spectra 3.048 mm (id 102) and 5.715 mm (id 103), ASTM G173 and E891 spectra; a public engineering reference, window calculation module',
  seen: 'in the source',
  tolerance: { abs: 1e-06, why: 'printed to six digits or more' },
  rows: [
    { given: { layers: [{ solarTransmittance: 0.46, frontReflectance: 0.52, backTransmittance: 0.64, backReflectance: 0.22 }, { solarTransmittance: 0.56, frontReflectance: 0.34, backTransmittance: 0.49, backReflectance: 0.39 }] }, expect: { solarTransmittance: 0.278426286, frontReflectance: 0.6281885, absorptance: 0.093385214 }, place: 'case layers-2-asymmetric; READ' },
    { given: { layers: [{ solarTransmittance: 0.46, frontReflectance: 0.52, backTransmittance: 0.64, backReflectance: 0.22 }, { solarTransmittance: 0.56, frontReflectance: 0.34, backTransmittance: 0.49, backReflectance: 0.39 }, { solarTransmittance: 0.12, frontReflectance: 0.47, backTransmittance: 0.33, backReflectance: 0.63 }] }, expect: { solarTransmittance: 0.042506037, frontReflectance: 0.684618188, backTransmittance: 0.142302818, backReflectance: 0.652935221, layerAbsorptance: [0.056010229, 0.071636587, 0.145228959], layerAbsorptanceFromBack: [0.031128742, 0.055271213, 0.118362006] }, place: 'case layers-3-asymmetric; READ' },
    { given: { layers: [{ solarTransmittance: 0.834, frontReflectance: 0.075, backTransmittance: 0.834, backReflectance: 0.075 }, { solarTransmittance: 0.834, frontReflectance: 0.075, backTransmittance: 0.834, backReflectance: 0.075 }] }, expect: { solarTransmittance: 0.699491, frontReflectance: 0.127462, backReflectance: 0.127462, layerAbsorptance: [0.096724, 0.076323] }, place: 'case double-clear3-clear3; COMPUTED from READ formulas' },
    { given: { layers: [{ solarTransmittance: 0.49, frontReflectance: 0.05, backTransmittance: 0.49, backReflectance: 0.05 }, { solarTransmittance: 0.771, frontReflectance: 0.07, backTransmittance: 0.771, backReflectance: 0.07 }] }, expect: { solarTransmittance: 0.379117, frontReflectance: 0.066866, backReflectance: 0.099826, layerAbsorptance: [0.475833, 0.078184] }, place: 'case double-bronze6-clear6; COMPUTED from READ formulas' },
    { given: { layers: [{ solarTransmittance: 0.834, frontReflectance: 0.075, backTransmittance: 0.834, backReflectance: 0.075 }, { solarTransmittance: 0.24, frontReflectance: 0.38, backTransmittance: 0.24, backReflectance: 0.38 }] }, expect: { solarTransmittance: 0.206032, frontReflectance: 0.347065, backReflectance: 0.384447, layerAbsorptance: [0.120686, 0.326217] }, place: 'case double-clear3-filmed3; COMPUTED from READ formulas' },
  ],
};

/** Figures that need the spectra of glass and sun: for reference, band averages stand 0.006 off the first. */
export const spectralCases: ReferenceTable<{ readonly glass: string }, { readonly values: string }> = {
  of: 'calc/glass/layers',
  source: 'open reference code of a national laboratory example data: generic clear glass spectra 3.048 mm (id 102) and 5.715 mm (id 103), ASTM G173 and E891 spectra',
  seen: 'in the source',
  tolerance: { why: 'reported, no pass line: the spectra are not part of the project' },
  rows: [
    { given: { glass: '{"outer": "generic clear 3.048 mm", "inner": "generic clear 5.715 mm", "spectrum": "ASTM E891 direct", "angleDeg": 0}' }, expect: { values: '{"T": 0.652313598, "Rf": 0.124741379, "Rb": 0.116622847, "A1": 0.0960565293, "A2": 0.126888494}' }, place: 'case double-102-103-spectral; READ' },
    { given: { glass: '{"outer": "generic clear 3.048 mm", "inner": "generic clear 5.715 mm", "spectrum": "ASTM E891 direct", "angleDeg": 40}' }, expect: { values: '{"T": 0.624161311, "Rf": 0.135563349, "A1": 0.105447117, "A2": 0.134828222}' }, place: 'case double-102-103-40deg; READ' },
    { given: { glass: '{"glass": "generic clear 3.048 mm", "spectrum": "ASTM G173 global"}' }, expect: { values: '{"Tsol": 0.836, "Rsol": 0.0756, "Tvis": 0.8989, "TuvBelow380nm": 0.682}' }, place: 'case clear3-bands; COMPUTED from READ data' },
    { given: { glass: '{"glass": "generic clear 5.715 mm", "spectrum": "ASTM G173 global"}' }, expect: { values: '{"Tsol": 0.776, "Rsol": 0.0709, "Tvis": 0.8829, "TuvBelow380nm": 0.587}' }, place: 'case clear6-bands; COMPUTED from READ data' },
  ],
};
