import type { Building, Dwelling, InventoryRow, Meter, Portfolio } from '#calc';
import { espiBills } from './bills/espi-bills.js';
import { catalogueWords } from './catalogue-words.js';
import type { GlazingWords } from './cells/glazing-words.js';
import type { CellContext } from './cells/reading.js';
import { lookAtFile, type FileLook } from './files/file-look.js';
import { filesOf, type InventoryFile } from './files/inventory-file.js';
import { FindingList, type Finding } from './finding.js';
import { RepeatedRecords } from './flat-inventory.js';
import { FLAT_LISTS, LISTS, listNamed, TABLES, WORK_LISTS, type Gathered, type GatheredList, type Placed } from './gathered.js';
import { ownersOf, phasesOf, readPlanText, settingsOf, type PlanText } from './read-plan.js';
import { readSheet } from './read-sheet.js';
import { readTariffs } from './read-tariffs.js';
import { lookAtWeather } from './weather-look.js';
import { recordsFrom, type InventoryRecords } from './records-from.js';
import { rejectFileOf, type ReadFile, type RejectFile } from './reject-file.js';

/** Cells of columns nobody knows, kept beside the record of their row. */
export interface ExtraCells {
  readonly row: InventoryRow;
  readonly cells: Readonly<Record<string, string>>;
}

/** How a file was read. */
export interface FileNote extends Partial<FileLook> {
  readonly name: string;
  /** Table or JSON file it was taken for; null when nobody knows it. */
  readonly takenFor: string | null;
  /** False when nothing of it could be read; a finding says why. */
  readonly readable: boolean;
  readonly rowsRead: number;
}

/** Everything that came out of the files. */
export interface Intake {
  readonly records: InventoryRecords;
  readonly findings: readonly Finding[];
  readonly rejects: readonly RejectFile[];
  readonly extras: readonly ExtraCells[];
  readonly files: readonly FileNote[];
}

export interface IntakeOptions {
  /** What is kept from earlier; ids in it may be named by the files. */
  readonly kept?: Portfolio | null;
  readonly glazingWords?: GlazingWords;
  /** Meter of bills whose file names none. */
  readonly meter?: string;
  /** Interval readings (XML) as days, or as the blocks they come in. */
  readonly by?: 'day' | 'block';
  /** The one table these files are of, whatever their names: other lists are neither read nor missed. */
  readonly only?: GatheredList;
  /** ISO date; site records of a later day are said. Left out, none is. */
  readonly today?: string;
}

interface Job {
  readonly findings: FindingList;
  readonly plan: PlanText | null;
  readonly glazingWords: GlazingWords;
  readonly lists: Record<GatheredList, Placed<unknown>[]>;
  readonly extras: ExtraCells[];
  readonly notes: FileNote[];
  readonly read: ReadFile[];
}

const say = (job: Job, file: string, finding: Pick<Finding, 'severity' | 'code' | 'expected' | 'whatToDo'>): void =>
  job.findings.add({ file, row: null, column: null, value: null, ...finding });

/** Look of a file with what a person set by hand in plan.json laid over it. */
function settled(look: FileLook, plan: PlanText | null, file: string): FileLook & { readonly headerLine: number | null } {
  const by = plan?.files[file];
  return { encoding: by?.encoding ?? look.encoding, delimiter: by?.delimiter ?? look.delimiter, decimal: by?.decimal ?? look.decimal, dateOrder: by?.date_order ?? look.dateOrder, headerLine: by?.header_line ?? null };
}

function sayLook(job: Job, file: string, { encoding, delimiter, decimal, dateOrder }: FileLook): void {
  const said = [
    ...(encoding === 'utf-8' ? [] : [`encoding ${encoding}`]),
    ...(delimiter === ',' ? [] : [`delimiter "${delimiter === '\t' ? 'tab' : delimiter}"`]),
    ...(decimal === '.' ? [] : ['decimal commas']),
    ...(dateOrder === null ? [] : [`dates as ${dateOrder}-year`]),
  ];
  if (said.length > 0) say(job, file, { severity: 'note', code: 'read-as', expected: 'UTF-8, commas, decimal points, year-month-day', whatToDo: `read with ${said.join(', ')}; if that is wrong, set it in plan.json under "files"` });
}

async function readTable(file: InventoryFile, list: GatheredList | null, job: Job): Promise<void> {
  const found = await lookAtFile(file);
  if (!('encoding' in found)) {
    job.findings.add({ file: file.name, row: null, column: null, value: null, ...found });
    job.notes.push({ name: file.name, takenFor: list === null ? null : TABLES[list].name, readable: false, rowsRead: 0 });
    return;
  }
  const { headerLine, ...look } = settled(found, job.plan, file.name);
  sayLook(job, file.name, look);
  const context: Omit<CellContext, 'unit'> = { decimal: look.decimal, dateOrder: look.dateOrder, glazingWords: job.glazingWords, facadeWords: job.plan?.facade_words ?? {} };
  const lists = list === null ? FLAT_LISTS : [list];
  const take = list === null ? takeFlat(job) : takeOne(job, list);
  const summary = await readSheet({
    file, look, context, headerLine, findings: job.findings, take: take.row,
    tables: lists.map((name) => TABLES[name]),
    takeExtra: (cells, row) => job.extras.push({ cells, row }),
  });
  take.end();
  job.notes.push({ name: file.name, takenFor: list === null ? 'flat inventory' : TABLES[list].name, readable: summary.headerLine !== null, rowsRead: summary.rowsRead, ...look });
  job.read.push({ file, look, headerLine: summary.headerLine, personal: summary.personal });
}

interface Take {
  readonly row: (records: readonly (readonly unknown[])[], row: InventoryRow) => void;
  readonly end: () => void;
}

const takeOne = (job: Job, list: GatheredList): Take => ({
  row: ([records = []], row) => {
    for (const record of records) job.lists[list].push({ record, row });
  },
  end: () => undefined,
});

/** A flat inventory repeats building and dwelling on every row; windows come one a row. */
function takeFlat(job: Job): Take {
  const buildings = new RepeatedRecords<Building>(job.findings);
  const dwellings = new RepeatedRecords<Dwelling>(job.findings);
  return {
    row: ([building = [], dwelling = [], windows = []], row) => {
      for (const record of building as readonly Building[]) buildings.take(record, row);
      for (const record of dwelling as readonly Dwelling[]) dwellings.take(record, row);
      for (const record of windows) job.lists.windows.push({ record, row });
    },
    end: () => {
      job.lists.buildings.push(...buildings.all());
      job.lists.dwellings.push(...dwellings.all());
    },
  };
}

function sayMissing(job: Job, kept: Portfolio | null): void {
  const here = new Set(job.notes.map(({ takenFor }) => takenFor));
  const flat = here.has('flat inventory');
  for (const list of LISTS) {
    const { name } = TABLES[list];
    if (here.has(name) || WORK_LISTS.includes(list) || (flat && (FLAT_LISTS as readonly string[]).includes(list))) continue;
    const must = (FLAT_LISTS as readonly string[]).includes(list) && (kept?.[list as 'buildings'] ?? []).length === 0;
    say(job, `${name}.csv`, must
      ? { severity: 'error', code: 'file-missing', expected: 'buildings.csv, dwellings.csv and windows.csv, or one flat inventory', whatToDo: 'add the file' }
      : { severity: 'note', code: 'file-absent', expected: 'may be missing', whatToDo: 'what it would say is taken as kept before, or assumed and shown as assumed' });
  }
  for (const name of ['plan.json', 'tariffs.json'].filter((each) => !here.has(each))) {
    say(job, name, { severity: 'note', code: 'file-absent', expected: 'may be missing', whatToDo: 'what it would say is taken as kept before, or assumed and shown as assumed' });
  }
}

const isXml = (file: InventoryFile): boolean => /\.xml$/i.test(file.name);
const isNamed = (name: string) => (file: InventoryFile): boolean => file.name.toLowerCase() === name;

/** Tables the files are, by their names; one file of an unknown name may be a flat inventory. */
async function readTables(files: readonly InventoryFile[], job: Job, only: GatheredList | undefined): Promise<void> {
  for (const file of files) {
    if (isXml(file)) continue;
    if (/\.json$/i.test(file.name)) {
      if (!isNamed('plan.json')(file) && !isNamed('tariffs.json')(file)) say(job, file.name, { severity: 'warning', code: 'file-unknown', expected: 'plan.json or tariffs.json', whatToDo: 'left alone; rename it if it is one of these' });
    } else await readTable(file, only ?? listNamed(file.name), job);
  }
}

/** Files of interval readings, read when the meters are known. */
async function readReadings(files: readonly InventoryFile[], job: Job, of: IntakeOptions): Promise<void> {
  const buildings = new Map([...(of.kept?.buildings ?? []), ...job.lists.buildings.map(({ record }) => record as Building)].map(({ id, timeZone_h }) => [id, timeZone_h]));
  const meters = [...(of.kept?.meters ?? []), ...job.lists.meters.map(({ record }) => record as Meter)].map(({ id, usagePoint, building }) => ({ id, usagePoint, timeZone_h: buildings.get(building) ?? null }));
  for (const file of files.filter(isXml)) {
    const { lines, rowsRead, readable } = await espiBills(file, { meters, meter: of.meter ?? null, by: of.by ?? 'day', findings: job.findings });
    job.lists.bills.push(...lines);
    job.notes.push({ name: file.name, takenFor: 'bills', readable, rowsRead });
  }
}

/**
 * Reads an inventory: a folder, one file, or files in memory, as streams. Every trouble is a finding with its place; bad rows
 * go to reject files, good rows become records. Nothing is written anywhere.
 */
export async function readInventory(source: string | readonly InventoryFile[], options: IntakeOptions = {}): Promise<Intake> {
  const kept = options.kept ?? null;
  const files = await filesOf(source);
  const findings = new FindingList();
  const planFile = files.find(isNamed('plan.json'));
  const plan = planFile === undefined ? null : await readPlanText(planFile, findings);
  const lists = Object.fromEntries(LISTS.map((list) => [list, []])) as unknown as Job['lists'];
  const job: Job = { findings, plan, glazingWords: options.glazingWords ?? catalogueWords(), lists, extras: [], notes: [], read: [] };
  if (planFile !== undefined) job.notes.push({ name: planFile.name, takenFor: 'plan.json', readable: plan !== null, rowsRead: 1 });
  const tariffFile = files.find(isNamed('tariffs.json'));
  const tariffs = tariffFile === undefined ? [] : await readTariffs(tariffFile, plan?.study_start ?? kept?.settings.studyStart ?? null, findings);
  if (tariffFile !== undefined) job.notes.push({ name: tariffFile.name, takenFor: 'tariffs.json', readable: true, rowsRead: tariffs.length });
  await readTables(files, job, options.only);
  await readReadings(files, job, options);
  if (options.only === undefined) sayMissing(job, kept);
  const parts = {
    settings: plan === null ? null : settingsOf(plan),
    owners: options.only !== undefined ? [] : plan === null ? (kept?.ownerEntities ?? []) : ownersOf(plan, 'plan.json'),
    phases: plan === null ? [] : phasesOf(plan, 'plan.json', findings),
    tariffs,
  };
  const records = recordsFrom(job.lists as unknown as Gathered, parts, { kept, findings, meter: options.meter ?? null, today: options.today });
  if (options.only === undefined) await lookAtWeather(source, records.buildings, findings);
  const all = findings.all();
  const rejects = await Promise.all(job.read.map((read) => rejectFileOf(read, all)));
  return { records, findings: all, rejects: rejects.filter((reject) => reject !== null), extras: job.extras, files: job.notes };
}

/** The records as a portfolio of their own; without a plan.json the study starts on the day given and every rate is left to be assumed. */
export function portfolioOf({ records }: Pick<Intake, 'records'>, today: string): Portfolio {
  return { ...records, settings: records.settings ?? settingsOf(defaultPlan(today)) };
}

const defaultPlan = (today: string): PlanText => ({
  name: 'Portfolio', currency: 'USD', study_start: today, view: 'whole', real_discount_rate: null, real_escalation: null, labour_per_hour: null, labour_is_cash: null,
  contingency_share: null, material_tax_share: null, labour_tax_share: null, consumables_per_m2: null, end_removal_per_m2: null, end_removal_per_ft2: null, trim_per_edge_mm: null,
  crew_size: null, crew_days_wk: null, crew_hours_day: null, crews: null, crew_is_new: null, mixed_film: false, realisation: 'as-modelled', draw_seed: null, plant_ageing: 'off', owner_entities: [], phases: [], no_work: [], facade_words: {}, files: {},
});
