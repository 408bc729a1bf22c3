import fc from 'fast-check';
import { normals } from '../../../../test/portfolios/metered-homes.js';
import { billFitness, calibratedRealisation, calibrationMoves, defectShare, drawnOrder, learnedRealisation, partialPooling, realisationOf, studiedRealisation, type MovableParameter, type PooledMember, type PoolingSpreads } from './index.js';

const SPREADS: PoolingSpreads = { portfolio: 0.3, building: 0.15, planType: 0.1, tenant: 0.3 };

describe('partial pooling', () => {
  it('of one tenant moves his plan type far less than he is away', () => {
    const one = partialPooling([{ building: 'A', planType: 'A-1', value: 1, standardError: 0.05 }], SPREADS);
    // Precisions by hand: all spreads in a chain, 0.3² + 0.15² + 0.1² = 0.1225 against 0.3² + 0.05² = 0.0925.
    expect(one.planTypes.get('A|A-1')!.mean).toBeCloseTo(0.1225 / (0.1225 + 0.0925), 9);
    expect(one.portfolio.mean).toBeCloseTo(0.09 / (0.1225 + 0.0925), 9);
  });

  it('agrees with the joint normal posterior of two buildings worked out directly', () => {
    // Two members in two buildings: covariance of their plan-type effects 0.09 between, 0.1225 within; of the data plus 0.0925.
    const seen = partialPooling([{ building: 'A', planType: 't', value: 0.4, standardError: 0.05 }, { building: 'B', planType: 't', value: 0, standardError: 0.05 }], SPREADS);
    const b2 = seen.spreads.building ** 2;
    const [within, across, noise] = [0.09 + b2 + 0.01, 0.09, 0.0925];
    const determinant = (within + noise) ** 2 - across ** 2;
    const [ka, kb] = [(within * (within + noise) - across * across) / determinant, (across * (within + noise) - within * across) / determinant];
    expect(seen.planTypes.get('A|t')!.mean).toBeCloseTo(ka * 0.4, 9);
    expect(seen.planTypes.get('B|t')!.mean).toBeCloseTo(kb * 0.4, 9);
  });

  it('brings back the true value of a plan type within its own error bound, and nearer the more homes it has', () => {
    const errors = [2, 40].map((homes) => {
      let squares = 0;
      let inside = 0;
      for (let seed = 1; seed <= 200; seed++) {
        const normal = normals(seed);
        const top = 0.3 * normal();
        const members: PooledMember[] = [];
        const truth = new Map<string, number>();
        for (const building of ['A', 'B', 'C']) {
          const b = top + 0.15 * normal();
          for (const planType of ['s', 't']) {
            const value = b + 0.1 * normal();
            truth.set(`${building}|${planType}`, value);
            for (let i = 0; i < homes; i++) members.push({ building, planType, value: value + 0.3 * normal() + 0.1 * normal(), standardError: 0.1 });
          }
        }
        const found = partialPooling(members, SPREADS);
        for (const [key, value] of truth) {
          const posterior = found.planTypes.get(key)!;
          squares += (posterior.mean - value) ** 2;
          if (Math.abs(posterior.mean - value) < 1.2816 * posterior.standardDeviation) inside += 1;
        }
      }
      expect(inside / 1200).toBeGreaterThan(0.75);
      expect(inside / 1200).toBeLessThan(0.85);
      return Math.sqrt(squares / 1200);
    });
    expect(errors[1]!).toBeLessThan(errors[0]! / 2);
  });

  it('refuses no member and errors of nothing', () => {
    expect(() => partialPooling([], SPREADS)).toThrow('at least one');
    expect(() => partialPooling([{ building: 'A', planType: 't', value: 0, standardError: 0 }], SPREADS)).toThrow('errors above 0');
  });
});

describe('moves of a calibration', () => {
  const parameters: MovableParameter[] = [
    { key: 'sun', spread: 0.3, limit: 0.5, sensitivity: 0.6 },
    { key: 'set point', spread: 1.5, limit: 2, sensitivity: -0.1 },
    { key: 'fixed', spread: 0, limit: 1, sensitivity: 1 },
  ];

  it('close the gap exactly where no limit stops them, most by what is least known and acts most', () => {
    const { moves, open } = calibrationMoves(parameters, -0.1);
    expect(open).toBe(0);
    expect(moves.reduce((sum, m, i) => sum + m.move * parameters[i]!.sensitivity, 0)).toBeCloseTo(-0.1, 12);
    // 0.18² = 0.0324 against 0.15² = 0.0225 of the gap.
    expect(moves[0]!.move).toBeCloseTo((0.3 ** 2 * 0.6 * -0.1) / (0.0324 + 0.0225), 12);
    expect(moves[2]!.move).toBe(0);
  });

  it('never pass a limit, and say what stays open', () => {
    fc.assert(fc.property(fc.double({ min: -3, max: 3, noNaN: true }), (gap) => {
      const { moves, open } = calibrationMoves(parameters, gap);
      moves.forEach((m, i) => expect(Math.abs(m.move)).toBeLessThanOrEqual(parameters[i]!.limit + 1e-12));
      expect(moves.reduce((sum, m, i) => sum + m.move * parameters[i]!.sensitivity, 0) + open).toBeCloseTo(gap, 9);
    }));
    expect(calibrationMoves(parameters, -2).open).toBeCloseTo(-2 + 0.5 * 0.6 + 2 * 0.1, 12);
  });

  it('bills that are met give zero, and a model a tenth low gives a bias of a tenth over n − 1', () => {
    expect(billFitness([10, 20, 30], [10, 20, 30])).toEqual({ cvRmse: 0, nmbe: 0, periods: 3 });
    expect(billFitness([10, 20, 30], [9, 18, 27]).nmbe).toBeCloseTo(6 / (2 * 20), 12);
    expect(() => billFitness([1], [1])).toThrow('2 or more');
  });
});

describe('the realisation', () => {
  const studied = studiedRealisation([{ name: 'a', measuredShare: 0.1, modelledShare: 0.4 }, { name: 'b', measuredShare: 0.2, modelledShare: 0.2 }]);

  it('of two studies is their geometric mean', () => {
    expect(realisationOf(studied).middle).toBeCloseTo(0.5, 12);
    // Sample standard deviation of ln 0.25 and ln 1.
    expect(studied.standardDeviation).toBeCloseTo(Math.log(4) / Math.SQRT2, 12);
  });

  it('stays what studies say without bills, and gets narrower in ratio the more bills decide', () => {
    const terms = { explainedShare: 0.5, leftSpread: 0.45 };
    expect(calibratedRealisation(studied, 0, terms)).toEqual(studied);
    const [half, whole] = [0.5, 1].map((w) => calibratedRealisation(studied, w, terms));
    expect(half!.standardDeviation).toBeLessThan(studied.standardDeviation);
    expect(whole!.standardDeviation).toBeCloseTo(0.45, 12);
    expect(() => calibratedRealisation(studied, 1.1, terms)).toThrow('weight');
  });

  it('learned from a sharp measurement is the measurement, from a vague one what was thought', () => {
    expect(learnedRealisation(studied, { factor: 0.7, standardError: 0.01 }).middle).toBeCloseTo(0.7, 2);
    const vague = learnedRealisation(studied, { factor: -2, standardError: 1000 });
    expect(vague.middle).toBeCloseTo(0.5, 2);
    expect(vague.low).toBeCloseTo(realisationOf(studied).low, 2);
  });
});

describe('what is learned on the way', () => {
  it('defects start from what is expected', () => {
    expect(defectShare({ panes: 0, defects: 0 }, 0.05)).toBeCloseTo(0.05, 12);
    expect(defectShare({ panes: 20, defects: 4 }, 0)).toBeCloseTo(0.1, 12);
  });
});

describe('a drawn order', () => {
  const bands = [['a', 'b', 'c', 'd'], ['e'], ['f', 'g']];
  it('is the same for the same seed whatever the order of rows, and keeps the bands apart', () => {
    const drawn = drawnOrder(bands, 7);
    expect(drawnOrder([['d', 'c', 'b', 'a'], ['e'], ['g', 'f']], 7)).toEqual(drawn);
    expect([...drawn.slice(0, 4)].sort()).toEqual(['a', 'b', 'c', 'd']);
    expect(drawn[4]).toBe('e');
  });
  it('gives each case of a band each place alike', () => {
    const first = Array.from({ length: 2000 }, (_, seed) => drawnOrder(bands, seed)[0]);
    for (const id of bands[0]!) expect(Math.abs(first.filter((f) => f === id).length - 500)).toBeLessThan(80);
  });
  it('refuses an id that stands twice', () => expect(() => drawnOrder([['a'], ['a']], 1)).toThrow('once'));
});
