import type { Kernel, KernelRoom } from './kernel.js';
import { kernel as depreciation } from './depreciation.js';
import { kernel } from './life-cycle.js';

const nothing = (): never => {
  throw new Error('not read here');
};
const room: KernelRoom = { catalogue: nothing, weather: nothing };

/** What a kernel throws at a value. */
function refusalOf(of: Kernel, value: unknown): unknown {
  try {
    return of.run(value, room);
  } catch (fault) {
    return fault;
  }
}

describe('kernel life-cycle', () => {
  it('gives the measures of a project, and null with a reason for what does not exist', () => {
    const result = kernel.run({ cost_cents: 72_000, firstYearSaving_cents: 3900, yearlyPenalty_cents: 1000, life_years: 10, removal_cents: 8000, discountRate: 0.05 }, room);
    expect(result).toMatchObject({ basis: 'real', irr: null, discountedPayback_years: null, withinLife: false, flows_cents: [-72_000, 2900, 2900, 2900, 2900, 2900, 2900, 2900, 2900, 2900, -5100] });
    expect(result).toHaveProperty('why.irr');
    expect(result).toHaveProperty('why.discountedPayback_years');
    expect(result).not.toHaveProperty('why.sir');
    expect((result as { simplePayback_years: number }).simplePayback_years).toBeCloseTo(720 / 29, 12);
  });

  it('gives the interpolated payback of plain flows', () => {
    expect(kernel.run({ flows_cents: [-100, 40, 40, 40], discountRate: 0.03, basis: 'nominal' }, room)).toMatchObject({ simplePayback_years: 2.5, withinLife: true, basis: 'nominal' });
  });

  it.each([
    [{ discountRate: 0.03 }, '/cost_cents'],
    [{ flows_cents: [-1, 2] }, '/discountRate'],
    [{ flows_cents: [-1, 2], discountRate: -1 }, '/discountRate'],
    [{ flows_cents: [-1, 2], discountRate: 0.03, life_years: 4 }, '/life_years'],
    [{ flows_cents: [-1], discountRate: 0.03 }, '/flows_cents'],
    [{ flows_cents: [-1, 2], discountRate: 0.03, inflation: 0.02 }, '/inflation'],
  ])('refuses %j at "%s"', (given, pointer) => {
    expect(refusalOf(kernel, given)).toMatchObject({ pointer });
  });
});

describe('kernel depreciation', () => {
  it('writes 3000 dollars off over 15 years at 200 a year', () => {
    expect(depreciation.run({ basis_cents: 300_000, monthInService: 7, method: 'straight-line', years: 15 }, room)).toEqual({ years: Array(15).fill({ share: 1 / 15, cents: 20_000 }) });
  });

  it('takes all at once as an expense, and July 1.667 % in its first year', () => {
    expect(depreciation.run({ basis_cents: 12_345, method: 'expense' }, room)).toEqual({ years: [{ share: 1, cents: 12_345 }] });
    expect(depreciation.run({ basis_cents: 100_000, monthInService: 7, method: 'mid-month-27.5' }, room)).toMatchObject({ years: expect.arrayContaining([{ share: 0.01667, cents: 1667 }]) as unknown });
  });

  it.each([
    [{ basis_cents: 100, method: 'mid-month-27.5' }, '/monthInService'],
    [{ basis_cents: 100, method: 'straight-line' }, '/years'],
    [{ basis_cents: 100, monthInService: 13, method: 'expense' }, '/monthInService'],
    [{ basis_cents: 100.5, method: 'expense' }, '/basis_cents'],
  ])('refuses %j at "%s"', (given, pointer) => {
    expect(refusalOf(depreciation, given)).toMatchObject({ pointer });
  });
});
