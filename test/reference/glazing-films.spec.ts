import { survivingCut, type FilmOnClear } from '#calc';
import { glasses, glassFilms } from './checks/glass-films.js';
import { hold } from './checks/hold.js';

glassFilms.filter(({ table }) => ['calc/glass/film-on-glass', 'calc/glass/surviving-cut'].includes(table.of)).forEach(hold);

it('gives the mirror film outside on the outer pane 80 % where inside it has 61 %', () => {
  const mirror: FilmOnClear = { solarTransmittance: 0.11, frontReflectance: 0.56, backReflectance: 0.55, roomEmissivity: 0.72, side: 'room' };
  expect(survivingCut(glasses.DoubleClear3, mirror).cut).toBeCloseTo(0.61, 2);
  expect(survivingCut(glasses.DoubleClear3, { ...mirror, side: 'outdoor' }).cut).toBeCloseTo(0.8, 2);
});
