import type { Placement } from './job.js';
import { straightCuts } from './straight-cuts.js';

const at = (piece: string, [x_mm, y_mm, width_mm, length_mm]: readonly [number, number, number, number]): Placement => ({ piece, roll: 0, x_mm, y_mm, width_mm, length_mm, rotated: false });
const WHEEL = [at('a', [0, 0, 200, 100]), at('b', [200, 0, 100, 200]), at('c', [100, 200, 200, 100]), at('d', [0, 100, 100, 200])];

describe('straight cuts from edge to edge', () => {
  it('free nothing and one piece', () => {
    expect(straightCuts([], 0)).toBeNull();
    expect(straightCuts([at('a', [0, 0, 5, 5])], 9)).toBeNull();
  });

  it('free pieces in rows, in columns, and rows within columns within rows', () => {
    expect(straightCuts([at('a', [0, 0, 100, 50]), at('b', [100, 0, 100, 80])], 0)).toBeNull();
    expect(straightCuts([at('a', [0, 0, 100, 50]), at('b', [0, 50, 30, 80])], 0)).toBeNull();
    const nested = [at('a', [0, 0, 300, 10]), at('b', [0, 10, 100, 60]), at('c', [100, 10, 200, 20]), at('d', [100, 30, 90, 40]), at('e', [190, 30, 110, 40])];
    expect(straightCuts(nested, 0)).toBeNull();
  });

  it('do not free a wheel of four, and say which pieces hold each other', () => {
    expect(straightCuts(WHEEL, 0)?.split(', ').sort()).toEqual(['a', 'b', 'c', 'd']);
    expect(straightCuts([...WHEEL, at('far', [0, 400, 300, 10])], 0)?.split(', ')).not.toContain('far');
  });

  it('need the kerf between pieces, and only there', () => {
    const pair = [at('a', [0, 0, 100, 50]), at('b', [102, 0, 100, 50])];
    expect(straightCuts(pair, 2)).toBeNull();
    expect(straightCuts(pair, 2.1)).not.toBeNull();
    expect(straightCuts(pair, 2 + 1e-6)).toBeNull(); // equal to a millionth
  });
});
