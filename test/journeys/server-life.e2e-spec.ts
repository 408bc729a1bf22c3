import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import request from 'supertest';
import type { NowAnswer, Plan, PlanCalendar, RelaidPlan, ShadowLine } from '#planning';
import { makers } from '../../apps/server/src/work/makers.js';
import { startServer, type ServerForTest } from './server-app.js';

/** A manager's, a crew's and an accountant's year over HTTP, on one plan; a building has a name that would be markup. */
const FOLDER = join(__dirname, '..', 'inventories', 'ok', 'two-buildings');
const MARKUP = '<script>alert(1)</script>';
const HEAD = 'day,kind,building,dwelling,window,pane,width,height,person_minutes,defect,note';

interface Problem {
  detail: string;
  errors?: { code: string; pointer?: string; file?: string; row?: number; column?: string }[];
}

let server: ServerForTest;
let plan: Plan;

const get = (path: string) => request(server.http).get(path);
const problem = (answer: request.Response): Problem => JSON.parse(answer.text) as Problem;
const table = (rows: readonly string[]): Buffer => Buffer.from([HEAD, ...rows].join('\n'));

async function made(body: object): Promise<Plan> {
  const { headers } = await request(server.http).post('/api/plans').send({ timeLimit_s: 1, draws: 0, ...body }).expect(202);
  for (;;) {
    const job = (await get(headers.location ?? '').expect(200)).body as { state: string; why: string | null; result: string };
    if (job.state === 'failed') throw new Error(job.why ?? 'no reason');
    if (job.state === 'done') return ((await get(job.result).expect(200)).body as { plan: Plan }).plan;
    await new Promise((wait) => setTimeout(wait, 100));
  }
}

jest.setTimeout(180_000);
beforeAll(async () => {
  server = await startServer(makers(FOLDER));
  let sending = request(server.http).post('/api/imports');
  for (const name of readdirSync(FOLDER).filter((file) => /\.(csv|json)$/.test(file))) {
    const text = readFileSync(join(FOLDER, name), 'utf8').replace('Quay House', MARKUP);
    sending = sending.attach('files', Buffer.from(text), name);
  }
  await sending.expect(200);
  plan = await made({ name: `Spring ${MARKUP}` });
});
afterAll(() => server.close());

describe('the start page with a plan', () => {
  it('shows names as text, and what is to be paid of the cap', async () => {
    const { text } = await get('/').expect(200);
    expect(plan.lines.some(({ building }) => building === 'QA')).toBe(true);
    expect(text).toContain(`QA ${MARKUP.replaceAll('<', '&lt;').replaceAll('>', '&gt;')}`);
    expect(text).not.toContain('<script');
    const dollars = (cents: number): string => `$${Math.round(cents / 100).toLocaleString('en-US')}`;
    const { phase, spending } = plan.phases[0]!;
    expect(text).toContain(`<th scope="row">OWNER1/2026-27</th><td class="number">${dollars(spending.total_cents)}</td><td class="number">${dollars(phase.cap_cents)}</td>`);
    expect(text).toContain('Net present value, savings as modelled');
    expect(text).toContain('Net present value, as expected in bills');
    expect(text).not.toMatch(/\bsafe/i);
  });

  it('leads to nothing that is not there, and names where each link goes', async () => {
    const { text } = await get('/').expect(200);
    const links = [...text.matchAll(/<a href="([^"]+)"(?: aria-label="([^"]*)")?>(.*?)<\/a>/gs)].map(([, href = '', label = '', words = '']) => ({ href: href.replaceAll('&amp;', '&'), name: label || words.replace(/<[^>]*>/g, '') }));
    expect(links.length).toBeGreaterThan(25);
    for (const { href, name } of links) {
      expect(name.trim().length).toBeGreaterThan(3);
      expect({ href, status: (await get(href).buffer(true)).status }).toEqual({ href, status: 200 });
    }
    // One name, one place.
    for (const { href, name } of links) expect(links.filter((each) => each.name === name && each.href !== href)).toEqual([]);
    for (const paper of ['crew.pdf', 'cuts.pdf', 'memo.pdf', 'calendar.ics', '/workbook', '/receipts', '/proof']) expect(links.some(({ href }) => href.includes(paper))).toBe(true);
  });

  it('can be read by ear and worked by keyboard: one language, one title, headings in order, tables with heads, fields with labels', async () => {
    const { text } = await get('/').expect(200);
    expect(text).toContain('<html lang="en">');
    const levels = [...text.matchAll(/<h([1-6])/g)].map(([, level]) => Number(level));
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    levels.slice(1).forEach((level, i) => expect(level - levels[i]!).toBeLessThanOrEqual(1));
    for (const [whole] of text.matchAll(/<table>.*?<\/table>/gs)) expect(whole).toMatch(/<caption>[^<]+<\/caption>[^]*scope="(col|row)"/);
    for (const [, id] of text.matchAll(/<input id="([^"]+)"/g)) expect(text).toContain(`<label for="${id ?? ''}"`);
    expect((await get('/style.css')).text).toContain(':focus-visible');
  });
});

describe('an accountant', () => {
  it('opens a figure of the plan to a page with the figure on it, and finds it by a part of its name', async () => {
    const list = `/plans/${plan.id}/receipts`;
    expect((await get(`${list}?part=plan/npv`).expect(200)).text).toContain(`href="${list}/plan%2Fnpv"`);
    const { text } = await get(`${list}/plan%2Fnpv`).expect(200);
    const sign = plan.payback.npv_cents < 0 ? '-' : '';
    const [whole = '', part = ''] = (Math.abs(Math.round(plan.payback.npv_cents)) / 100).toFixed(2).split('.');
    expect(text).toContain(`<strong>${sign}$${Number(whole).toLocaleString('en-US')}.${part}</strong> (plan/npv)`);
    expect(text).toContain('The steps come to the same.');
    expect((await get(`${list}/plan%2Fnothing`).set('Accept', 'text/html').expect(404)).text).toContain('nearest');
  });

  it('has the proof of the plan checked again, and hears when somebody changed a figure', async () => {
    const proof = (await get(`/api/plans/${plan.id}/proof`).expect(200)).body as { valid: boolean; value_cents: number; bound_cents: number };
    expect(proof).toMatchObject({ plan: plan.id, valid: true, findings: [] });
    expect(proof.bound_cents).toBeGreaterThanOrEqual(proof.value_cents);
    const changed = { ...plan, id: 'CHANGED', proof: { ...plan.proof, value_cents: plan.proof.value_cents + 100_000 } };
    await server.store.savePlan({ id: 'CHANGED', title: 'Changed', parent: null, made: '2020-01-01T00:00:00Z', programVersion: '0', inputsHash: 'none', signed: false, body: changed });
    const broken = (await get('/api/plans/CHANGED/proof').expect(200)).body as { valid: boolean; findings: { severity: string }[] };
    expect(broken.valid).toBe(false);
    expect(broken.findings[0]?.severity).toBe('error');
  });
});

describe('a crew', () => {
  it('has the same visits in the calendar and in its file', async () => {
    const calendar = (await get(`/api/plans/${plan.id}/calendar`).expect(200)).body as PlanCalendar;
    const { text } = await get(`/api/plans/${plan.id}/calendar.ics`).expect(200);
    expect(calendar.days.flatMap(({ visits }) => visits).length).toBeGreaterThan(0);
    expect(text.match(/BEGIN:VEVENT/g)).toHaveLength(calendar.days.flatMap(({ visits }) => visits).length);
  });

  it('sends field sizes and gets the rest of the opened roll laid out again; nothing before the cut moves and nothing is kept', async () => {
    const cut = plan.cuts[0]!;
    const own = cut.pieces.filter(({ roll }) => roll === cut.rolls[0]!.roll).sort((a, b) => a.y_mm - b.y_mm);
    const [first, last] = [own[0]!, own.at(-1)!];
    const line_mm = first.y_mm + first.length_mm;
    expect(last.y_mm).toBeGreaterThanOrEqual(line_mm);
    const [building, number, mark] = last.window.split('/');
    const larger = table([`${plan.madeOn},field size,${building ?? ''},${number ?? ''},${mark ?? ''},${String(last.paneNo)},,59,,,`]);
    const again = (await request(server.http).post(`/api/plans/${plan.id}/relay`).attach('files', larger, 'measured.csv').field('cutTo[0][roll]', first.roll).field('cutTo[0][cut_mm]', String(line_mm)).expect(200)).body as RelaidPlan;
    expect(again.measured).toMatchObject([{ pane: last.piece, keeps: false }]);
    const roll = again.rolls.find((each) => each.roll === first.roll);
    expect(roll?.check).toMatchObject({ ok: true });
    for (const before of own.filter((p) => p.y_mm + p.length_mm <= line_mm + 1e-6)) expect(roll?.pieces.find(({ piece }) => piece === before.piece)).toMatchObject({ x_mm: before.x_mm, y_mm: before.y_mm });
    expect((await server.store.contents()).counts.siteRecords).toBe(0);
  });

  it('is told which row, roll or length cannot be used', async () => {
    const rows = table([`${plan.madeOn},field size,QA,101,W01,1,wide,46,,,`]);
    const bad = problem(await request(server.http).post(`/api/plans/${plan.id}/relay`).attach('files', rows, 'measured.csv').expect(422));
    expect(bad.errors).toContainEqual(expect.objectContaining({ file: 'measured.csv', row: 2, column: 'width' }));
    const roll = plan.cuts[0]!.rolls[0]!;
    const cutTo = [{ roll: 'NONE', cut_mm: 1 }, { roll: roll.roll, cut_mm: roll.length_mm + 1 }, { roll: roll.roll, cut_mm: 0 }];
    expect(problem(await request(server.http).post(`/api/plans/${plan.id}/relay`).send({ cutTo }).expect(422)).errors?.map(({ code, pointer }) => [code, pointer])).toEqual([
      ['unknown-roll', '/cutTo/0/roll'], ['beyond-the-roll', '/cutTo/1/cut_mm'], ['named-twice', '/cutTo/2/roll'],
    ]);
  });

  it('asks what three hours, one leftover and two empty dwellings are good for', async () => {
    const shelf = Buffer.from('roll,film,width_in,length_ft,price,in_stock\nB-60,B,60,60,330,1\n');
    const now = (await request(server.http).post('/api/now').attach('files', shelf, 'rolls.csv').field('hours', '3').field('dwellings', 'QA/101, QB/002').expect(200)).body as NowAnswer;
    expect(now.why).toBeNull();
    expect(now.uses.flatMap(({ options }) => options.map(({ dwelling }) => dwelling)).every((id) => ['QA/101', 'QB/002'].includes(id))).toBe(true);
    for (const use of now.uses) expect(use.minutes).toBeLessThanOrEqual(now.personMinutes);
    expect(now.uses.flatMap(({ cuts }) => cuts.flatMap(({ bought }) => bought))).toEqual([]);
    const worth = now.uses.map(({ value_cents }) => value_cents);
    expect(worth).toEqual([...worth].sort((a, b) => b - a));
    expect(problem(await request(server.http).post('/api/now').send({ hours: 3, dwellings: ['QA/101', 'QZ/9'] }).expect(422)).errors).toEqual([expect.objectContaining({ code: 'unknown-dwelling', pointer: '/dwellings/1' })]);
    expect(problem(await request(server.http).post('/api/now').send({ hours: 0, dwellings: [] }).expect(422)).errors?.map(({ pointer }) => pointer).sort()).toEqual(['/dwellings', '/hours']);
  });
});

describe('a surveyor with a photograph', () => {
  const at = (window: string, time: string) => get(`/api/shadow-line?dwelling=QA/101&window=${window}&at=${time}`);

  it('hears that a north wall has no sun on a winter noon, and a west wall has some late in the day', async () => {
    expect(((await at('W03', '2026-12-21T12:00').expect(200)).body as ShadowLine).down_mm).toBeNull();
    const west = (await at('W01', '2026-12-21T15:00').expect(200)).body as ShadowLine;
    // The sun of a winter afternoon in Miami stands in the south-west, 20 to 30° high.
    expect(west.sunAzimuth_deg).toBeGreaterThan(210);
    expect(west.sunAzimuth_deg).toBeLessThan(245);
    expect(west.sunAltitude_deg).toBeGreaterThan(20);
    expect(west.sunAltitude_deg).toBeLessThan(30);
    expect(west.down_mm).not.toBeNull();
  });

  it.each([['W99', '2026-12-21T12:00', '/window'], ['W03', '2026-02-30T12:00', '/at'], ['W03', '2026-12-21T24:00', '/at'], ['W03', 'noon', '/at']])('is told what cannot be used: %s %s', async (window, time, pointer) => {
    expect(problem(await at(window, time).expect(422)).errors?.[0]?.pointer).toBe(pointer);
  });
});

describe('a year that goes on', () => {
  it('records what was done, plans the rest again from the page, and takes the record back', async () => {
    const { dwelling } = plan.lines[0]!;
    const [building, number] = dwelling.split('/');
    const done = table([`${plan.madeOn},done,${building ?? ''},${number ?? ''},,,,,,,`]);
    await request(server.http).post('/api/records').attach('files', done, 'site-records.csv').expect(200, /"written":true/);
    const next = await made({ replan: plan.id });
    expect(next).toMatchObject({ revision: 2, parent: plan.id });
    expect(next.lines.map((line) => line.dwelling)).not.toContain(dwelling);
    expect((await get('/').expect(200)).text).toContain('revision 2');
    const { id } = ((await get('/api/imports').expect(200)).body as { id: string; file: string }[]).find(({ file }) => file === 'site-records.csv')!;
    await request(server.http).delete(`/api/imports/${id}`).expect(200, /"removed":1/);
    await request(server.http).delete(`/api/imports/${id}`).expect((again) => expect([404, 409]).toContain(again.status));
    await request(server.http).post('/plans').type('form').send({ key: 'K', replan: 'P-9' }).expect(422);
  });
});
