import { cosDeg, RAD_PER_DEG, sinDeg, tanDeg } from './angles.js';

it.each([[0, 0, 1, 0], [30, 0.5, Math.sqrt(0.75), 1 / Math.sqrt(3)], [45, Math.SQRT1_2, Math.SQRT1_2, 1], [60, Math.sqrt(0.75), 0.5, Math.sqrt(3)], [-30, -0.5, Math.sqrt(0.75), -1 / Math.sqrt(3)]])(
  'sine, cosine and tangent of %p° are those of the half square and half triangle',
  (...[angle_deg, sine, cosine, tangent]) => {
    expect(sinDeg(angle_deg)).toBeCloseTo(sine, 12);
    expect(cosDeg(angle_deg)).toBeCloseTo(cosine, 12);
    expect(tanDeg(angle_deg)).toBeCloseTo(tangent, 12);
  },
);

it('180° is half a turn', () => {
  expect(180 * RAD_PER_DEG).toBeCloseTo(Math.PI, 14);
});
