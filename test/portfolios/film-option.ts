import type { Building, Film, PayerRule, Phase } from '#calc';
import type { FilmOption, OptionWindow, PlanTerms } from '#planning';
import type { RollPricing } from '../../libs/planning/src/rolls/price-by-rolls.js';

export const OWNER_PAYS: PayerRule = { id: 'owner', kind: 'owner', ownerShare: 1, resetLag_yr: 0, vacancyShare: 0 };

/** An option that costs 100 dollars and saves 30 a year, for tests that change one thing of it. */
export function filmOption(change: Partial<FilmOption> = {}): FilmOption {
  return {
    id: 'B1/1|180|A',
    dwelling: 'B1/1',
    building: 'B1',
    facades: [180],
    films: ['A'],
    film: 'A',
    paneCount: 1,
    glassArea_m2: 1,
    pieceArea_m2: 1,
    minutes: { low: 20, best: 30, high: 40 },
    cost: { film_cents: 6_000, labour_cents: 3_000, consumables_cents: 1_000, removal_cents: 0, materialTax_cents: 0, labourTax_cents: 0, total_cents: 10_000 },
    segments: [{ firstYear: 2026, plant: 'present', windowsGone: 0, saving: { coolingElectricity_kWh: 150, cooling_cents: 3_000, addedHeating_cents: 0, addedHeating_kWh: 0 } }],
    filmLife_yr: 3,
    payer: OWNER_PAYS,
    crew: 'own',
    rebates: [],
    from: '2026-07-01',
    waitsFor: [],
    yearlyCooling_cents: 3_000,
    yearlyCoolingSpread_cents: 300,
    asFoundCooling_kWh: 3_000,
    peak_kW: { asFound: 2, filmed: 1.8 },
    runHours_h: { asFound: 1_000, filmed: 900 },
    notes: [],
    ...change,
  };
}

/** Terms without tax, contingency, escalation or ageing: 3 % real, own crew paid in cash. */
export function planTermsOf(change: Partial<PlanTerms> = {}): PlanTerms {
  return {
    view: 'whole',
    studyStart: '2026-07-01',
    currency: 'USD',
    realDiscountRate: 0.03,
    realEscalation: 0,
    filmDegradation_1_yr: 0,
    labour_cents_h: 6_000,
    labourIsCash: true,
    contingencyShare: 0,
    materialTaxShare: 0,
    labourTaxShare: 0,
    consumables_cents_m2: 0,
    trimPerEdge_mm: 12.7,
    edgeGap_mm: 1.5875,
    terms: [],
    ...change,
  };
}

/** A window of one pane 900 × 1,200 mm as crew and cut list see it. */
export function optionWindow(change: Partial<OptionWindow> = {}): OptionWindow {
  return {
    window: 'B1/1/W1',
    mark: 'W1',
    room: 'living room',
    azimuth_deg: 180,
    film: 'A',
    paneCount: 1,
    width_mm: 900,
    height_mm: 1_200,
    enteredWidth: '900',
    enteredHeight: '1200',
    glazing: 'single clear 1/8 in',
    outcome: 'no-listed-trigger',
    reasons: [],
    consent: 'none needed',
    reach: 'floor',
    flags: [],
    existingFilm: false,
    fromPlanType: null,
    inventoryRow: { file: 'windows.csv', row: 2 },
    ...change,
  };
}

export const onePhase = (cap_cents: number): Phase => ({ id: 'O/1', ownerEntity: 'O', name: '1', firstDay: '2026-07-01', lastDay: '2027-06-30', cap_cents, crewMinutes: null });

/** Pricing of one phase and one building: film A in whole rolls of 150 dollars, visits for nothing, one pane a dwelling. */
export function pricingOf(change: Partial<RollPricing> = {}): RollPricing {
  const building = { id: 'B1', ownerEntity: 'O', widestRoll_mm: null, oneFilm: null } as Building;
  return {
    phases: [onePhase(100_000)],
    buildings: new Map([['B1', building]]),
    films: new Map([['A', { id: 'A', freight_cents: null } as Film]]),
    rolls: [{ id: 'A-48', film: 'A', width: { entered: '48', mm: 1219.2 }, length_mm: 30_480, price_cents: 15_000, inStock: 0, lot: null, inventoryRow: { file: 'rolls.csv', row: 2 } }],
    terms: planTermsOf(),
    visit: () => ({ cents: 0, minutes: 0 }),
    mayRotate: () => false,
    windowsOf: ({ option }) => [optionWindow({ window: `${option.dwelling}/W1` })],
    ...change,
  };
}
