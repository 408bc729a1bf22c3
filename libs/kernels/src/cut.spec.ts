import { kernel } from './cut.js';
import { InputFault, type KernelRoom } from './kernel.js';

const room: KernelRoom = {
  catalogue: () => {
    throw new Error('cutting reads no catalogue');
  },
  weather: () => {
    throw new Error('cutting reads no weather');
  },
};
const job = {
  pieces: [{ id: 'a', width_mm: 800, length_mm: 1200, count: 2, mayRotate: false }],
  rolls: [{ width_mm: 914.4 }],
};

describe('kernel cut', () => {
  it('gives the layout, what is bought and the bound, worked here by hand', () => {
    expect(kernel.run(job, room)).toMatchObject({
      placements: [{ piece: 'a', roll: 0, x_mm: 0, y_mm: 0 }, { piece: 'a', roll: 0, x_mm: 0, y_mm: 1200 }],
      boughtArea_mm2: 914.4 * 2400,
      byWidth: [{ width_mm: 914.4, runningLength_mm: 2400 }],
      unplaced: [],
    });
    const { lowerBoundArea_mm2, overBound } = kernel.run(job, room) as { lowerBoundArea_mm2: number; overBound: number };
    expect(lowerBoundArea_mm2).toBeCloseTo(914.4 * 2400, 1);
    expect(overBound).toBeCloseTo(0, 6);
  });

  it('keeps groups together when asked, and says what it costs', () => {
    const halves = ['a', 'b'].map((id) => ({ id, group: id, width_mm: 457.2, length_mm: 1000, count: 1, mayRotate: false }));
    expect(kernel.run({ pieces: halves, rolls: job.rolls, keepTogether: true }, room)).toMatchObject({ pooledArea_mm2: 914.4 * 1000, extraArea_mm2: 914.4 * 1000 });
    expect(kernel.run({ pieces: halves, rolls: job.rolls, crewOrder: ['b', 'a'] }, room)).toMatchObject({ placements: [{ piece: 'b', y_mm: 0 }, { piece: 'a', y_mm: 1000 }] });
    expect(kernel.run({ pieces: halves, rolls: job.rolls }, room)).toMatchObject({ boughtArea_mm2: 914.4 * 1000 });
  });

  it('cuts an elevation from one lot when asked, and says what it costs', () => {
    const pieces = [1, 2, 3].map((n) => ({ id: `s${String(n)}`, elevation: 'south', width_mm: 900, length_mm: 4000, count: 1, mayRotate: false }));
    const rolls = [{ width_mm: 914.4, length_mm: 5000, stock: 1, lot: 'L7' }, { width_mm: 914.4, length_mm: 10_000, price_cents: 40_000 }];
    expect(kernel.run({ pieces, rolls, oneLot: true }, room)).toMatchObject({ cost_cents: 80_000, extraCost_cents: 40_000, mixed: [] });
    expect(kernel.run({ pieces, rolls }, room)).toMatchObject({ cost_cents: 40_000 });
  });

  it.each([
    [{ ...job, width: 3 }, '/width'],
    [{ ...job, pieces: [{ ...job.pieces[0], width_mm: 0 }] }, '/pieces/0/width_mm'],
    [{ ...job, rolls: [{ width_mm: 900, stock: 1 }] }, ''],
  ])('refuses case %# by its pointer', (value, pointer) => {
    expect(() => kernel.run(value, room)).toThrow(InputFault);
    try {
      kernel.run(value, room);
    } catch (fault) {
      expect((fault as InputFault).pointer).toBe(pointer);
    }
  });
});
