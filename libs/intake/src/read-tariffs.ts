import { readTariff, tariffDateFindings, type TariffText } from '#calc';
import { z } from 'zod';
import type { FindingList, Severity } from './finding.js';
import type { InventoryFile } from './files/inventory-file.js';
import { checkedJson } from './read-plan.js';

const rates = z.array(z.array(z.looseObject({ rate: z.number(), adj: z.number().optional(), max: z.number().positive().optional(), sell: z.number().optional(), unit: z.string().optional() })).min(1)).min(1);
const schedule = z.array(z.array(z.number().int().min(0)).length(24)).length(12);

/** A tariff in the field names of the open rate database; fields of it that are not used pass through. */
const Tariff = z
  .looseObject({
    label: z.string().min(1),
    energyratestructure: rates,
    energyweekdayschedule: schedule,
    energyweekendschedule: schedule,
    demandratestructure: rates.optional(),
    demandweekdayschedule: schedule.optional(),
    demandweekendschedule: schedule.optional(),
    flatdemandstructure: rates.optional(),
    flatdemandmonths: z.array(z.number().int().min(0)).length(12).optional(),
    fixedchargefirstmeter: z.number().optional(),
    mincharge: z.number().optional(),
    clock: z.enum(['standard', 'daylight']).optional(),
  })
  .superRefine((tariff, context) => {
    for (const field of ['energyweekdayschedule', 'energyweekendschedule'] as const) {
      if (tariff[field].some((month) => month.some((period) => period >= tariff.energyratestructure.length))) {
        context.addIssue({ code: 'custom', path: [field], message: `a period that energyratestructure (${tariff.energyratestructure.length}) does not have` });
      }
    }
  });

/** A version of a tariff with the days it holds, as ISO text; blank ends are open. */
interface Version {
  readonly text: TariffText;
  readonly from: string;
  readonly to: string;
}

const OPEN = { from: '0000-01-01', to: '9999-12-31' };

/** The open form writes days as text or as seconds since 1970. */
const dayText = (value: unknown, blank: string): string => (typeof value === 'number' ? new Date(value * 1000).toISOString().slice(0, 10) : typeof value === 'string' && value !== '' ? value.slice(0, 10) : blank);
const versionOf = (text: TariffText): Version => ({ text, from: dayText(text['startdate'], OPEN.from), to: dayText(text['enddate'], OPEN.to) });
const isDated = (text: TariffText): boolean => (text['startdate'] ?? text['enddate'] ?? null) !== null;

interface Said {
  readonly severity: Severity;
  readonly column: string | null;
  readonly value: string;
  readonly code: string;
  readonly expected: string;
  readonly whatToDo: string;
}
type Say = (said: Said) => void;

/** Of several versions the one that holds when the study starts; else the one that started last before it, or the first. Without a study the last. */
function inForce(texts: readonly TariffText[], start: string | null, say: Say): TariffText {
  const versions = texts.map(versionOf).sort((a, b) => (a.from < b.from ? -1 : 1));
  const studyStart = start ?? versions.at(-1)!.from;
  const started = versions.filter(({ from }) => from <= studyStart);
  const chosen = started.findLast(({ to }) => to >= studyStart) ?? started.at(-1) ?? versions[0]!;
  const { label } = chosen.text;
  const span = `${chosen.from === OPEN.from ? 'its start' : chosen.from} to ${chosen.to === OPEN.to ? 'open end' : chosen.to}`;
  if (chosen.from > studyStart || chosen.to < studyStart) {
    say({ severity: 'warning', column: 'enddate', value: `${label}: ${span}`, code: 'tariff-not-in-force', expected: `a version that holds on ${studyStart}, when the study starts`, whatToDo: 'this version was taken all the same; add the one that follows' });
  } else if (texts.length > 1) {
    say({ severity: 'note', column: 'startdate', value: `${label}: ${span}`, code: 'tariff-version', expected: 'one version in force when the study starts', whatToDo: 'the version of these days was taken; the others are history' });
  }
  return chosen.text;
}

const WORDS = { error: 'tariff-error', warning: 'tariff-warning', note: 'tariff-note' } as const;

/** What the reader of tariffs has to say of one; null when it cannot be billed with. */
function billable(text: TariffText, say: Say): TariffText | null {
  const { findings, usable } = readTariff(text);
  for (const { weight, place, seen, expected } of findings) {
    say({ severity: weight, column: place.replace(/^\//, '').replaceAll('/', '.'), value: `${text.label}: ${seen}`, code: WORDS[weight], expected, whatToDo: weight === 'error' ? 'correct it; until then the tariff is not used' : weight === 'warning' ? 'check the bill against a real one' : 'write it in if it is otherwise' });
  }
  return usable ? text : null;
}

/**
 * The tariffs of tariffs.json, one of each label: versions of one label follow each other by startdate and enddate, and gaps
 * and overlaps between them are said with their dates. Fields nobody reads pass through.
 */
export async function readTariffs(file: InventoryFile, studyStart: string | null, findings: FindingList): Promise<readonly TariffText[]> {
  const texts = ((await checkedJson(file, z.array(Tariff), findings)) ?? []) as readonly TariffText[];
  const say: Say = (said) => findings.add({ file: file.name, row: null, ...said });
  for (const { place, seen, expected } of tariffDateFindings(texts.filter(isDated))) {
    const label = texts.filter(isDated)[Number(place.split('/')[1])]?.label ?? '';
    say({ severity: 'error', column: 'startdate', value: seen, code: seen.startsWith('gap') ? 'tariff-gap' : seen.startsWith('overlap') ? 'tariff-overlap' : 'tariff-dates', expected, whatToDo: `correct the days of ${label}; bills of the days in question cannot be checked` });
  }
  return [...new Set(texts.map(({ label }) => label))].flatMap((label) => {
    const all = texts.filter((text) => text.label === label);
    const same = all.filter((text) => !isDated(text));
    if (same.length > 0 && all.length > 1) {
      say({ severity: 'error', column: 'label', value: label, code: 'duplicate-id', expected: 'each label once, or versions with startdate and enddate', whatToDo: 'rename or take out one of the two, or date them; the first was taken' });
      return [billable(all[0]!, say)].filter((text) => text !== null);
    }
    return [billable(inForce(all, studyStart, say), say)].filter((text) => text !== null);
  });
}
