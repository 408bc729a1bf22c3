import {
  clearSheetAt,
  coatedCurve,
  dewPoint_degC,
  EN_410_FILMS,
  gapResistance_m2K_W,
  glazingOptics,
  indoorFilm_W_m2K,
  paneByAngle,
  roomFace_degC,
  secondaryHeat,
  sheetMaterial,
  stacked,
  SUMMER_FILMS,
  surfaceReflectance,
  uFactorOfPath_W_m2K,
  inwardFractions,
  CLEAR_3_MM,
  type Pane,
} from '#calc';
import { openCatalogue } from '#catalogue';
import { coatedDoubles, doublePanes, handbookAngles_deg, handbookGains, singlePanes } from './glazing-handbook.js';
import { dewPoints, doubleHeatGain, laboratoryPanes, roomFilms, secondaryHeats, singleHeatGains, windySingle, winterFaces } from './glazing-heat.js';
import { layerCases } from './glazing-layers.js';
import { coatedCurves, hemisphericalSheet, sheetCases, sheetMaterials, sheetsByAngle, surfaceCases } from './glazing-sheets.js';
import type { ReferenceTable } from './reference-table.js';

const { glazing } = openCatalogue();

/** Within the table's own tolerance, with the place in the message. */
function near(table: Pick<ReferenceTable<unknown, unknown>, 'tolerance'>, place: string): (ours: number, theirs: number) => void {
  return (ours, theirs) => {
    const off = Math.abs(ours - theirs);
    if (!(off <= (table.tolerance.abs ?? 0))) throw new Error(`${place}: expected ${String(theirs)}, got ${String(ours)}, ${String(off)} off`);
  };
}

const single = (solarTransmittance: number, reflectance: number): Pane => ({ ...CLEAR_3_MM, solarTransmittance, frontReflectance: reflectance, backReflectance: reflectance });

describe('sheets of glass by angle, against the textbook', () => {
  it.each(surfaceCases.rows)('$place', ({ given, expect: theirs, place }) => {
    const close = near(surfaceCases, place);
    const ours = surfaceReflectance(given.refractiveIndex, given.incidence_deg);
    close((ours.perpendicular + ours.parallel) / 2, theirs.reflectance);
    if (theirs.perpendicular !== undefined) close(ours.perpendicular, theirs.perpendicular);
    if (theirs.parallel !== undefined) close(ours.parallel, theirs.parallel);
    if (theirs.refraction_deg !== undefined) close(ours.refraction_deg, theirs.refraction_deg);
  });
  it.each(sheetCases.rows)('$place', ({ given, expect: theirs, place }) => {
    const close = near(sheetCases, place);
    const ours = clearSheetAt(given, given.incidence_deg);
    close(ours.solarTransmittance, theirs.T);
    close(ours.frontReflectance, theirs.R);
    close(1 - ours.solarTransmittance - ours.frontReflectance, theirs.A);
  });
  it.each(sheetMaterials.rows)('$place', ({ given, expect: theirs, place }) => {
    const close = near(sheetMaterials, place);
    const ours = sheetMaterial(given.solarTransmittance, given.reflectance);
    close(ours.refractiveIndex, theirs.refractiveIndex);
    close(ours.absorption, theirs.absorption);
  });
  it.each(sheetsByAngle.rows)('$place', ({ given, expect: theirs, place }) => {
    const close = near(sheetsByAngle, place);
    const ours = paneByAngle(single(given.solarTransmittance, given.reflectance))(given.incidence_deg);
    close(ours.solarTransmittance, theirs.T);
    close(ours.frontReflectance, theirs.R);
    close(1 - ours.solarTransmittance - ours.frontReflectance, theirs.A);
  });
  it.each(hemisphericalSheet.rows)('$place', ({ given, expect: theirs, place }) => {
    const close = near(hemisphericalSheet, place);
    const normal = clearSheetAt(given, 0);
    const ours = glazingOptics({ key: 'sheet', panes: [single(normal.solarTransmittance, normal.frontReflectance)], gaps: [] }).hemispherical;
    close(ours.solarTransmittance, theirs.T);
    close(ours.frontReflectance, theirs.R);
  });
  it.each(coatedCurves.rows)('$place', ({ given, expect: theirs, place }) => {
    const close = near(coatedCurves, place);
    close(coatedCurve('clear', given.incidence_deg).through, theirs.clear);
    close(coatedCurve('bronze', given.incidence_deg).through, theirs.bronze);
  });
});

describe('layers one behind the other, against published stacks', () => {
  it.each(layerCases.rows)('$place', ({ given, expect: theirs, place }) => {
    const close = near(layerCases, place);
    const ours = stacked(given.layers);
    close(ours.solarTransmittance, theirs.solarTransmittance);
    close(ours.frontReflectance, theirs.frontReflectance);
    if (theirs.absorptance !== undefined) close(ours.layerAbsorptance.reduce((sum, a) => sum + a, 0), theirs.absorptance);
    if (theirs.backTransmittance !== undefined) close(ours.backTransmittance, theirs.backTransmittance);
    if (theirs.backReflectance !== undefined) close(ours.backReflectance, theirs.backReflectance);
    theirs.layerAbsorptance?.forEach((a, k) => close(ours.layerAbsorptance[k]!, a));
    const turned = given.layers
      .map((layer) => ({ solarTransmittance: layer.backTransmittance, backTransmittance: layer.solarTransmittance, frontReflectance: layer.backReflectance, backReflectance: layer.frontReflectance }))
      .reverse();
    theirs.layerAbsorptanceFromBack?.forEach((a, k) => close(stacked(turned).layerAbsorptance[given.layers.length - 1 - k]!, a));
  });
});

describe('heat passed inward, against EN 410, a full balance and a laboratory', () => {
  it.each(secondaryHeats.rows)('$place', ({ given, expect: theirs, place }) => {
    const close = near(secondaryHeats, place);
    const ours = secondaryHeat({ ...given, glass_m2K_W: given.layerAbsorptance.map(() => 0) }, given.layerAbsorptance);
    close(ours, theirs.qi);
    close(given.solarTransmittance + ours, theirs.g);
  });
  it.each(roomFilms.rows)('$place', ({ given, expect: theirs, place }) => {
    near(roomFilms, place)(indoorFilm_W_m2K(EN_410_FILMS, given.emissivity), theirs.hi);
  });
  it.each(singleHeatGains.rows)('$place', ({ given, expect: theirs, place }) => {
    const close = near(singleHeatGains, place);
    const pane: Pane = { ...single(given.T, given.R), emissivityBack: given.roomEmissivity };
    const optics = glazingOptics({ key: 'single', panes: [pane], gaps: [] });
    close(optics.inwardFractions[0]!, theirs.N);
    close(optics.solarHeatGain, theirs.SHGC);
  });
  it.each(doubleHeatGain.rows)('$place', ({ given, expect: theirs, place }) => {
    const inward = inwardFractions({ outdoor_W_m2K: 20.3, indoor_W_m2K: indoorFilm_W_m2K(SUMMER_FILMS, 0.84), glass_m2K_W: [0.003, 0.003], gaps_m2K_W: [0.17] });
    const ours = given.layerAbsorptance.reduce((sum, a, k) => sum + a * inward[k]!, given.solarTransmittance);
    near(doubleHeatGain, place)(ours, theirs.solarHeatGain);
  });
  it.each(windySingle.rows)('$place', ({ given, expect: theirs, place }) => {
    const path = { outdoor_W_m2K: given.outdoor_W_m2K, indoor_W_m2K: given.indoor_W_m2K, glass_m2K_W: [0.003], gaps_m2K_W: [] };
    near(windySingle, place)(given.solarTransmittance + secondaryHeat(path, [given.absorptance]), theirs.solarHeatGain);
  });
  it.each(laboratoryPanes.rows)('$place', ({ given, expect: theirs, place }) => {
    const pane: Pane = { ...single(given.T, given.R), emissivityBack: given.emissivityRoom };
    near(laboratoryPanes, place)(glazingOptics({ key: 'laboratory', panes: [pane], gaps: [] }).solarHeatGain, theirs.SHGC);
  });
  it.each(winterFaces.rows)('$place', ({ given, expect: theirs, place }) => {
    const close = near(winterFaces, place);
    const indoor_W_m2K = indoorFilm_W_m2K({ outdoor_W_m2K: given.ho, indoorConvection_W_m2K: given.hc, indoorRadiation_W_m2K: given.hrPerEmissivity }, given.roomEmissivity);
    const path = { outdoor_W_m2K: given.ho, indoor_W_m2K, glass_m2K_W: [given.glassR], gaps_m2K_W: [] };
    close(indoor_W_m2K, theirs.hi);
    close(uFactorOfPath_W_m2K(path), theirs.U);
    close(uFactorOfPath_W_m2K(path) / 5.678263, theirs.U_ip);
    close(roomFace_degC(path, given.Tout, given.Tin), theirs.innerSurfaceC);
  });
  it.each(dewPoints.rows)('$place', ({ given, expect: theirs, place }) => {
    near(dewPoints, place)(dewPoint_degC(given.air_degC, given.relativeHumidity), theirs.dewC);
  });
  it('finds the gap of 12.7 mm air near the usual 0.17 by EN 673, and the U-factor of double clear near the full balance 2.87', () => {
    expect(Math.abs(gapResistance_m2K_W({ width_mm: 12.7, gas: 'air', emissivities: [0.84, 0.84] }) - 0.17)).toBeLessThan(0.01);
    expect(Math.abs(glazingOptics(glazing.get('double-clear-3').makeUp).uFactor_W_m2K - 2.866)).toBeLessThan(0.05);
  });
});

/** The catalogue's type of a handbook row, taken at the row's own rounded figures where it is uncoated. */
const typeOfRow = (id: string): ReturnType<typeof glazing.find> => glazing.list().find((row) => row.handbookRow === id) ?? null;
const greens: Readonly<Record<string, number>> = { '1e': 0.0135, '1f': 0.0226 };

describe('the handbook table by angle', () => {
  it.each(singlePanes.rows)('single $given.glass ($place)', ({ given, expect: theirs, place }) => {
    const close = near({ tolerance: { abs: greens[given.id] ?? singlePanes.tolerance.abs ?? 0, why: singlePanes.tolerance.why } }, place);
    const pane = paneByAngle(single(theirs.solarTransmittance[0], theirs.frontReflectance[0]));
    handbookAngles_deg.forEach((angle, i) => {
      close(pane(angle).solarTransmittance, theirs.solarTransmittance[i]!);
      close(pane(angle).frontReflectance, theirs.frontReflectance[i]!);
    });
  });

  it.each(doublePanes.rows)('double $given.glass ($place)', ({ given, expect: theirs, place }) => {
    const close = near(doublePanes, place);
    const optics = glazingOptics(typeOfRow(given.id)!.makeUp);
    const columns = [...handbookAngles_deg.map(optics.at), optics.hemispherical];
    columns.forEach((at, i) => {
      close(at.solarTransmittance, theirs.solarTransmittance[i]!);
      close(at.frontReflectance, theirs.frontReflectance[i]!);
      at.layerAbsorptance.forEach((a, k) => close(a, theirs.layerAbsorptance[k]![i]!));
    });
  });

  it('reports coated doubles: worst difference of each row stays a difference, not a line to pass', () => {
    for (const { given, expect: theirs } of coatedDoubles.rows) {
      const optics = glazingOptics(typeOfRow(given.id)!.makeUp);
      const columns = [...handbookAngles_deg.map(optics.at), optics.hemispherical];
      const worst = Math.max(...columns.map((at, i) => Math.abs(at.solarTransmittance - theirs.solarTransmittance[i]!)));
      expect(Number.isFinite(worst)).toBe(true);
    }
  });

  const known = handbookGains.rows.filter(({ given }) => typeOfRow(given.id) !== null);
  it('holds a built-in type for twenty rows or more', () => {
    expect(known.length).toBeGreaterThanOrEqual(20);
  });
  it.each(known)('solar heat gain of $given.glass ($place)', ({ given, expect: theirs, place }) => {
    const close = near(handbookGains, place);
    const optics = glazingOptics(typeOfRow(given.id)!.makeUp);
    [...handbookAngles_deg.map(optics.solarHeatGainAt), optics.hemisphericalSolarHeatGain].forEach((gain, i) => close(gain, theirs.solarHeatGain[i]!));
  });
});
