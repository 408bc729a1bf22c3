import { filmOption } from '../../../../test/portfolios/film-option.js';
import { bandsOf, bestOf, rankedOption } from './rank.js';

const line = (dwelling: string, yearly_cents: number, spread_cents: number) => filmOption({ id: `${dwelling}|180|A`, dwelling, yearlyCooling_cents: yearly_cents, yearlyCoolingSpread_cents: spread_cents });
const bands = (...options: ReturnType<typeof line>[]): string[] => bandsOf(bestOf(options, (o) => o.dwelling));

describe('the ranked list', () => {
  it('divides the yearly cooling saving by the installed cost', () => {
    expect(rankedOption(line('B1/1', 3_000, 300))).toMatchObject({ perDollar: 0.3, spread: 0.03 });
  });

  it('takes the best option of a dwelling and puts the best dwelling first', () => {
    const worse = filmOption({ id: 'B1/1|90|A', facades: [90], yearlyCooling_cents: 1_000 });
    expect(bestOf([worse, line('B1/1', 3_000, 0), line('B1/2', 4_000, 0)], (o) => o.dwelling).map((r) => r.option.id)).toEqual(['B1/2|180|A', 'B1/1|180|A']);
  });

  it('breaks ties by id, whatever the order of the options', () => {
    const [a, b] = [line('B1/1', 3_000, 0), line('B1/2', 3_000, 0)];
    expect(bestOf([b, a], (o) => o.dwelling)).toEqual(bestOf([a, b], (o) => o.dwelling));
  });

  it('leaves an option without cost out: nothing per dollar can be said of it', () => {
    const { cost } = filmOption();
    expect(bestOf([filmOption({ cost: { ...cost, total_cents: 0 } })], (o) => o.dwelling)).toEqual([]);
  });
});

describe('bands', () => {
  // Spreads 300 and 300: the difference has 424, eight in ten of it within 1.2816 × 424 = 544.
  it('join dwellings that cannot be told apart', () => expect(bands(line('B1/1', 3_000, 300), line('B1/2', 2_460, 300))).toEqual(['A', 'A']));
  it('part dwellings that can', () => expect(bands(line('B1/1', 3_000, 300), line('B1/2', 2_450, 300))).toEqual(['A', 'B']));
  it('measure from their head, so a long slope does not run on as one band', () => {
    expect(bands(line('B1/1', 3_000, 300), line('B1/2', 2_600, 300), line('B1/3', 2_200, 300))).toEqual(['A', 'A', 'B']);
  });
  it('go on after Z with AA', () => {
    const letters = bands(...Array.from({ length: 28 }, (_, i) => line(`B1/${String(i + 10)}`, 30_000 - 1_000 * i, 0)));
    expect([letters[25], letters[26], letters[27]]).toEqual(['Z', 'AA', 'AB']);
  });
});
