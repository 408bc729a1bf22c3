import request from 'supertest';
import type { Plan } from '#planning';
import { makers } from '../../apps/server/src/work/makers.js';
import { startServer, type ServerForTest } from '../journeys/server-app.js';
import { plannedWith } from '../workbook/planned.js';
import { readPdf, textOf } from './read-pdf.js';

let server: ServerForTest;
beforeAll(async () => {
  server = await startServer(makers('.'));
  const plan = await plannedWith((p) => p);
  const keep = (id: string, body: Plan | object) => server.store.savePlan({ id, title: 'Plan', parent: null, made: '2026-07-01T08:00:00Z', programVersion: '0', inputsHash: id, signed: false, body });
  await keep('P', plan);
  await keep('OLD', { ...plan, id: 'OLD', workOrders: [{ id: 'made before steps were there' }] });
}, 120_000);
afterAll(() => server.close());

describe('papers over HTTP', () => {
  it('come as PDF, on the sheet that is asked for', async () => {
    const answer = await request(server.http).get('/api/plans/P/papers/memo.pdf?format=a4').responseType('blob').expect(200).expect('Content-Type', 'application/pdf');
    const [page] = readPdf(answer.body as Uint8Array);
    expect([page!.width, page!.height]).toEqual([595.28, 841.89]);
    expect(textOf(page!)).toContain('Decision memo');
  });

  it('are refused with a reason: an unknown paper, plan or sheet, and a plan of an earlier version', async () => {
    await request(server.http).get('/api/plans/P/papers/poem.pdf').expect(404);
    await request(server.http).get('/api/plans/Q/papers/memo.pdf').expect(404);
    await request(server.http).get('/api/plans/OLD/papers/crew.pdf').expect(409);
    const refused = await request(server.http).get('/api/plans/P/papers/memo.pdf?format=a3').expect('Content-Type', /problem\+json/);
    expect((refused.body as { errors?: unknown[] }).errors).toHaveLength(1);
  });
});
