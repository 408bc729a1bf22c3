import type { Portfolio } from '#calc';
import { askedPortfolio } from './asked-portfolio.js';

const owners = [{ id: 'NORTH', name: 'North' }, { id: 'SOUTH', name: 'South' }];
const year = { id: 'NORTH/2027', ownerEntity: 'NORTH', name: '2027', firstDay: '2027-01-01', lastDay: '2027-12-31', cap_cents: 500_000, crewMinutes: null };
const portfolio = (phases: Portfolio['phases']): Portfolio => ({ settings: { name: 'Two', view: 'whole', studyStart: '2026-03-01' }, ownerEntities: owners, phases }) as unknown as Portfolio;

describe('the fiscal years of a plan', () => {
  it('are those of the portfolio', () => {
    expect(askedPortfolio(portfolio([year]), {}).phases).toEqual([year]);
  });

  it('are one year from the study start for each owner where one cap is asked', () => {
    const { phases } = askedPortfolio(portfolio([year]), { oneCap_cents: 100 });
    expect(phases.map((p) => [p.id, p.firstDay, p.lastDay, p.cap_cents])).toEqual([['NORTH/one cap', '2026-03-01', '2027-02-28', 100], ['SOUTH/one cap', '2026-03-01', '2027-02-28', 100]]);
  });

  it('are a year without money where none is stated and none asked: everything is ranked, nothing bought', () => {
    expect(askedPortfolio(portfolio([]), {}).phases.map((p) => [p.id, p.cap_cents])).toEqual([['NORTH/no cap given', 0], ['SOUTH/no cap given', 0]]);
  });

  it('take the cap asked for one of them', () => {
    expect(askedPortfolio(portfolio([year]), { caps: [{ phase: 'NORTH/2027', cap_cents: 7 }] }).phases[0]?.cap_cents).toBe(7);
  });

  it('refuse a cap of a year that is not there, or below zero', () => {
    expect(() => askedPortfolio(portfolio([year]), { caps: [{ phase: 'EAST/2027', cap_cents: 7 }] })).toThrow('phase must be one of NORTH/2027, got EAST/2027');
    expect(() => askedPortfolio(portfolio([year]), { caps: [{ phase: 'NORTH/2027', cap_cents: -1 }] })).toThrow('cap must be 0 or more, got -1');
  });
});
