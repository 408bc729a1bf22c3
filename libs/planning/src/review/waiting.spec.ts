import { filmOption } from '../../../../test/portfolios/film-option.js';
import { waitingItems } from './waiting.js';

const LETTER = 'B1: letter of the owner';
const TEST = 'B1: glass test';
const values = new Map([['waits', 900], ['ready', 400], ['other', 700]]);
const valueOf = (o: { readonly id: string }): number => values.get(o.id) ?? 0;

describe('what waits behind a letter', () => {
  it('is worth what it brings above the best that need not wait', () => {
    const [item] = waitingItems([filmOption({ id: 'waits', waitsFor: [LETTER] }), filmOption({ id: 'ready' })], valueOf);
    expect(item).toMatchObject({ building: 'B1', subject: LETTER, kind: 'letter of the owner', dwellings: 1, value_cents: 500 });
  });

  it('counts dwellings, panes and cost behind the same letter once each', () => {
    const options = [filmOption({ id: 'waits', waitsFor: [LETTER], paneCount: 3 }), filmOption({ id: 'other', dwelling: 'B1/2', waitsFor: [LETTER], paneCount: 2 })];
    expect(waitingItems(options, valueOf)).toMatchObject([{ dwellings: 2, panes: 5, cost_cents: 20_000, value_cents: 1_600 }]);
  });

  it('stands behind both letters where two are missing', () => {
    const items = waitingItems([filmOption({ id: 'waits', waitsFor: [LETTER, TEST] })], valueOf);
    expect(items.map((i) => [i.subject, i.value_cents])).toEqual([[TEST, 900], [LETTER, 900]]);
  });

  it('is nothing where no option waits', () => expect(waitingItems([filmOption()], valueOf)).toEqual([]));
});
