import { bareFilm, CLEAR_3_MM, filmedPane, glazingOptics, survivingCut, type FilmOnClear, type GlazingMakeUp, type Pane } from '#calc';
import { printedCuts, rebasedFilms } from './glazing-films.js';

const sheet = (solarTransmittance: number, reflectance: number): Pane => ({ ...CLEAR_3_MM, solarTransmittance, frontReflectance: reflectance, backReflectance: reflectance });
const bronze6 = sheet(0.49, 0.05);
const clear6 = sheet(0.771, 0.07);
const single = (pane: Pane): GlazingMakeUp => ({ key: 'single', panes: [pane], gaps: [] });
const double = (outer: Pane, inner: Pane): GlazingMakeUp => ({ key: 'double', panes: [outer, inner], gaps: [{ resistance_m2K_W: 0.17 }] });
const glasses = { singleClear3: single(CLEAR_3_MM), singleBronze6: single(bronze6), doubleClear3: double(CLEAR_3_MM, CLEAR_3_MM), doubleBronze6Clear6: double(bronze6, clear6) };

const close = (table: { tolerance: { abs?: number } }, ours: number, theirs: number): void => {
  expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(table.tolerance.abs ?? 0);
};

describe('films taken off the sheet’s glass and laid on another', () => {
  it.each(rebasedFilms.rows)('$place', ({ given, expect: theirs }) => {
    const film: FilmOnClear = { ...given.film, side: 'room' };
    const bare = bareFilm(film);
    close(rebasedFilms, bare.transmittance, theirs.film.t);
    close(rebasedFilms, bare.intoGlass, theirs.film.rf);
    close(rebasedFilms, bare.freeSide, theirs.film.rb);
    const on = filmedPane(film, bronze6);
    close(rebasedFilms, on.solarTransmittance, theirs.onBronze6.T);
    close(rebasedFilms, on.frontReflectance, theirs.onBronze6.Rf);
    close(rebasedFilms, on.backReflectance, theirs.onBronze6.Rb);
    const gain = (makeUp: GlazingMakeUp): number => glazingOptics(makeUp, film).solarHeatGain;
    const cut = (makeUp: GlazingMakeUp): number => 1 - gain(makeUp) / glazingOptics(makeUp).solarHeatGain;
    close(rebasedFilms, gain(glasses.singleClear3), theirs.shgcSingleClear3);
    close(rebasedFilms, gain(glasses.singleBronze6), theirs.shgcSingleBronze6);
    close(rebasedFilms, gain(glasses.doubleClear3), theirs.shgcDoubleClear3);
    close(rebasedFilms, gain(glasses.doubleBronze6Clear6), theirs.shgcDoubleBronze6Clear6);
    close(rebasedFilms, cut(glasses.singleClear3), theirs.cutSingleClear3);
    close(rebasedFilms, cut(glasses.singleBronze6), theirs.cutSingleBronze6);
    close(rebasedFilms, cut(glasses.doubleClear3), theirs.cutDoubleClear3);
    close(rebasedFilms, cut(glasses.doubleBronze6Clear6), theirs.cutDoubleBronze6Clear6);
  });

  it.each(printedCuts.rows)('printed cuts, $place', ({ given, expect: theirs }) => {
    const film: FilmOnClear = { ...given.film, side: 'room' };
    for (const [name, makeUp] of Object.entries(glasses)) close(printedCuts, survivingCut(makeUp, film).cut, theirs[name as keyof typeof glasses]);
  });

  it('gives the mirror film outside on the outer pane 80 % where inside it has 61 %', () => {
    const mirror: FilmOnClear = { solarTransmittance: 0.11, frontReflectance: 0.56, backReflectance: 0.55, roomEmissivity: 0.72, side: 'room' };
    expect(survivingCut(glasses.doubleClear3, mirror).cut).toBeCloseTo(0.61, 2);
    expect(survivingCut(glasses.doubleClear3, { ...mirror, side: 'outdoor' }).cut).toBeCloseTo(0.8, 2);
  });
});
