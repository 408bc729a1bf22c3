import { catalogueWords } from './catalogue-words.js';
import type { CellContext } from './cells/reading.js';
import { UNITS } from './cells/quantity-cell.js';
import { canonicalHeader, type Column } from './columns/column.js';
import type { Table } from './columns/table.js';
import { FLAT_LISTS, LISTS, TABLES } from './gathered.js';
import type { PlanText } from './read-plan.js';

/** What a reader says it expects, heard by giving it something no column takes; null where any text will do. */
function takes(column: Column<unknown>, context: Omit<CellContext, 'unit'>): string | null {
  return column.read('\u0001', { ...context, unit: column.unit }).remark?.expected ?? null;
}

const cell = (text: string): string => text.replace(/\|/g, '\\|');

function unitsOf(column: Column<unknown>): string {
  if (column.unit === '') return column.quantity === 'share' ? 'or `_pct`' : '';
  const others = Object.keys(UNITS[column.quantity] ?? {}).filter((unit) => unit !== column.unit);
  return `\`${column.unit}\`; or ${others.map((unit) => `\`_${unit}\``).join(' ')}`;
}

function tableGuide(table: Table, context: Omit<CellContext, 'unit'>): string {
  const columns = Object.values(table.columns);
  const rows = columns.map((column) => {
    const expected = takes(column, context);
    const also = column.also.length === 0 ? '' : column.also.join(', ');
    return `| \`${canonicalHeader(column)}\`${column.need === 'needed' ? ' *' : ''} | ${cell(column.about)} | ${cell(expected ?? 'text')} | ${unitsOf(column)} | ${cell(column.example)} | ${cell(also)} |`;
  });
  return [
    `## ${table.name}.csv`, '', table.about, '',
    '| Header | What it says | What a cell may be | Unit, or units in its place | Example | Other headers taken |', '|---|---|---|---|---|---|', ...rows, '',
  ].join('\n');
}

const PLAN_FIELDS: Readonly<Record<keyof PlanText, string>> = {
  name: 'name of the plan (needed)',
  currency: 'three letters; USD if left out',
  study_start: 'day the study starts, year-month-day (needed)',
  view: '`whole` (all payers) or `owner`; whole if left out',
  real_discount_rate: 'yearly, above inflation, as a share: 0.03',
  real_escalation: 'yearly rise of electricity prices above inflation, as a share',
  labour_per_hour: 'cost of one person-hour, in money',
  labour_is_cash: 'false when the crew is paid whether it films or not',
  contingency_share: 'share set aside inside the cap',
  material_tax_share: 'tax on film and consumables, as a share',
  labour_tax_share: 'tax on labour, as a share',
  consumables_per_m2: 'solution, blades and cloths per square metre of film, in money',
  end_removal_per_m2: 'taking film off at the end of its life, per square metre of film still on the glass, in money of the study start; counted against the savings, not against a cap. Left out: 0, the film stays on until the window goes. Old film takes about 10 minutes a pane and 1 minute a square foot by the time model',
  end_removal_per_ft2: 'the same per square foot, in place of it',
  trim_per_edge_mm: 'film cut larger than the glass, PER EDGE; 12.7 mm is half an inch',
  crew_size: 'people',
  crews: 'crews side by side',
  crew_is_new: 'whether the crew puts film on for the first time: its first day takes longer',
  crew_days_wk: 'days a week',
  crew_hours_day: 'hours a day',
  plant_ageing: '`off` (the default), `kept` or `neglected`: whether an old cooling machine counts as worse by 1 % (kept) or 3 % (neglected) a year; it raises savings',
  mixed_film: 'true: a dwelling may get one film per side',
  realisation: '`as-modelled` (the default) or `as-found`: whether savings count as the model has them, or with the middle of what studies and bills found',
  draw_seed: 'whole number that draws who goes first among near-equal dwellings of several phases; blank draws nothing',
  owner_entities: 'list of `{ "id", "name" }`: who holds buildings',
  phases: 'list of `{ "owner_entity", "name", "first_day", "last_day", "cap", "crew_minutes" }`: fiscal years with what may be spent in each, in money',
  no_work: 'list of `{ "first_day", "last_day", "reason" }`: days nobody works',
  facade_words: 'words of your own for sides: `{ "street side": "SW" }`',
  files: 'how a file is to be read where the program guesses wrong: `{ "windows.csv": { "encoding", "delimiter", "decimal", "date_order", "header_line" } }`',
};

const INTRO = `# Inventory files

What to fill in, file by file. Written from the column definitions by \`node scripts/inventory-files.mjs\`; do not edit by hand.

Only \`buildings.csv\`, \`dwellings.csv\` and \`windows.csv\` must be there; every other file may be missing, and what it would say
is assumed and shown as assumed. Columns marked * must be there and filled; every other column may be left out, and **a blank
cell means "not known"**: never zero, never a default. \`n/a\`, \`-\`, \`?\`, \`TBD\`, \`#N/A\` and the like are read as blank.

- **Headers** are matched whatever their case, spaces and punctuation, by whole names only. A unit may follow the name
  (\`width_mm\`, \`Width (in)\`, \`Floor area [sq ft]\`); without one the unit of the table below is taken. Two headers for one
  column are an error. Columns nobody knows are kept with their rows and reported.
- **Lengths**: \`35 1/2\`, \`35-1/2\`, \`35.5"\`, \`35½\`, \`2'11 1/2"\`, \`902 mm\`, \`0.902 m\`. A unit in the cell wins over the header's.
- **Sizes of windows are the sight size of ONE pane**, width before height: the glass that is seen and filmed.
- **Dates**: year-month-day. Day and month in figures are read when the file gives their order away, and asked about otherwise.
- **Files**: commas, semicolons or tabs; UTF-8, UTF-16 or Windows-1252; decimal points or commas. What was found is reported,
  and \`plan.json\` can set it by hand. Title lines above the header and total rows are left out with a note.
- **Bad rows** are not taken; they come back as \`NAME.rejected.csv\` with their original columns and the reasons. Correct them
  there and send that file. All good rows are kept.
`;

/** The documentation of every file, made of the same definitions the reader uses. */
export function inventoryFilesGuide(): string {
  const context = { decimal: '.', dateOrder: null, glazingWords: catalogueWords(), facadeWords: {} } as const;
  const flat = FLAT_LISTS.map((list) => `\`${TABLES[list].name}.csv\``).join(', ');
  return [
    INTRO,
    ...LISTS.map((list) => tableGuide(TABLES[list], context)),
    '## One flat inventory', '',
    `Instead of ${flat}, one file of any other name with one row per window and the columns of all three side by side. A building or`,
    'dwelling repeated on many rows is one; the first row that fills a column counts, and rows that disagree are reported.', '',
    '## plan.json', '', '| Field | What it says |', '|---|---|', ...Object.entries(PLAN_FIELDS).map(([field, about]) => `| \`${field}\` | ${cell(about)} |`), '',
    '## tariffs.json', '',
    'A list of tariffs in the field names of the open utility rate database: `label` (what meters.csv names), `energyratestructure` (periods,',
    'each a list of tiers with `rate`, `max`, `adj`, `sell`), `energyweekdayschedule` and `energyweekendschedule` (12 months × 24 hours of period',
    'numbers), `demandratestructure` with its schedules, `flatdemandstructure` with `flatdemandmonths`, `fixedchargefirstmeter`, `mincharge`.',
    'Tier limits are cumulative within the month. `clock` is `standard` (taken if left out) or `daylight`. Other fields pass through untouched.',
    'A label may stand several times with `startdate` and `enddate`: the version that holds when the study starts is used, and days without a price or with two are errors.', '',
  ].join('\n');
}

/** An empty table to fill in: the header line and one line of examples. */
export function templateOf(name: string): string | null {
  const list = LISTS.find((each) => TABLES[each].name === name);
  if (list === undefined) return null;
  const columns = Object.values(TABLES[list].columns);
  const quoted = (text: string): string => (/[",]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text);
  return `${columns.map(canonicalHeader).join(',')}\n${columns.map(({ example }) => quoted(example)).join(',')}\n`;
}
