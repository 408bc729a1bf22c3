import fc from 'fast-check';
import { wrapped } from './wrap.js';

// Every letter one wide, so that widths can be counted.
const counted = (text: string): number => text.length;

describe('a text in lines', () => {
  it('breaks at spaces and keeps line breaks', () => {
    expect(wrapped('measure each pane before cutting', 12, counted)).toEqual(['measure each', 'pane before', 'cutting']);
    expect(wrapped('a\nb', 12, counted)).toEqual(['a', 'b']);
  });

  it('cuts a word that is longer than a line instead of leaving the page', () => {
    expect(wrapped('abcdefghij', 4, counted)).toEqual(['abcd', 'efgh', 'ij']);
  });

  it('never makes a line wider than asked and never loses a letter', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), fc.integer({ min: 1, max: 40 }), (text, width) => {
        const lines = wrapped(text, width, (t) => [...t].length);
        const letters = (t: string): string => t.replace(/[ \n]/g, '');
        return lines.every((l) => [...l].length <= width) && letters(lines.join('')) === letters(text);
      }),
    );
  });

  it('refuses a line without width', () => {
    expect(() => wrapped('a', 0, counted)).toThrow(RangeError);
  });
});
