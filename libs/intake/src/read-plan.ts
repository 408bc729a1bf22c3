import { m2Of_ft2, type OwnerEntity, type Phase, type PlanSettings } from '#calc';
import { z } from 'zod';
import type { FindingList } from './finding.js';
import type { InventoryFile } from './files/inventory-file.js';

const day = z.iso.date();
const share = z.number().min(0).max(1).nullable().default(null);
const atLeast0 = z.number().min(0).nullable().default(null);

const FileReading = z.strictObject({
  encoding: z.enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252']).optional(),
  delimiter: z.enum([',', ';', '\t', '|']).optional(),
  decimal: z.enum(['.', ',']).optional(),
  date_order: z.enum(['day-month', 'month-day']).optional(),
  header_line: z.number().int().min(1).optional(),
});

/** plan.json as people write it: money in currency units, shares 0…1, a blank is null or left out. */
export const PlanText = z.strictObject({
  name: z.string().min(1),
  currency: z.string().min(1).default('USD'),
  study_start: day,
  view: z.enum(['whole', 'owner']).default('whole'),
  real_discount_rate: z.number().min(-0.5).max(1).nullable().default(null),
  real_escalation: z.number().min(-0.5).max(1).nullable().default(null),
  labour_per_hour: atLeast0,
  labour_is_cash: z.boolean().nullable().default(null),
  contingency_share: share,
  material_tax_share: share,
  labour_tax_share: share,
  consumables_per_m2: atLeast0,
  end_removal_per_m2: atLeast0,
  end_removal_per_ft2: atLeast0,
  trim_per_edge_mm: z.number().min(0).max(200).nullable().default(null),
  crew_size: z.number().int().min(1).max(200).nullable().default(null),
  crew_days_wk: z.number().min(0).max(7).nullable().default(null),
  crew_hours_day: z.number().min(0).max(24).nullable().default(null),
  crews: z.number().int().min(1).max(100).nullable().default(null),
  crew_is_new: z.boolean().nullable().default(null),
  mixed_film: z.boolean().default(false),
  realisation: z.enum(['as-modelled', 'as-found']).default('as-modelled'),
  draw_seed: z.number().int().min(0).max(2_147_483_647).nullable().default(null),
  plant_ageing: z.enum(['off', 'kept', 'neglected']).default('off'),
  owner_entities: z.array(z.strictObject({ id: z.string().min(1), name: z.string().optional() })).default([]),
  phases: z
    .array(z.strictObject({ owner_entity: z.string().min(1), name: z.string().min(1), first_day: day, last_day: day, cap: z.number().min(0), crew_minutes: atLeast0 }))
    .default([]),
  no_work: z.array(z.strictObject({ first_day: day, last_day: day, reason: z.string() })).default([]),
  facade_words: z.record(z.string(), z.string()).default({}),
  files: z.record(z.string(), FileReading).default({}),
}).refine((plan) => plan.end_removal_per_m2 === null || plan.end_removal_per_ft2 === null, { path: ['end_removal_per_ft2'], message: 'taking film off priced by the square metre or by the square foot, not by both' });
export type PlanText = z.infer<typeof PlanText>;

async function textOf(file: InventoryFile): Promise<string> {
  const pieces: Buffer[] = [];
  for await (const piece of file.open() as AsyncIterable<Buffer>) pieces.push(piece);
  return Buffer.concat(pieces).toString('utf8').replace(/^\ufeff/, '');
}

/** Parses and checks a JSON file; every fault of it becomes a finding with the path to it. */
export async function checkedJson<T>(file: InventoryFile, schema: z.ZodType<T>, findings: FindingList): Promise<T | null> {
  const say = (column: string | null, code: string, expected: string): void =>
    findings.add({ file: file.name, row: null, column, value: null, severity: 'error', code, expected, whatToDo: 'correct it and send the file again' });
  try {
    const parsed = schema.safeParse(JSON.parse(await textOf(file)));
    if (parsed.success) return parsed.data;
    for (const { path, message } of parsed.error.issues) say(path.map(String).join('.'), 'json-field', message);
  } catch (fault) {
    if (!(fault instanceof SyntaxError)) throw fault;
    say(null, 'json-broken', `JSON (${fault.message})`);
  }
  return null;
}

export const readPlanText = (file: InventoryFile, findings: FindingList): Promise<PlanText | null> => checkedJson(file, PlanText, findings);

const inCents = (amount: number): number => Math.round(amount * 100);
const inCentsOr = (amount: number | null): number | null => (amount === null ? null : inCents(amount));

/** Taking film off by the square metre, priced by either area. */
const endRemoval_cents_m2 = (text: PlanText): number | null => (text.end_removal_per_ft2 === null ? inCentsOr(text.end_removal_per_m2) : (text.end_removal_per_ft2 * 100) / m2Of_ft2(1));

/** Settings of the plan as records have them: cents, camel case. */
export function settingsOf(text: PlanText): PlanSettings {
  return {
    name: text.name, currency: text.currency, studyStart: text.study_start, view: text.view,
    realDiscountRate: text.real_discount_rate, realEscalation: text.real_escalation,
    labour_cents_h: inCentsOr(text.labour_per_hour), labourIsCash: text.labour_is_cash, contingencyShare: text.contingency_share,
    materialTaxShare: text.material_tax_share, labourTaxShare: text.labour_tax_share,
    consumables_cents_m2: inCentsOr(text.consumables_per_m2), trimPerEdge_mm: text.trim_per_edge_mm, endRemoval_cents_m2: endRemoval_cents_m2(text),
    crewSize: text.crew_size, crewDays_wk: text.crew_days_wk, crewHours_day: text.crew_hours_day, crews: text.crews, crewIsNew: text.crew_is_new, mixedFilm: text.mixed_film,
    realisation: text.realisation, drawSeed: text.draw_seed, plantAgeing: text.plant_ageing,
    noWork: text.no_work.map(({ first_day, last_day, reason }) => ({ firstDay: first_day, lastDay: last_day, reason })),
  };
}

export function ownersOf(text: PlanText, file: string): readonly OwnerEntity[] {
  return text.owner_entities.map(({ id, name }) => ({ id, name: name ?? id, inventoryRow: { file, row: 1 } }));
}

/** Phases of the plan, by owner entity; one that ends before it starts or names no listed owner is a finding. */
export function phasesOf(text: PlanText, file: string, findings: FindingList): readonly Phase[] {
  const owners = new Set(text.owner_entities.map(({ id }) => id));
  return text.phases.flatMap((phase): Phase[] => {
    const id = `${phase.owner_entity}/${phase.name}`;
    const fault = phase.last_day < phase.first_day ? 'a last day after the first' : owners.has(phase.owner_entity) ? null : 'an owner entity listed under owner_entities';
    if (fault === null) {
      return [{ id, ownerEntity: phase.owner_entity, name: phase.name, firstDay: phase.first_day, lastDay: phase.last_day, cap_cents: inCents(phase.cap), crewMinutes: phase.crew_minutes }];
    }
    findings.add({ file, row: null, column: 'phases', value: id, severity: 'error', code: 'phase-unclear', expected: fault, whatToDo: 'correct the phase; it was left out' });
    return [];
  });
}
