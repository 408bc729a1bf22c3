import { type AssumedValue, type Building, type Dwelling, type Meter, type PayerRule, type PlantAgeing, type PlanType, type Portfolio, readTariff, type TariffText } from '#calc';
import { assumptionBook, type DefaultOf } from '../job/assumption-book.js';
import { grouped, sortedBy } from '../grouped.js';
import { builtClass, cooledShare, daySetPoints, type Filling, type KnownDwelling, type KnownMeter, knownPlant, missingFor, occupiedShares } from './known-dwelling.js';
import { type PlacedWindow, placedWindows, windowIndex } from './placed-windows.js';
import type { NotRanked, PlanFinding } from '../plan/plan-finding.js';

/** The portfolio with plan types laid out and gaps filled; sorted by id before anything is summed. */
export interface KnownPortfolio {
  readonly portfolio: Portfolio;
  readonly buildings: ReadonlyMap<string, Building>;
  readonly dwellings: readonly KnownDwelling[];
  readonly notComputed: readonly NotRanked[];
  readonly findings: readonly PlanFinding[];
  readonly assumed: AssumedValue[];
}

interface Lookups extends Filling {
  readonly studyYear: number;
  readonly plantAgeing: PlantAgeing;
  readonly buildings: ReadonlyMap<string, Building>;
  readonly planTypes: ReadonlyMap<string, PlanType>;
  readonly meters: ReadonlyMap<string, KnownMeter>;
}

const OWNER_PAYS: PayerRule = { id: 'owner', kind: 'owner', ownerShare: 1, resetLag_yr: 0, vacancyShare: 0 };

function flatTariff(cents_kWh: number): TariffText {
  const everyHour = Array.from({ length: 12 }, () => Array.from({ length: 24 }, () => 0));
  return { label: 'ASSUMED', name: 'flat price, assumed', energyratestructure: [[{ rate: cents_kWh / 100 }]], energyweekdayschedule: everyHour, energyweekendschedule: everyHour };
}

/** The tariffs a bill can be made with; one that cannot is left out and said, so that one wrong file does not stop the plan. */
function usableTariffs(portfolio: Portfolio, findings: PlanFinding[]): Map<string, TariffText> {
  const inUse = new Set(portfolio.meters.map((m) => m.tariff));
  const usable = new Map<string, TariffText>();
  for (const text of portfolio.tariffs) {
    const tariff = readTariff(text);
    if (tariff.usable) usable.set(text.label, text);
    else if (inUse.has(text.label)) {
      const wrong = tariff.findings.filter((f) => f.weight === 'error').map((f) => `${f.place}: ${f.seen}, expected ${f.expected}`);
      findings.push({ severity: 'error', subject: text.label, text: `the tariff cannot be billed with (${wrong.join('; ')}): its meters are planned at the assumed flat price`, whatToDo: 'put the tariff right and plan again; until then do not rely on the savings of its meters' });
    }
  }
  return usable;
}

function knownMeters(portfolio: Portfolio, fill: Filling & { readonly findings: PlanFinding[] }): Map<string, KnownMeter> {
  const tariffs = usableTariffs(portfolio, fill.findings);
  const meters = new Map<string, Meter>(portfolio.meters.map((m) => [m.id, m]));
  const served = grouped(sortedBy(portfolio.dwellingMeters, (d) => d.dwelling), (d) => d.meter);
  const ofDwelling = new Map<string, KnownMeter>();
  const flat = (group: string): TariffText => flatTariff(fill.book.take({ group, field: 'price of electricity' }, null, fill.defaultOf<number>('electricity_cents_kWh')));
  for (const [id, rows] of served) {
    const meter = meters.get(id);
    if (meter === undefined || meter.use === 'heating') continue;
    const tariff = (meter.tariff === null ? undefined : tariffs.get(meter.tariff)) ?? flat(meter.building);
    const payerRule = meter.payerRule ?? OWNER_PAYS;
    if (meter.payerRule === null) fill.book.take({ group: meter.building, field: 'who pays the bill' }, null, fill.defaultOf<string>('payerRule'));
    const known: KnownMeter = { id, tariff, payerRule, dwellings: rows.map((r) => r.dwelling) };
    for (const row of rows) ofDwelling.set(row.dwelling, known);
  }
  for (const dwelling of portfolio.dwellings) {
    if (ofDwelling.has(dwelling.id)) continue;
    fill.book.take({ group: dwelling.building, field: 'who pays the bill' }, null, fill.defaultOf<string>('payerRule'));
    ofDwelling.set(dwelling.id, { id: `${dwelling.id} (own meter assumed)`, tariff: flat(dwelling.building), payerRule: OWNER_PAYS, dwellings: [dwelling.id] });
  }
  return ofDwelling;
}

function shell(dwelling: Dwelling, of: { building: Building; planType: PlanType | undefined; windows: readonly PlacedWindow[]; floor_m2: number; fill: Filling }) {
  const { building, planType, windows, floor_m2, fill } = of;
  const at = (field: string) => ({ group: building.id, field });
  const ceilingHeight_m = fill.book.take(at('ceiling height'), dwelling.ceilingHeight_m ?? planType?.ceilingHeight_m ?? null, fill.defaultOf<number>('ceilingHeight_m'));
  const glass_m2 = windows.reduce((sum, w) => sum + ((w.liteRows ?? 1) * (w.liteColumns ?? 1) * w.width.mm * w.height.mm) / 1e6, 0);
  const wallByFloor = fill.defaultOf<number>('exposedWallPerFloor');
  const exposedWall_m2 = fill.book.take(at('opaque outside wall'), dwelling.exposedWall_m2 ?? planType?.exposedWall_m2 ?? null, {
    ...wallByFloor,
    value: Math.max(0, Math.round(wallByFloor.value * floor_m2 - glass_m2)),
    unit: 'm²',
  });
  const age = builtClass(building);
  return {
    ceilingHeight_m,
    exposedWall_m2,
    exposedRoof_m2: dwelling.exposedRoof_m2 ?? (building.storeys !== null && dwelling.storey === building.storeys ? floor_m2 : fill.book.take(at('roof above the dwelling'), null, { ...fill.defaultOf<number>('exposedRoof_m2') })),
    wallU_W_m2K: fill.book.take(at('wall U-value'), null, fill.defaultOf<number>(`wallU.${age}`)),
    roofU_W_m2K: fill.book.take(at('roof U-value'), null, fill.defaultOf<number>(`roofU.${age}`)),
    opaqueAbsorptance: fill.book.take(at('solar absorptance of walls and roof'), null, fill.defaultOf<number>('opaqueAbsorptance')),
    thermalClass: fill.book.take(at('thermal class'), dwelling.thermalClass, fill.defaultOf<NonNullable<Dwelling['thermalClass']>>('thermalClass')),
    airChange_1_h: fill.book.take(at(building.airtightness == null ? 'air change' : `air change (${building.airtightness})`), null, fill.defaultOf<number>(`airChange.${building.airtightness ?? age}`)),
  };
}

function use(dwelling: Dwelling, of: { floor_m2: number; meterBase_kWh: number | null; fill: Filling }) {
  const { floor_m2, meterBase_kWh, fill } = of;
  const at = (field: string) => ({ group: dwelling.building, field });
  const occupants = fill.book.take(at('occupants'), dwelling.occupants, { ...fill.defaultOf<number>('occupantsPerFloor'), value: Math.max(1, Math.round(fill.defaultOf<number>('occupantsPerFloor').value * floor_m2)), unit: 'persons' });
  const perFloor = fill.defaultOf<number>('baseLoadPerFloor_kWh_m2_yr');
  const perPerson = fill.defaultOf<number>('baseLoadPerOccupant_kWh_yr');
  const assumedBase = { ...perFloor, value: Math.round(perFloor.value * floor_m2 + perPerson.value * occupants), unit: 'kWh/yr' };
  const heatingKind = fill.book.take(at('heating'), dwelling.heating.kind, fill.defaultOf<NonNullable<Dwelling['heating']['kind']>>('heatingKind'));
  return {
    occupants,
    baseLoad_kWh_yr: fill.book.take(at('base load'), meterBase_kWh, assumedBase),
    coolingSetPoint_degC: fill.book.take(at('cooling set point'), dwelling.coolingSetPoint_degC, fill.defaultOf<number>('coolingSetPoint_degC')),
    heatingSetPoint_degC: fill.book.take(at('heating set point'), dwelling.heatingSetPoint_degC, fill.defaultOf<number>('heatingSetPoint_degC')),
    occupied: occupiedShares(dwelling.occupiedMonths),
    heatingKind,
    heatingEfficiency: fill.book.take(at(`heating efficiency (${heatingKind})`), dwelling.heating.efficiency, fill.defaultOf<number>(`heatingEfficiency.${heatingKind}`)),
    heatingFuel_cents_kWh: heatingKind === 'gas' ? fill.book.take(at('price of gas'), dwelling.heating.fuel_cents_kWh, fill.defaultOf<number>('gas_cents_kWh')) : 0,
    useFactor: fill.book.take(at('use factor of the sun through the glass'), null, fill.defaultOf<number>('useFactor')),
  };
}

function knownDwelling(dwelling: Dwelling, windows: readonly PlacedWindow[], look: Lookups & { readonly baseLoads: ReadonlyMap<string, number | null> }): KnownDwelling | string {
  const building = look.buildings.get(dwelling.building);
  const meter = look.meters.get(dwelling.id);
  if (building === undefined || meter === undefined) return `building ${dwelling.building} is not in the inventory`;
  const planType = dwelling.planType === null ? undefined : look.planTypes.get(dwelling.planType);
  const floor_m2 = dwelling.floorArea_m2 ?? planType?.floorArea_m2 ?? null;
  const missing = missingFor(dwelling, floor_m2, windows);
  if (missing !== null || floor_m2 === null) return missing ?? 'floor area is not known';
  const share = cooledShare(dwelling.cooledRooms, windows);
  const isCooled = (w: PlacedWindow): boolean => dwelling.cooledRooms === null || dwelling.cooledRooms.includes(w.room ?? '');
  if (share === 0) return 'none of its rooms with windows is cooled: film gives comfort only';
  const used = use(dwelling, { floor_m2, meterBase_kWh: look.baseLoads.get(dwelling.id) ?? null, fill: look });
  return {
    id: dwelling.id,
    building: dwelling.building,
    kind: dwelling.kind,
    floor_m2,
    cooledFloor_m2: floor_m2 * share,
    ...shell(dwelling, { building, planType, windows, floor_m2, fill: look }),
    ...used,
    setPoints_degC: daySetPoints(dwelling.setbacks, { cooling: used.coolingSetPoint_degC, heating: used.heatingSetPoint_degC }),
    ...knownPlant(dwelling.plant, { ...look, group: dwelling.building }),
    meter,
    windows: windows.filter(isCooled),
    uncooledWindows: windows.filter((w) => !isCooled(w)),
  };
}

/** Lays plan types out, joins meters and fills gaps from the assumptions, noting each. */
export function knownPortfolio(portfolio: Portfolio, defaultOf: DefaultOf): KnownPortfolio {
  const book = assumptionBook();
  const buildings = new Map(portfolio.buildings.map((b) => [b.id, b]));
  const meters = new Map(portfolio.meters.map((m) => [m.id, m]));
  const findings: PlanFinding[] = [];
  const look = {
    plantAgeing: portfolio.settings.plantAgeing ?? 'off',
    studyYear: Number(portfolio.settings.studyStart.slice(0, 4)),
    book,
    defaultOf,
    buildings,
    planTypes: new Map(portfolio.planTypes.map((p) => [p.id, p])),
    meters: knownMeters(portfolio, { book, defaultOf, findings }),
    baseLoads: new Map(portfolio.dwellingMeters.map((d) => [d.dwelling, meters.get(d.meter)?.baseLoad_kWh_yr ?? null])),
  };
  if (look.plantAgeing !== 'off') {
    const assumed = defaultOf<number>(`plantAgeing.${look.plantAgeing}`);
    findings.push({ severity: 'warning', subject: 'all machines', text: `plant ageing is on (${look.plantAgeing}): a machine counts as ${String(assumed.value * 100)} % worse for each year of its age, which makes savings larger`, whatToDo: 'leave plant_ageing off unless the machines were measured' });
  }
  const index = windowIndex(portfolio.windows);
  const dwellings: KnownDwelling[] = [];
  const notComputed: NotRanked[] = [];
  for (const dwelling of sortedBy(portfolio.dwellings, (d) => d.id)) {
    const { windows, unplaced } = placedWindows(dwelling, index);
    for (const u of unplaced) findings.push({ severity: 'warning', subject: u.window, text: `left out: ${u.why}`, whatToDo: 'survey the side of the window, or the front azimuth of the dwelling' });
    const known = knownDwelling(dwelling, windows, look);
    if (typeof known === 'string') notComputed.push({ dwelling: dwelling.id, why: known });
    else dwellings.push(known);
  }
  return { portfolio, buildings, dwellings, notComputed, findings, assumed: book.list() };
}
