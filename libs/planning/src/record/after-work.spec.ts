import type { LedgerEntry, Portfolio, Roll, SiteRecord, TimeModel } from '#calc';
import { filmOption, onePhase, optionWindow, planTermsOf } from '../../../../test/portfolios/film-option.js';
import type { Plan, PlanLine } from '../plan/plan.js';
import { cutFilm } from '../rolls/cut-list.js';
import { afterWork } from './after-work.js';
import { settledWords } from './settled-words.js';
import { whatHappened } from './happened.js';
import type { DoneLine } from './settled-work.js';

const inventoryRow = { file: 'site-records.csv', row: 2 };
const roll: Roll = { id: 'A-48', film: 'A', width: { entered: '48', mm: 1219.2 }, length_mm: 30_480, price_cents: 44_000, inStock: 0, lot: null, inventoryRow };
const line = (dwelling: string, paneCount: number): PlanLine => ({ dwelling, building: 'B1', ownerEntity: 'O', phase: 'O/1', option: filmOption({ id: `${dwelling}|180|A`, dwelling, paneCount }), windows: [optionWindow({ window: `${dwelling}/W1`, paneCount })] }) as unknown as PlanLine;
const lines = [line('B1/1', 2), line('B1/2', 1)];
// Each pane is 36 1/2 × 48 1/4 in: one across a 48 in roll, 1,225.55 mm along; in the order of their names.
const { cut } = cutFilm({ phase: 'O/1', ownerEntity: 'O', film: 'A', mayRotate: false, windows: lines.map((l) => ({ dwelling: l.dwelling, window: l.windows[0]! })), offers: [roll], stock: [], terms: planTermsOf(), widest_mm: null });
const plan = {
  id: 'p1', lines, cuts: [cut], cutReviews: [], settled: null, terms: planTermsOf(), films: [], buildings: [], rolls: [roll],
  phases: [{ phase: onePhase(100_000), visits: ['B1'], spending: { film_cents: 44_000, freight_cents: 0, visits_cents: 2_000 } }],
} as unknown as Plan;
const record = (change: Partial<SiteRecord>): SiteRecord => ({ id: JSON.stringify(change), day: '2026-08-04', kind: 'done', dwelling: null, window: null, pane: null, film: null, width: null, height: null, personMinutes: null, rollWidth_mm: null, rollLength_mm: null, defect: null, note: null, inventoryRow, ...change });
const model: TimeModel = { perDwelling_min: 30, perPane_min: 12, perArea_min_m2: 10, perLite_min: 6, ladderFactor: 1.3, overFurnitureFactor: 1.5, woodOrPuttyFactor: 1.2, oldFilm_min: 10, oldFilm_min_m2: 10, seam_min: 15, firstDayFactor: 1.5, lowFactor: 0.5, highFactor: 2 };
const after = (siteRecords: SiteRecord[], change: Partial<Portfolio> = {}) =>
  afterWork({ portfolio: { siteRecords, ledger: [], consents: [], phases: [onePhase(100_000)], locks: [], rolls: [roll], ...change } as unknown as Portfolio, plan, asOf: '2026-09-01', timeModel: model });

const day = [record({ window: 'B1/1/W1', pane: 1 }), record({ kind: 'defect', window: 'B1/1/W1', pane: 2, defect: 'CREASE' }), record({ kind: 'minutes', dwelling: 'B1/1', personMinutes: 45 })];

describe('what happened', () => {
  it('is told pane by pane: done, to be done again, not reached', () => {
    expect(whatHappened(plan, day)).toMatchObject({ done: [{ dwelling: 'B1/1', panesDone: 1, real_min: 45, planned_min: 30 }], redo: [{ pane: 'B1/1/W1/2', why: 'defect', note: 'CREASE' }], noAccess: [] });
    expect(whatHappened(plan, [day[0]!]).redo).toMatchObject([{ pane: 'B1/1/W1/2', why: 'not reached' }]);
  });

  it('a pane done again later is done', () => {
    expect(whatHappened(plan, [...day, record({ day: '2026-08-20', window: 'B1/1/W1', pane: 2 })]).redo).toEqual([]);
  });

  it('a whole dwelling done is all its panes; a door that stayed shut is not', () => {
    expect(whatHappened(plan, [record({ dwelling: 'B1/1' })])).toMatchObject({ done: [{ panesDone: 2 }], redo: [] });
    expect(whatHappened(plan, [record({ kind: 'no-access', dwelling: 'B1/2' })])).toMatchObject({ done: [], noAccess: [{ dwelling: 'B1/2', days: ['2026-08-04'] }] });
  });

  it('asks for the incident note of a broken pane, and names work nobody planned', () => {
    const { findings } = whatHappened(plan, [record({ kind: 'broken-pane', window: 'B1/1/W1', pane: 1 }), record({ dwelling: 'B1/9' })]);
    expect(findings.map((f) => f.subject)).toEqual(['B1/9', 'B1/1/W1']);
  });
});

describe('a revision after work', () => {
  it('locks done dwellings out and lets go of older locks on them', () => {
    const older = { subject: 'B1/1', direction: 'in' as const, azimuth_deg: null, phase: null, film: null, reason: 'r', role: 'manager', date: '2026-07-01' };
    expect(after(day, { locks: [older] }).portfolio.locks).toMatchObject([{ subject: 'B1/1/W1', direction: 'out', reason: 'done by 2026-08-04' }]);
  });

  // Kept for the pane to be done again, its film off the opened roll: 30 + 12 + 10 × 1.08 m² + old film 10 + 10 × 1.08 = 73.6 min at 60 an hour.
  // Film 440 + consumables 10 + 45 min at 60 an hour = 45 + the one visit 20 = 515 dollars.
  it('takes what is spent off the cap, with the minutes as recorded', () => {
    expect(after(day).settled.spent).toEqual([{ phase: 'O/1', spent_cents: 51_500, basis: 'plan cost and recorded minutes' }]);
    expect(after(day).portfolio.phases[0]!.cap_cents).toBe(48_500 - 7_360);
    expect(settledWords({ settled: after(day).settled })).toEqual([
      'Made again after plan p1, with what was recorded up to 2026-09-01: 1 pane done in 1 dwelling; 1 pane to be done again or not reached.',
      'O/1: of the cap of $1,000, $515 is spent (the film of the year, and the work done at its recorded minutes), $74 is kept for 1 pane to be done again; $411 is left to plan with.',
    ]);
  });

  it('believes the ledger where it speaks, and buys nothing in a year that is over', () => {
    // The cap itself is lowered by the ledger where the caps come into force, for every plan; here it must not be lowered twice.
    const paid = { id: 'L1', phase: 'O/1', kind: 'paid', amount_cents: 60_000, settles: null } as LedgerEntry;
    const { settled, portfolio } = after(day, { ledger: [paid] });
    expect(settled.spent).toEqual([{ phase: 'O/1', spent_cents: 60_000, basis: 'ledger' }]);
    expect(portfolio.phases[0]!.cap_cents).toBe(100_000 - 7_360);
    expect(after(day, { phases: [{ ...onePhase(100_000), lastDay: '2026-08-31' }] }).portfolio.phases[0]!.cap_cents).toBe(0);
  });

  // Two pieces are off the roll: 30,480 − 2 × 1,225.55; the pane to be done again takes the third.
  it('cuts the pane to be done again from the opened roll, and keeps the rest as stock', () => {
    const { settled, portfolio } = after(day);
    expect(settled.redoCuts).toMatchObject([{ cost_cents: 0, bought: [], pieces: [{ piece: 'B1/1/W1/2' }] }]);
    expect(settled.rollsLeft).toMatchObject([{ film: 'A', width_mm: 1219.2 }]);
    expect(settled.rollsLeft[0]!.length_mm).toBeCloseTo(30_480 - 3 * 1225.55, 6);
    expect(portfolio.rolls.map((r) => [r.id, r.inStock, r.price_cents])).toEqual([['A-48', 0, 44_000], ['O/1 A-48 #1', 1, null]]);
  });

  // The pane of B1/2 is the third off the roll: the two before it are cut and hang on no pane yet.
  it('keeps pieces that were cut before and not used as stock of their size', () => {
    const { settled } = after([record({ dwelling: 'B1/2' })]);
    expect(settled.rollsLeft.map((r) => [r.roll, Math.round(r.width_mm), Math.round(r.length_mm)])).toEqual([
      ['O/1 A-48 #1', 1219, Math.round(30_480 - 3 * 1225.55)],
      ['piece cut for B1/1/W1/1', 927, 1226],
      ['piece cut for B1/1/W1/2', 927, 1226],
    ]);
  });

  it('takes film used beyond the pieces off the roll', () => {
    const used = record({ kind: 'film-used', film: 'A', rollWidth_mm: 1219.2, rollLength_mm: 3_451.1 });
    expect(after([...day, used]).settled.rollsLeft[0]!.length_mm).toBeCloseTo(30_480 - 3 * 1225.55 - 1_000, 6);
  });

  it('moves the minutes towards the record only by dwellings that are wholly done', () => {
    expect(after(day).time.visits).toBe(0);
    const whole = [record({ dwelling: 'B1/1' }), record({ kind: 'minutes', dwelling: 'B1/1', personMinutes: 60 })];
    expect(after(whole).settled.time).toMatchObject({ visits: 1, recorded: 2 });
    expect(after(whole).settled.time.factor).toBeCloseTo(2 ** (1 / 5), 12); // one visit against the model's four
    expect(settledWords({ settled: after(whole).settled }).at(-1)).toBe('Minutes of this plan are 15 % longer than the time model has them: 1 timed dwelling took 2.00 times the planned minutes, weighed with the model.');
  });

  const broken = [record({ window: 'B1/1/W1', pane: 1 }), record({ kind: 'broken-pane', window: 'B1/1/W1', pane: 2, note: 'stone from the mower, office told' })];
  // 30 + 12 + 10 × 1.08 = 52.8 min; new glass has no film to take off.
  it('puts no film on a broken pane before its glass is there, and says so', () => {
    const { settled, findings, portfolio } = after(broken);
    expect(settled.redoWork).toMatchObject([{ dwelling: 'B1/1', phase: null, waitsForGlass: true, panes: [{ pane: 'B1/1/W1/2' }] }]);
    expect(settled.redoWork![0]!.minutes.best).toBeCloseTo(52.8, 9);
    expect(settled.redoCuts).toEqual([]);
    expect(portfolio.phases[0]!.cap_cents).toBe(100_000 - settled.spent[0]!.spent_cents); // nothing is kept yet
    expect(findings.map((f) => f.text).join()).toContain('needs glass first: B1/1/W1/2');
  });

  it('takes the day the new glass was measured, or the date promised, as the day it is there', () => {
    const measured = after([...broken, record({ kind: 'field-size', day: '2026-08-25', window: 'B1/1/W1', pane: 2 })]);
    expect(measured.settled.redoWork).toMatchObject([{ phase: 'O/1', from: '2026-09-01', waitsForGlass: false }]);
    expect(measured.settled.redoCuts).toMatchObject([{ phase: 'O/1 redo', pieces: [{ piece: 'B1/1/W1/2' }] }]);
    const promise = { id: 'c', building: 'B1', kind: 'new glass', glazing: null, film: null, window: 'B1/1/W1', state: 'asked', date: '2026-10-05', reference: null, inventoryRow } as const;
    expect(after(broken, { consents: [promise] }).settled.redoWork).toMatchObject([{ phase: 'O/1', from: '2026-10-05' }]);
    expect(after([...broken, record({ kind: 'field-size', day: '2026-07-25', window: 'B1/1/W1', pane: 2 })]).settled.redoWork).toMatchObject([{ waitsForGlass: true }]);
  });

  it('takes the minutes gone and kept off those of the crew', () => {
    // 45 recorded and 73.6 kept of 1,000.
    expect(after(day, { phases: [{ ...onePhase(100_000), crewMinutes: 1_000 }] }).portfolio.phases[0]!.crewMinutes).toBe(1_000 - 45 - 74);
  });

  describe('where a contractor put the film on', () => {
    // 80 dollars of work are agreed with him.
    const agreed = { ...line('B1/1', 2).option, crew: 'contractor' as const, cost: { ...line('B1/1', 2).option.cost, labour_cents: 8_000 } };
    const hired = { ...plan, lines: lines.map((l) => ({ ...l, option: { ...agreed, id: l.option.id, dwelling: l.dwelling } })), buildings: [{ id: 'B1', crew: 'contractor' }] } as unknown as Plan;
    const timed = [record({ dwelling: 'B1/1' }), record({ kind: 'minutes', dwelling: 'B1/1', personMinutes: 60 })];
    const phases = [{ ...onePhase(100_000), crewMinutes: 1_000 }];
    const afterHim = (of: Plan, terms: Partial<Plan['terms']> = {}) => afterWork({ portfolio: { siteRecords: timed, ledger: [], consents: [], phases, locks: [], rolls: [roll] } as unknown as Portfolio, plan: { ...of, terms: planTermsOf(terms) }, asOf: '2026-09-01', timeModel: model });

    it('takes nothing off the minutes of the own crew, in this revision and the next', () => {
      const { portfolio, settled } = afterHim(hired);
      expect(portfolio.phases[0]!.crewMinutes).toBe(1_000);
      expect(settled.done).toMatchObject([{ dwelling: 'B1/1', real_min: 60, crew: 'contractor' }]);
      expect(afterHim({ ...hired, lines: [], settled }).portfolio.phases[0]!.crewMinutes).toBe(1_000);
      // A revision kept before says only the building.
      const older = JSON.parse(JSON.stringify({ ...settled.done[0], crew: undefined })) as DoneLine;
      expect(afterHim({ ...hired, lines: [], settled: { ...settled, done: [older] } }).portfolio.phases[0]!.crewMinutes).toBe(1_000);
      expect(afterHim({ ...plan, lines: [], buildings: [], settled: { ...settled, done: [older] } }).portfolio.phases[0]!.crewMinutes).toBe(940);
    });

    it('says nothing of the pace of the own crew', () => {
      expect(afterHim(hired).settled.time).toMatchObject({ visits: 0, factor: 1 });
      expect(afterHim(plan).settled.time.visits).toBe(1);
    });

    it('spends what was agreed with him, whatever minutes he wrote down and whether own labour is cash', () => {
      // Film 440 + consumables 10 + his 80 + the one visit 20 = 550 dollars.
      for (const labourIsCash of [true, false]) expect(afterHim(hired, { labourIsCash }).settled.spent).toMatchObject([{ spent_cents: 55_000 }]);
    });
  });

  it('leaves the other sides of a done dwelling, and locks on them, as they are', () => {
    const base = { phase: null, film: null, reason: 'r', role: 'manager', date: '2026-07-01' } as const;
    const west = { ...base, subject: 'B1/1', direction: 'in', azimuth_deg: 270 } as const;
    const never = { ...base, subject: 'B1/1/W9', direction: 'out', azimuth_deg: null } as const;
    expect(after(day, { locks: [west, never, { ...west, azimuth_deg: 180 }] }).portfolio.locks).toMatchObject([west, never, { subject: 'B1/1/W1', direction: 'out' }]);
  });

  it('keeps a pane on the list over revisions until a record says it is done, cuts its film once, and then counts its money as spent', () => {
    const first = after(day);
    const next = { ...plan, id: 'p2', lines: [], cuts: [], settled: first.settled } as unknown as Plan;
    const again = (siteRecords: SiteRecord[]) => afterWork({ portfolio: { siteRecords, consents: [], ledger: [], phases: [onePhase(100_000)], locks: [], rolls: [roll] } as unknown as Portfolio, plan: next, asOf: '2026-10-01', timeModel: model }).settled;
    const open = again(day);
    expect(open.redo.map((r) => r.pane)).toEqual(['B1/1/W1/2']);
    expect(open.redoCuts.flatMap((c) => c.pieces.map((p) => p.piece))).toEqual(['B1/1/W1/2']);
    expect(open.rollsLeft).toEqual([]); // the plan that follows has the roll among its own rolls
    expect(open.spent[0]!.spent_cents).toBe(51_500);
    const done = again([...day, record({ day: '2026-09-20', window: 'B1/1/W1', pane: 2 })]);
    expect(done).toMatchObject({ redo: [], redoCuts: [], redoMoney: [] });
    expect(done.spent[0]!.spent_cents).toBe(51_500 + 7_360);
  });

  it('says which records are of a day to come, and does not count them', () => {
    const { findings, settled } = after([record({ day: '2062-08-04', dwelling: 'B1/1' })]);
    expect(settled.done).toEqual([]);
    expect(findings).toMatchObject([{ severity: 'warning', text: '1 record is of a day after 2026-09-01 and is not counted yet', whatToDo: 'correct the day if it is mistyped: 2062-08-04' }]);
  });

  it('changes nothing where nothing was recorded', () => {
    const { portfolio, settled } = after([]);
    expect(settled).toMatchObject({ done: [], redo: [], spent: [] });
    expect(portfolio.phases[0]!.cap_cents).toBe(100_000);
    expect(portfolio.rolls).toEqual([roll]);
  });
});
