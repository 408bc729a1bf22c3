import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import request from 'supertest';
import type { Plan } from '#planning';
import { makers } from '../../apps/server/src/work/makers.js';
import { startServer, type ServerForTest } from './server-app.js';

const FOLDER = join(__dirname, '..', 'inventories', 'ok', 'two-buildings');

let server: ServerForTest;
let plan: { id: string; plan: Plan };

async function sendInventory(): Promise<void> {
  let sending = request(server.http).post('/api/imports');
  for (const name of readdirSync(FOLDER).filter((file) => /\.(csv|json)$/.test(file))) sending = sending.attach('files', readFileSync(join(FOLDER, name)), name);
  await sending.expect(200);
}

async function ended(address: string): Promise<{ state: string; why: string | null; result: string }> {
  for (;;) {
    const job = (await request(server.http).get(address).expect(200)).body as { state: string; why: string | null; result: string };
    if (job.state === 'done' || job.state === 'failed') return job;
    await new Promise((wait) => setTimeout(wait, 100));
  }
}

beforeAll(async () => {
  server = await startServer(makers(FOLDER));
  await sendInventory();
  const { headers } = await request(server.http).post('/api/plans').send({ draws: 20 }).expect(202);
  const job = await ended(headers.location ?? '');
  expect(job).toMatchObject({ state: 'done', why: null });
  plan = (await request(server.http).get(job.result).expect(200)).body as typeof plan;
}, 120_000);
afterAll(() => server.close());

describe('a manager who sends an inventory and asks for a plan over HTTP', () => {
  it('gets dwellings in falling order of saving per dollar', async () => {
    const { items } = (await request(server.http).get('/api/ranks/dwellings').expect(200)).body as { items: { rank: number; perDollar: number }[] };
    expect(items.length).toBeGreaterThan(1);
    const saving = items.map(({ perDollar }) => perDollar);
    expect(saving).toEqual([...saving].sort((a, b) => b - a));
  });

  it('gets a plan that pays in no phase more than its cap', () => {
    expect(plan.plan.lines.length).toBeGreaterThan(0);
    for (const { phase, spending } of plan.plan.phases) expect(spending.total_cents).toBeLessThanOrEqual(phase.cap_cents);
  });

  it('downloads the workbook of that plan, which names its planned dwellings', async () => {
    const answer = await request(server.http).get(`/api/plans/${plan.id}/workbook`).responseType('blob').expect(200);
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(answer.body as ExcelJS.Buffer);
    const cells = new Set<string>();
    book.eachSheet((sheet) => {
      sheet.eachRow((row) => {
        row.eachCell((cell) => {
          cells.add(cell.text);
        });
      });
    });
    for (const { dwelling } of plan.plan.lines) expect(cells).toContain(dwelling);
  });

  it('can ask for another cap without changing the portfolio', async () => {
    const [first] = plan.plan.phases;
    const caps = [{ phase: first?.phase.id ?? '', cap_cents: 0 }];
    const { headers } = await request(server.http).post('/api/plans').send({ name: 'Nothing in year one', caps, draws: 0 }).expect(202);
    const { result } = await ended(headers.location ?? '');
    const other = (await request(server.http).get(result).expect(200)).body as typeof plan;
    expect(other.plan.phases[0]?.spending.total_cents).toBe(0);
    expect((await server.store.load()).phases.find(({ id }) => id === first?.phase.id)?.cap_cents).toBe(first?.phase.cap_cents);
    expect(((await request(server.http).get('/api/plans').expect(200)).body as { title: string }[])[0]?.title).toBe('Nothing in year one');
  }, 60_000);
});
