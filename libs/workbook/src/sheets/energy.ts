import type { BuildingPeak, OptionEnergy, OptionGlass, Plan, SeasonEnergy } from '#planning';
import type { Book } from '../book.js';
import { dollars } from '../cells.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import type { Column } from '../table.js';

const NOTES = [
  'Present machine, first year, before the plan\'s other lines. Summer: May to October north of the equator. Moisture of today still taken out; "if the room gets damper" lets it follow the shorter run: an upper figure, in no rank and no value.',
  'Design day: the hottest clear day of the climate\'s typical year, its highest hour at the dry bulb exceeded in 0.4 % of the hours. Shorter running and a smaller peak are shown; no money is given for a longer life of the machine.',
  'Break-even failure: yearly share of filmed panes whose replacement uses up the net present value = value / (panes × replacement price × sum of 1/(1+r)^t over the film\'s life). How many panes break is not guessed.',
];

const season = (name: string, of: (o: OptionEnergy) => SeasonEnergy, money: string): readonly Column<OptionEnergy>[] => [
  { head: `${name}: cooling less`, unit: 'kWh', width: 9, format: FORMAT.whole, value: (o) => of(o).cooling_kWh },
  { head: `${name}: cooling less`, unit: money, width: 9, format: FORMAT.money, value: (o) => dollars(of(o).cooling_cents) },
  { head: `${name}: heating more`, unit: 'kWh', width: 9, format: FORMAT.whole, value: (o) => of(o).addedHeating_kWh },
  { head: `${name}: heating more`, unit: money, width: 9, format: FORMAT.money, value: (o) => dollars(of(o).addedHeating_cents) },
];

/** What an option is warned of, and why it has no break-even. */
const warningsOf = (o: OptionEnergy): string[] => [...o.warnings, ...(o.failure.share_1_yr === null && o.failure.why !== null ? [`No break-even: ${o.failure.why}.`] : [])];

/** Many options are warned of the same: each warning is said once, by number, above the table. */
const numbered = (plan: Plan): string[] => [...new Set(plan.energy.options.flatMap(warningsOf))];

const columns = (money: string, warnings: readonly string[]): readonly Column<OptionEnergy>[] => [
  { head: 'Option', unit: 'dwelling, sides, film', width: 24, value: (o) => o.option },
  { head: 'In the plan', unit: 'phase', width: 18, value: (o) => o.phase ?? 'ranked only' },
  ...season('Summer', (o) => o.summer, money),
  ...season('Winter', (o) => o.winter, money),
  { head: 'If the room gets damper', unit: 'kWh less', width: 10, format: FORMAT.whole, value: (o) => o.damper.cooling_kWh },
  { head: 'If the room gets damper', unit: `${money} less`, width: 10, format: FORMAT.money, value: (o) => dollars(o.damper.cooling_cents) },
  { head: 'Run hours avoided', unit: 'h/yr', width: 9, format: FORMAT.whole, value: (o) => o.runHoursAvoided_h },
  { head: 'Design day, as found', unit: 'kW', width: 9, format: FORMAT.two, value: (o) => o.peak.asFound_kW },
  { head: 'Same hour, filmed', unit: 'kW', width: 9, format: FORMAT.two, value: (o) => o.peak.filmedThen_kW },
  { head: 'Peak, as found', unit: 'tons', width: 8, format: FORMAT.two, value: (o) => o.peak.asFound_tons },
  { head: 'Peak, filmed', unit: 'tons', width: 8, format: FORMAT.two, value: (o) => o.peak.filmed_tons },
  { head: 'Break-even failure', unit: 'of panes a year', width: 11, format: FORMAT.percentTwo, value: (o) => o.failure.share_1_yr ?? '' },
  { head: 'Warnings', unit: 'by number, above', width: 12, value: (o) => warningsOf(o).map((w) => String(warnings.indexOf(w) + 1)).join(', ') },
];

const glassColumns: readonly Column<OptionGlass>[] = [
  { head: 'Option', unit: 'dwelling, sides, film', width: 24, value: (g) => g.option },
  { head: 'Glass', unit: '', width: 28, value: (g) => g.glazing },
  { head: 'Film', unit: '', width: 9, value: (g) => g.film },
  { head: 'Area', unit: 'm²', width: 9, format: FORMAT.two, value: (g) => g.glass_m2 },
  { head: 'Cut on this glass', unit: 'of its heat gain', width: 9, format: FORMAT.percent, value: (g) => g.cut },
  { head: 'Cut on single clear', unit: 'as the sheet says', width: 9, format: FORMAT.percent, value: (g) => g.cutOnSingleClear },
  { head: 'Survives here', unit: 'of that', width: 9, format: FORMAT.percent, value: (g) => g.survives },
  { head: 'Edge stress, estimate', unit: 'MPa', width: 9, format: FORMAT.one, value: (g) => g.edgeStress_MPa },
  { head: 'Figures, and when the stress is highest', unit: '', width: 60, value: (g) => [g.isMeasured ? 'measured on site' : g.assumed ?? 'catalogue', ...(g.misleads ? ['the sheet\'s figure would mislead here'] : []), g.edgeStressWeather].join('; ') },
];

/** The peak of the planned dwellings of a building in one sentence. */
const peakText = (b: BuildingPeak): string =>
  `${b.building}, design day: ${String(b.dwellings)} planned dwellings take ${b.asFound_kW.toFixed(1)} kW together at ${String(b.hour)} h standard time, ${b.filmed_kW.toFixed(1)} kW with the film; ${b.dryBulb_degC.toFixed(1)} °C dry bulb, ${b.wetBulb_degC.toFixed(1)} °C wet bulb; ${b.isHumid ? 'humid' : 'not a humid'} climate.`;

/** Energy of each line and of each ranked dwelling's best option; the peak of each building on its design day. */
export function energySheet(book: Book, plan: Plan): void {
  const warnings = numbered(plan);
  oneTableSheet<OptionEnergy>(book, {
    name: SHEET.energy,
    isAsRun: true,
    about: `${plan.name}: what film changes by season, on the hottest day, and for the machine; results of the run, not readings`,
    notes: [...NOTES, ...plan.energy.buildings.map(peakText), ...warnings.map((w, i) => `Warning ${String(i + 1)}: ${w}`)],
    columns: columns(plan.terms.currency, warnings),
    rows: plan.energy.options,
    none: 'No dwelling has an option.',
    frozenColumns: 1,
  });
}

/** What the film does on each glass, beside what its sheet says of it. */
export function glassSheet(book: Book, plan: Plan): void {
  oneTableSheet<OptionGlass>(book, {
    name: SHEET.glass,
    isAsRun: true,
    about: `${plan.name}: the film on the glass it goes on`,
    notes: ['A film\'s sheet speaks of single 3 mm clear glass. "Survives here" is the share of that cut left on the glass it goes on: rank and saving use this, not the sheet.'],
    columns: glassColumns,
    rows: plan.energy.glass,
    none: 'No dwelling has an option.',
    frozenColumns: 1,
  });
}
