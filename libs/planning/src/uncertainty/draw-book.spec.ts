import { openCatalogue } from '#catalogue';
import { quantileOf, rankCorrelation, valueAt } from '#calc';
import { drawOrder, drawnValue, drawnValues, type DrawOrder } from './draw-book.js';

const inputs = openCatalogue().uncertainInputs;
const order = (change: Partial<{ seed: number; draws: number; films: Parameters<typeof drawOrder>[1]['founded']['films'] }> = {}): DrawOrder =>
  drawOrder(inputs, { founded: { films: change.films ?? [{ id: 'M', basis: 'measured' }, { id: 'P', basis: 'published' }, { id: 'A', basis: 'assumed' }], glazings: [{ id: 'clear', basis: 'published' }, { id: 'odd', basis: 'assumed' }] }, seed: change.seed ?? 7, draws: change.draws ?? 1024 });
const quantile = (values: Float64Array, share: number): number => quantileOf(Float64Array.from(values).sort(), share);

describe('what is drawn in a plan', () => {
  it('spreads a figure by its basis: measured within published within assumed, of films and of glass', () => {
    const width = (key: 'filmCut' | 'glass', scope: string): number => quantile(drawnValues(order(), key, scope), 0.9) - quantile(drawnValues(order(), key, scope), 0.1);
    expect(width('filmCut', 'M')).toBeLessThan(width('filmCut', 'P'));
    expect(width('filmCut', 'P')).toBeLessThan(width('filmCut', 'A'));
    expect(width('glass', 'clear')).toBeLessThan(width('glass', 'odd'));
    // A film nobody has told the basis of counts as assumed.
    expect(width('filmCut', 'unheard of')).toBeCloseTo(width('filmCut', 'A'), 2);
  });

  it.each([
    // Standard deviations of the data file times z(0.9) = 1.281552, of the printed table of the normal distribution.
    { key: 'filmCut', scope: 'M', share: 0.1, expected: -0.04 * 1.281552 },
    { key: 'filmCut', scope: 'P', share: 0.9, expected: 0.07 * 1.281552 },
    { key: 'setPoint', scope: 'EC/1', share: 0.9, expected: 1.281552 },
    { key: 'efficiency', scope: 'EC/1', share: 0.9, expected: 1.1 ** 1.281552 },
    { key: 'price', scope: '*', share: 0.1, expected: 1.05 ** -1.281552 },
    // Triangle 0.7, 1, 1.5: (x − 0.7)²/(0.8 × 0.3) = 0.1 and (1.5 − x)²/(0.8 × 0.5) = 0.1.
    { key: 'labour', scope: '*', share: 0.1, expected: 0.7 + Math.sqrt(0.024) },
    { key: 'labour', scope: '*', share: 0.9, expected: 1.5 - Math.sqrt(0.04) },
  ] as const)('$key of $scope: 1,024 draws give the quantile $share of its distribution', ({ key, scope, share, expected }) => {
    expect(Math.abs(quantile(drawnValues(order(), key, scope), share) - expected)).toBeLessThan(0.003);
  });

  it('fills the distribution evenly: the mean of 256 draws is off by far less than chance would have it', () => {
    // Mean of a lognormal with median 1 and factor 1.1: exp(ln²1.1 / 2); by chance 0.0957/√256 = 0.006.
    const drawn = drawnValues(order({ draws: 256 }), 'efficiency', 'EC/1');
    expect(Math.abs(drawn.reduce((sum, v) => sum + v, 0) / 256 - Math.exp(Math.log(1.1) ** 2 / 2))).toBeLessThan(0.0006);
  });

  it('shares a draw where the cause is shared: price by all, shade by a building, set point by nobody', () => {
    const at = (key: 'price' | 'shade' | 'setPoint', scope: string): number => drawnValue(order(), key, { scope, draw: 3 });
    expect(at('price', 'EC/1')).toBe(at('price', 'ET/503'));
    expect(at('shade', 'EC')).not.toBe(at('shade', 'ET'));
    expect(at('setPoint', 'EC/1')).not.toBe(at('setPoint', 'EC/2'));
    // Inputs of one cause are drawn apart: none follows another.
    expect(Math.abs(rankCorrelation(drawnValues(order(), 'setPoint', 'EC/1'), drawnValues(order(), 'efficiency', 'EC/1')))).toBeLessThan(0.2);
  });

  it('is the same again by seed, another by another seed, and more films, dwellings or draws change none of it', () => {
    const [first, again, other] = [order(), order(), order({ seed: 8 })].map((o) => Array.from(drawnValues(o, 'use', 'EC/1')));
    expect(again).toEqual(first);
    expect(other).not.toEqual(first);
    const more = order({ draws: 2048, films: [{ id: 'N', basis: 'measured' }, { id: 'M', basis: 'measured' }] });
    drawnValues(more, 'use', 'EC/99');
    expect(Array.from(drawnValues(more, 'use', 'EC/1').slice(0, 1024))).toEqual(first);
    expect(drawnValue(more, 'filmCut', { scope: 'M', draw: 5 })).toBe(drawnValue(order(), 'filmCut', { scope: 'M', draw: 5 }));
  });

  it('of two causes together: the ninth tenth of a sum of two normals is that of a normal √2 as wide', () => {
    const [a, b] = ['EC/1', 'EC/2'].map((scope) => drawnValues(order(), 'setPoint', scope));
    const sum = a!.map((v, d) => v + b![d]!);
    expect(Math.abs(quantile(sum, 0.9) - Math.SQRT2 * 1.281552)).toBeLessThan(0.09); // two standard errors of a free sample of 1,024
  });

  it('holds every input of the data file with a spread that can be drawn, and names its source', () => {
    for (const input of inputs) {
      for (const basis of ['measured', 'published', 'assumed'] as const) expect(Number.isFinite(valueAt(input.spread(basis), 0.5))).toBe(true);
      expect(input.source).not.toBe('');
    }
  });
});
