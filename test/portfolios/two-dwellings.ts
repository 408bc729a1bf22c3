import type { Building, Dwelling, Film, InventoryRow, Meter, PlanSettings, Portfolio, Window } from '#calc';

// A made-up portfolio with every kind of record and with blanks in places where a person may leave them.

const at = (file: string, row: number): InventoryRow => ({ file, row });

const settings: PlanSettings = {
  name: 'Two dwellings',
  currency: 'USD',
  studyStart: '2026-07-01',
  view: 'whole',
  realDiscountRate: 0.03,
  realEscalation: null,
  labour_cents_h: 3400,
  labourIsCash: true,
  contingencyShare: 0.08,
  materialTaxShare: 0.07,
  labourTaxShare: null,
  consumables_cents_m2: 12.5,
  trimPerEdge_mm: 12.7,
  crewSize: 2,
  crewDays_wk: 3,
  crewHours_day: 7.5,
  plantAgeing: 'off',
  realisation: 'as-modelled',
  drawSeed: null,
  crews: null,
  crewIsNew: null,
  endRemoval_cents_m2: null,
  mixedFilm: false,
  noWork: [{ firstDay: '2026-09-01', lastDay: '2026-10-31', reason: 'storm season' }],
};

const building: Building = {
  id: 'AA',
  name: 'Example Annexe',
  ownerEntity: 'OWNER1',
  latitude_deg: 25.8,
  longitude_deg: -80.3,
  timeZone_h: -5,
  daylightTime: true,
  climate: 'miami',
  weatherFile: null,
  declination_deg: null,
  airtightness: null,
  paneReplacement_cents: null,
  builtYear: 1971,
  storeys: 2,
  minVisibleTransmittance: null,
  maxOutsideVisibleReflectance: 0.2,
  allowedFilms: ['A'],
  oneFilm: null,
  wholeElevations: false,
  notice_h: 24,
  visit_cents: 9500,
  visitMinutes: 45,
  crew: 'contractor',
  contractor_cents_m2: 2150.5,
  contractorVisit_cents: 12_000,
  widestRoll_mm: 1524,
  turnover_1_yr: 0.3,
  endYear: null,
  horizons: [{ azimuth_deg: 270, points: [{ azimuth_deg: 250, altitude_deg: 12 }, { azimuth_deg: 290, altitude_deg: 20, passes: 0.2 }] }],
  inventoryRow: at('buildings.csv', 2),
};

export function dwelling(id: string, row: number): Dwelling {
  return {
    id,
    building: 'AA',
    kind: 'dwelling',
    planType: 'AA-1',
    frontAzimuth_deg: 180,
    mirrored: null,
    floorArea_m2: 62.25,
    storey: 1,
    ceilingHeight_m: null,
    exposedWall_m2: 31.1,
    exposedRoof_m2: null,
    thermalClass: 'medium',
    coolingSetPoint_degC: 24.4,
    heatingSetPoint_degC: null,
    setbacks: null,
    occupiedMonths: null,
    occupants: 2,
    plant: {
      kind: 'single-speed',
      ratedCapacity_W: 7033.7,
      efficiency: { scale: 'seer', value: 9.5 },
      age_yr: 17,
      replacementYear: 2028,
      efficiencyAfter: { scale: 'seer2', value: 15.2 },
    },
    heating: { kind: 'electric-resistance', efficiency: 1, fuel_cents_kWh: null },
    cooledRooms: ['living', 'bedroom'],
    payerRule: null,
    inventoryRow: at('dwellings.csv', row),
  };
}

export function window(id: string, of: Pick<Window, 'dwelling' | 'planType'>): Window {
  return {
    id,
    ...of,
    mark: id.slice(id.lastIndexOf('/') + 1),
    room: 'living',
    azimuth_deg: 270,
    tilt_deg: 90,
    width: { entered: '36 1/2', mm: 927.1 },
    height: { entered: '46', mm: 1168.4 },
    liteRows: 1,
    liteColumns: 2,
    frameShare: null,
    glazing: 'single-clear-3',
    labelSolarHeatGain: null,
    labelUFactor_W_m2K: null,
    shade: { overhangDepth_m: 0.6, overhangGap_m: 0.2, finDepth_m: 0, finGap_m: 0, reveal_m: 0.05 },
    insectScreenShare: 0.5,
    screenKind: null,
    blind: 'light',
    sillHeight_m: 0.9,
    reach: 'floor',
    flags: ['escape', 'tempered-mark-seen'],
    warrantyEnd: '2029-04-30',
    replacementYear: null,
    existingFilm: 'present',
    existingFilmCondition: 'peeling',
    dropped: false,
    inventoryRow: at('windows.csv', 2),
  };
}

const meter: Meter = {
  id: 'AA/M1',
  building: 'AA',
  tariff: 'FLAT',
  payerRule: { id: 'ratio-60', kind: 'ratio', ownerShare: 0.4, resetLag_yr: 1, vacancyShare: 0.05 },
  use: 'all',
  baseLoad_kWh_yr: null,
  usagePoint: '1/UsagePoint/7',
  inventoryRow: at('meters.csv', 2),
};

const film: Film = {
  id: 'A',
  name: 'Film A, neutral',
  filmClass: 'neutral',
  solarTransmittance: 0.4,
  frontReflectance: 0.16,
  backReflectance: 0.16,
  visibleTransmittance: 0.45,
  outsideVisibleReflectance: 0.12,
  insideVisibleReflectance: 0.12,
  roomEmissivity: 0.8,
  side: 'room',
  life_yr: 12,
  mayRotate: true,
  freight_cents: 4500,
  minimumOrder_cents: null,
  price_cents_m2: 1750,
  quoteDate: '2026-05-04',
  quoteEnds: null,
  basis: 'assumed',
  source: 'made up',
  inventoryRow: null,
};

/** Two dwellings of one plan type on one meter; lists in the order of their ids, as a store gives them back. */
export const twoDwellings: Portfolio = {
  settings,
  ownerEntities: [{ id: 'OWNER1', name: 'Owner One', inventoryRow: null }],
  phases: [
    { id: 'OWNER1/2027', ownerEntity: 'OWNER1', name: '2027', firstDay: '2026-07-01', lastDay: '2027-06-30', cap_cents: 1_400_000, crewMinutes: null },
    // Thirty million dollars: more cents than a 32-bit column holds.
    { id: 'OWNER1/2028', ownerEntity: 'OWNER1', name: '2028', firstDay: '2027-07-01', lastDay: '2028-06-30', cap_cents: 3_000_000_000, crewMinutes: 4800 },
  ],
  buildings: [building],
  planTypes: [
    { id: 'AA-1', building: 'AA', name: 'one bedroom', floorArea_m2: 62.25, ceilingHeight_m: 2.44, exposedWall_m2: null, inventoryRow: at('plan-types.csv', 2) },
  ],
  dwellings: [dwelling('AA/001', 2), dwelling('AA/002', 3)],
  windows: [window('AA-1/W01', { dwelling: null, planType: 'AA-1' }), { ...window('AA/002/W01', { dwelling: 'AA/002', planType: null }), dropped: true, shade: null }],
  meters: [meter],
  dwellingMeters: [
    { dwelling: 'AA/001', meter: 'AA/M1', inventoryRow: at('dwelling-meters.csv', 2) },
    { dwelling: 'AA/002', meter: 'AA/M1', inventoryRow: at('dwelling-meters.csv', 3) },
  ],
  tariffs: [
    {
      label: 'FLAT',
      name: 'Flat, made up',
      energyratestructure: [[{ rate: 0.19 }]],
      energyweekdayschedule: [[0]],
      energyweekendschedule: [[0]],
      fixedchargefirstmeter: 9,
      utility: { known: 'to nobody' },
    },
  ],
  consents: [
    { id: 'C1', building: 'AA', kind: 'glass maker', glazing: 'single-clear-3', film: 'A', window: null, state: 'asked', date: null, reference: null, inventoryRow: at('consents.csv', 2) },
  ],
  moveOuts: [{ dwelling: 'AA/001', out: '2026-08-03', in: null, inventoryRow: at('moveouts.csv', 2) }],
  films: [film],
  rolls: [
    { id: 'A-36', film: 'A', width: { entered: '36', mm: 914.4 }, length_mm: 30480, price_cents: 28_900, inStock: 0, lot: null, inventoryRow: at('rolls.csv', 2) },
  ],
  readings: [
    { building: 'AA', azimuth_deg: 270, glazing: 'single-clear-3', bare_W_m2: 431.5, filmed_W_m2: null, outdoors_W_m2: 590, film: null, taken: '2026-06-02T16:10', repeat: 1, inventoryRow: at('readings.csv', 2) },
  ],
  locks: [{ subject: 'AA/002', direction: 'out', azimuth_deg: null, phase: null, film: null, reason: 'about to be sold', role: 'manager', date: '2026-06-20' }],
  bills: [
    { meter: 'AA/M1', firstDay: '2026-01-14', lastDay: '2026-02-12', use_kWh: 812.4, peak_kW: null, amount_cents: 15_436, estimated: false, inventoryRow: at('bills.csv', 2) },
    { meter: 'AA/M1', firstDay: '2026-02-13', lastDay: '2026-03-15', use_kWh: 790, peak_kW: 4.2, amount_cents: null, estimated: true, inventoryRow: at('bills.csv', 3) },
  ],
  siteRecords: [
    {
      id: '2026-08-04|AA/001|AA/001/W01|1|field-size', day: '2026-08-04', kind: 'field-size', dwelling: 'AA/001', window: 'AA/001/W01', pane: 1, film: null,
      width: { entered: '36 5/8', mm: 930.275 }, height: null, personMinutes: null, rollWidth_mm: null, rollLength_mm: null, defect: null, note: 'frame out of square', inventoryRow: at('site-records.csv', 2),
    },
  ],
  ledger: [
    {
      id: 'L1', ownerEntity: 'OWNER1', phase: 'OWNER1/2027', kind: 'quote', day: '2026-06-01', expires: '2026-08-31', amount_cents: 310_000, freight_cents: 4500, minimumOrder_cents: null,
      film: 'A', settles: null, note: null, inventoryRow: at('ledger.csv', 2),
    },
  ],
  rebates: [
    {
      id: 'R1', building: 'AA', rate_cents_m2: 1076.39, cap_cents: 500_000, costShare: 0.5, sectors: [{ from_deg: 90, to_deg: 270 }], solarHeatGainBeforeAtLeast: 0.6, solarHeatGainAfterAtMost: 0.4,
      areaAtLeast_m2: null, needsPreApproval: true, preApprovedOn: null, deadline: '2027-06-30', inventoryRow: at('rebates.csv', 2),
    },
  ],
};
