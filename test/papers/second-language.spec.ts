import { openCatalogue } from '#catalogue';
import { english, paper, type PaperName, type Texts } from '#papers';
import { calendarFile, DEFECT_CODES, ENGLISH, inEnglish, type Plan, shadowLine, tell, type Told } from '#planning';
import { SURVEY_COLUMNS } from '../../libs/papers/src/sheets/survey-sheet.js';
import { plannedWith } from '../workbook/planned.js';
import { readPdf } from './read-pdf.js';

/** Every letter of a sentence becomes ø; the names of its holes stay. */
const masked = (sentence: string): string => sentence.replace(/\{\w+\}|[^{}]+/g, (part) => (part.startsWith('{') ? part : part.replace(/[A-Za-z]/g, 'ø')));

/** A made-up second language: one object beside the English one. */
const other: Texts = {
  language: 'xx',
  sentences: Object.fromEntries(Object.entries(english.sentences).map(([key, sentence]) => [key, masked(sentence)])) as unknown as Texts['sentences'],
  more: Object.fromEntries([...openCatalogue().suitabilityRules.map((r) => r.id), 'standing-advice'].map((id) => [`rule.${id}`, 'øøø øø'])),
};

const CREW_PAPERS = ['crew', 'cuts', 'labels', 'kit', 'notices', 'leave-behind', 'day-30', 'survey'] satisfies PaperName[];

const isTold = (value: unknown): value is Told => typeof value === 'object' && value !== null && 'key' in value;

/** What fills the holes of a sentence that is no sentence itself: dates, names, sizes. */
function fillings(sentence: Told): string[] {
  return Object.values(sentence.with ?? {}).flatMap((part): readonly (string | number | Told)[] => (Array.isArray(part) ? (part as readonly (string | Told)[]) : [part as string | number | Told])).flatMap((part) => (isTold(part) ? fillings(part) : [String(part)]));
}

/** Words the survey brings: names and ids. */
function dataWords(plan: Plan): Set<string> {
  const windows = plan.lines.flatMap((l) => l.windows);
  const texts = [
    plan.id, plan.name,
    ...plan.buildings.flatMap((b) => [b.id, b.name]),
    ...plan.phases.map((p) => p.phase.id),
    ...plan.films.flatMap(({ film }) => [film.id, film.name]),
    ...plan.rolls.map((r) => r.id),
    ...plan.lines.map((l) => l.dwelling),
    ...windows.flatMap((w) => [w.window, w.room, w.fromPlanType ?? '', ...(w.consentTold === undefined ? [] : fillings(w.consentTold))]),
    ...DEFECT_CODES,
    ...SURVEY_COLUMNS.map(([head]) => head),
    'UTC', 'ft',
  ];
  return new Set(texts.flatMap((t) => t.match(/[A-Za-z]+/g) ?? []));
}

describe('a second language', () => {
  let plan: Plan;
  let data: ReadonlySet<string>;
  beforeAll(async () => {
    // One building has a contractor, so that his sentences are looked at too.
    plan = await plannedWith((p) => ({ ...p, buildings: p.buildings.map((b) => (b.id === 'QA' ? { ...b, crew: 'contractor', contractor_cents_m2: 2_000, contractorVisit_cents: 5_000 } : b)) }));
    data = dataWords(plan);
    expect(new Set(plan.calendar.days.map((d) => d.isContractor ?? false))).toEqual(new Set([true, false]));
    expect(plan.workOrders.length).toBeGreaterThan(0);
    expect(plan.workOrders.some((o) => o.panes.some((p) => p.notes.length > 0))).toBe(true);
  }, 120_000);

  /** Words of two letters or more that are neither of the other language nor of the survey. */
  const left = (text: string): string[] => [...new Set(text.match(/[A-Za-z]{2,}/g) ?? [])].filter((word) => !data.has(word));

  it.each(CREW_PAPERS)('leaves no English word on %s but names and units of the survey', async (name) => {
    const file = await paper(name, plan, { printed: new Date('2026-07-02T09:30:00Z'), format: null, texts: other });
    const text = readPdf(file.bytes).flatMap((page) => page.texts.map((t) => t.text)).join('\n');
    expect(text).toContain('ø');
    expect(left(text)).toEqual([]);
    expect(file.faults).toEqual([]);
  });

  it('leaves none in the events of the calendar, nor in what the calendar says beside', async () => {
    // The format's own names and the name of the program are no words for a reader.
    const events = (await calendarFile(plan, other)).replace(/\r\n[ \t]/g, '').split('\r\n').filter((line) => /^(SUMMARY|DESCRIPTION|X-WR-CALNAME|NAME)/.test(line));
    expect(events.length).toBeGreaterThan(plan.calendar.days.length);
    expect(left(events.map((line) => line.slice(line.indexOf(':') + 1).replaceAll('\\n', '\n')).join('\n'))).toEqual([]);
    const { reserveTold, contractorTold } = plan.calendar;
    expect(left(tell(contractorTold!, other))).toEqual([]);
    expect(reserveTold).toBeDefined();
    // The source of the share of shut doors is data of the assumptions.
    expect(left(tell({ ...reserveTold!, with: { ...reserveTold!.with, source: '' } }, other))).toEqual([]);
  });

  it('leaves none in the line of a shadow', () => {
    const line = shadowLine({ site: { latitude_deg: 0, longitude_deg: 0, timeZone_h: 0 }, azimuth_deg: 225, horizon: [], glass: { width_mm: 900, height_mm: 1_200 }, shade: { overhangDepth_m: 0.6, overhangGap_m: 0.2, finDepth_m: 0.3, finGap_m: 0.1, reveal_m: 0 }, at: '2026-03-20T15:07', isSummerTime: false });
    expect(left(tell(line.told!, other))).toEqual([]);
  });

  it('is missed by this check when a sentence is not in the table', () => {
    expect(left(`${tell({ key: 'no-such-sentence', otherwise: 'Stop at once.' }, other)}`)).toEqual(['Stop', 'at', 'once']);
  });

  it('has holes of the same names in every sentence, and English says all of them', () => {
    const holes = (text: string): string[] => (text.match(/\{\w+\}/g) ?? []).sort();
    for (const [key, sentence] of Object.entries(english.sentences)) expect([key, holes(other.sentences[key as keyof typeof other.sentences])]).toEqual([key, holes(sentence)]);
    for (const order of plan.workOrders) {
      expect(order.steps).toEqual(order.told!.steps.map(inEnglish));
      for (const text of [order.access, order.noticeText, ...order.cautions, ...order.panes.flatMap((p) => p.notes)]) expect(text).not.toMatch(/[{}]/);
    }
    expect(ENGLISH.language).toBe(english.language);
  });
});
