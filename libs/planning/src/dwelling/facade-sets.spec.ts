import { facadeSets, sideWord } from './facade-sets.js';

describe('the facade sets of a dwelling', () => {
  it('are all fifteen non-empty sets at four facades, each once', () => {
    const sets = facadeSets([0, 90, 180, 270]).map((s) => s.join('+'));
    expect(sets).toHaveLength(15);
    expect(new Set(sets).size).toBe(15);
    expect(sets).toContain('0+90+270');
  });

  it('are singles, pairs and the whole above four: 5 + 10 + 1', () => {
    const sets = facadeSets([0, 45, 90, 180, 270]);
    expect(sets.map((s) => s.length).sort()).toEqual([...Array<number>(5).fill(1), ...Array<number>(10).fill(2), 5]);
  });

  it('are none without a facade', () => expect(facadeSets([])).toEqual([]));
});

describe('the word for a side', () => {
  it.each([
    [0, 'north'],
    [359, 'north'],
    [45, 'north-east'],
    [202, 'south'],
    [203, 'south-west'],
    [-90, 'west'],
  ])('%d degrees is %s', (azimuth_deg, word) => expect(sideWord(azimuth_deg)).toBe(word));
});
