import fc from 'fast-check';
import { capCurve, checkCertificate, explain, select, type SelectionProblem, type SelectionResult } from './index.js';

type Found = Extract<SelectionResult, { value: number }>;

const found = (result: SelectionResult): Found => {
  if (result.value === null) throw new Error(result.why);
  return result;
};

const oneCap = fc
  .record({
    groups: fc.array(fc.array(fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: -50, max: 900 })), { minLength: 1, maxLength: 6 }), { minLength: 1, maxLength: 25 }),
    cap_cents: fc.integer({ min: 0, max: 1500 }),
  })
  .map(({ groups, cap_cents }): SelectionProblem => ({
    groups: groups.map((options, g) => ({ id: `G${g}`, options: options.map(([cost, value], o) => ({ id: `o${o}`, cost_cents: cost, value })) })),
    phases: [{ cap_cents }],
  }));

const severalCaps = fc
  .record({
    options: fc.array(fc.array(fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 400 }), fc.integer({ min: 0, max: 30 })), { minLength: 1, maxLength: 4 }), { minLength: 2, maxLength: 14 }),
    caps: fc.tuple(fc.integer({ min: 20, max: 200 }), fc.integer({ min: 20, max: 200 })),
    visit: fc.integer({ min: 0, max: 40 }),
  })
  .map(({ options, caps, visit }): SelectionProblem => ({
    groups: options.map((each, g) => ({ id: `G${String(g).padStart(2, '0')}`, building: `B${g % 3}`, options: each.map(([cost_cents, value, crewMinutes], o) => ({ id: `o${o}`, cost_cents, value, crewMinutes })) })),
    phases: caps.map((cap_cents, t) => ({ cap_cents, crewMinutes: 100, valueFactor: 10 - t })),
    buildings: [0, 1, 2].map((b) => ({ id: `B${b}`, visit_cents: visit, visitMinutes: 5 })),
  }));

/** The same problem with all its lists the other way round. */
const reversed = (problem: SelectionProblem): SelectionProblem => ({
  ...problem,
  groups: [...problem.groups].reverse().map((group) => ({ ...group, options: [...group.options].reverse() })),
  ...(problem.buildings === undefined ? {} : { buildings: [...problem.buildings].reverse() }),
});

describe('a selection', () => {
  it('never passes a cap', () => {
    fc.assert(fc.property(fc.oneof(oneCap, severalCaps), (problem) => {
      const { cost_cents } = found(select(problem));
      problem.phases.forEach(({ cap_cents }, t) => expect(cost_cents[t]!).toBeLessThanOrEqual(cap_cents));
    }));
  });

  it('is never worth less under a larger cap (one cap, proved optimum)', () => {
    fc.assert(fc.property(oneCap, fc.integer({ min: 0, max: 400 }), (problem, more) => {
      const larger = { ...problem, phases: [{ cap_cents: problem.phases[0]!.cap_cents + more }] };
      expect(found(select(larger)).value).toBeGreaterThanOrEqual(found(select(problem)).value);
    }));
  });

  it('is the same whatever the order of groups, options and buildings', () => {
    fc.assert(fc.property(fc.oneof(oneCap, severalCaps), (problem) => {
      expect(select(reversed(problem))).toEqual(select(problem));
    }));
  });

  it('adds up when two problems without a common limit are put together', () => {
    fc.assert(fc.property(severalCaps, severalCaps, (one, other) => {
      const second = other.groups.map((group) => ({ ...group, id: `Z${group.id}`, building: `Z${String(group.building)}`, phases: [2, 3] }));
      const both: SelectionProblem = {
        groups: [...one.groups.map((group) => ({ ...group, phases: [0, 1] })), ...second],
        phases: [...one.phases, ...other.phases],
        buildings: [...one.buildings!, ...other.buildings!.map((building) => ({ ...building, id: `Z${building.id}` }))],
      };
      const result = found(select(both));
      expect(result.value).toBe(found(select(one)).value + found(select(other)).value);
      expect(result.effort.independentParts).toBeGreaterThanOrEqual(2);
    }), { numRuns: 20 });
  });

  it('keeps whole values of a thousand million times a factor exact', () => {
    const groups = Array.from({ length: 40 }, (_, g) => ({ id: `G${String(g).padStart(2, '0')}`, options: [{ id: 'a', cost_cents: 700_000 + g, value: 999_999_937 - g }, { id: 'b', cost_cents: 1_300_003 - g, value: 1_000_000_007 + g * g }] }));
    const problem: SelectionProblem = { groups, phases: [{ cap_cents: 21_000_000, valueFactor: 97 }] };
    const result = found(select(problem));
    expect(result.status).toBe('optimal');
    expect(checkCertificate(problem, result).findings).toEqual([]);
  });
});

describe('the check of a certificate', () => {
  const tampered: readonly (readonly [string, (result: Found, by: number) => Found])[] = [
    ['value', (result, by) => ({ ...result, value: result.value + by })],
    ['bound', (result, by) => ({ ...result, bound: result.bound - by })],
    ['bound of the certificate', (result, by) => ({ ...result, certificate: { ...result.certificate, bound: result.certificate.bound - by } })],
    ['cost', (result, by) => ({ ...result, cost_cents: result.cost_cents.map((cost, t) => (t === 0 ? cost - by : cost)) })],
    ['gap', (result, by) => ({ ...result, gap: result.gap + by })],
    ['choice', (result) => ({ ...result, chosen: result.chosen.slice(1) })],
    ['multipliers', (result, by) => ({ ...result, certificate: { ...result.certificate, multipliers: { ...result.certificate.multipliers, cap: result.certificate.multipliers.cap.map((price) => price - by) } } })],
  ];
  it.each(tampered)('finds a tampered %s', (_, tamper) => {
    fc.assert(fc.property(fc.oneof(oneCap, severalCaps), fc.integer({ min: 3, max: 50 }), (problem, by) => {
      const result = found(select(problem));
      fc.pre(result.chosen.length > 0 && result.chosen.every(({ group, option }) => problem.groups.find(({ id }) => id === group)!.options.find(({ id }) => id === option)!.cost_cents > 0));
      expect(checkCertificate(problem, result).valid).toBe(true);
      expect(checkCertificate(problem, tamper(result, by)).valid).toBe(false);
    }), { numRuns: 30 });
  });

  it('finds a line over the cap', () => {
    const problem: SelectionProblem = { groups: [{ id: 'G', options: [{ id: 'cheap', cost_cents: 5, value: 5 }, { id: 'dear', cost_cents: 50, value: 9 }] }], phases: [{ cap_cents: 10 }] };
    const result = found(select(problem));
    const findings = checkCertificate(problem, { ...result, chosen: [{ group: 'G', option: 'dear', phase: 0 }] }).findings;
    expect(findings).toContain('phase 0 costs 50 cents, over its cap of 10');
  });
});

/** One phase with buildings: visits that cost and take off value, one film in some of them, one dwelling that must be done. */
const oneCapWithVisits = fc
  .record({
    groups: fc.array(fc.array(fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: -20, max: 300 }), fc.constantFrom('A', 'B')), { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 9 }),
    visits: fc.tuple(fc.integer({ min: 0, max: 80 }), fc.integer({ min: 0, max: 80 })),
    oneFamily: fc.tuple(fc.boolean(), fc.boolean()),
    hasMust: fc.boolean(),
  })
  .map(({ groups, visits, oneFamily, hasMust }): SelectionProblem => ({
    groups: groups.map((options, g) => ({ id: `G${g}`, ...(g % 3 === 2 ? {} : { building: `B${g % 3}` }), options: options.map(([cost_cents, value, family], o) => ({ id: `o${o}`, cost_cents, value, family })) })),
    phases: [{ cap_cents: 0 }],
    buildings: visits.map((price, b) => ({ id: `B${b}`, visit_cents: 2 * price, visitMinutes: 3, visitPrice: [price], oneFamily: oneFamily[b]! })),
    must: hasMust ? ['G0'] : [],
  }));

describe('reasons and curve', () => {
  it('value needed and cost needed bring the reduced value to zero', () => {
    fc.assert(fc.property(severalCaps, (problem) => {
      const result = found(select(problem));
      for (const reason of explain(problem, result).options) {
        const factor = problem.phases[reason.phase]!.valueFactor!;
        const option = problem.groups.find(({ id }) => id === reason.group)!.options.find(({ id }) => id === reason.option)!;
        expect(reason.reducedValue + (reason.valueNeeded! - option.value) * factor).toBeGreaterThanOrEqual(-1e-6);
        expect(reason.reducedValue + (reason.valueNeeded! - 1 - option.value) * factor).toBeLessThan(1e-6);
      }
    }));
  });

  it('every point of the curve is the proved optimum at its cap', () => {
    fc.assert(fc.property(oneCap, (problem) => {
      const points = capCurve(problem);
      if ('why' in points) throw new Error(points.why);
      for (const { cap_cents, value } of points) expect(found(select({ ...problem, phases: [{ cap_cents }] }))).toMatchObject({ status: 'optimal', value });
    }), { numRuns: 20 });
  });

  it('does so with visits, one film a building and musts, and no plan lies above its lines', () => {
    fc.assert(fc.property(oneCapWithVisits, fc.integer({ min: 1, max: 99 }), (problem, share) => {
      const points = capCurve(problem);
      if ('why' in points) throw new Error(points.why);
      const best = (cap_cents: number) => found(select({ ...problem, phases: [{ cap_cents }] }));
      points.forEach(({ cap_cents, value }, i) => {
        expect(best(cap_cents)).toMatchObject({ status: 'optimal', value });
        const next = points[i + 1];
        if (next === undefined) return;
        const between = Math.round(cap_cents + ((next.cap_cents - cap_cents) * share) / 100);
        const line = value + ((next.value - value) * (between - cap_cents)) / Math.max(1, next.cap_cents - cap_cents);
        expect(best(between).value).toBeLessThanOrEqual(line + 1e-9);
      });
    }), { numRuns: 60 });
  });
});
