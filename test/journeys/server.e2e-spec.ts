import { spawnSync } from 'node:child_process';
import request from 'supertest';
import { MadeUpPlans, madeUpMakers, startServer, type ServerForTest } from './server-app.js';
import { twoDwellings } from '../portfolios/two-dwellings.js';

interface Problem {
  status: number;
  title: string;
  detail: string;
  instance: string;
  type: string;
  errors?: { code: string; pointer?: string; row?: number; column?: string; file?: string }[];
}

let server: ServerForTest;
beforeEach(async () => {
  server = await startServer(madeUpMakers);
});
afterEach(() => server.close());

const get = (path: string) => request(server.http).get(path);
const problem = (answer: request.Response): Problem => {
  expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
  return JSON.parse(answer.text) as Problem;
};

async function doneJob(address: string): Promise<{ state: string; why: string | null; result: string | null }> {
  for (let tries = 0; tries < 100; tries += 1) {
    const job = (await get(address).expect(200)).body as { state: string; why: string | null; result: string | null };
    if (job.state === 'done' || job.state === 'failed') return job;
    await new Promise((wait) => setTimeout(wait, 20));
  }
  throw new Error('the job does not end');
}

async function madePlan(): Promise<string> {
  await server.store.write(twoDwellings);
  const { headers } = await request(server.http).post('/api/plans').send({ name: 'Spring' }).expect(202);
  const { result } = await doneJob(headers.location ?? '');
  return result ?? '';
}

const TINY = {
  'buildings.csv': 'building_id,name,owner_entity\nEC,Example Court,OWNER1\n',
  'dwellings.csv': 'dwelling_id,building_id,floor_area_m2\n001,EC,55\n',
  'windows.csv': 'building_id,dwelling_id,window_id,azimuth_deg,width_mm,height_mm,glazing\nEC,001,W01,270,1168,1168,single clear\n',
};
function upload(path: string, files: Readonly<Record<string, string>>) {
  let sending = request(server.http).post(path);
  for (const [name, text] of Object.entries(files)) sending = sending.attach('files', Buffer.from(text), name);
  return sending;
}

describe('problems', () => {
  it('are application/problem+json for an unknown address, with the address in it', async () => {
    const answer = problem(await get('/api/nothing?x=1').expect(404));
    expect(answer).toMatchObject({ type: 'about:blank', title: 'Not Found', status: 404, instance: '/api/nothing?x=1' });
  });

  it('are the same for a body that is no JSON', async () => {
    const answer = problem(await request(server.http).post('/api/plans').type('json').send('{"name":').expect(400));
    expect(answer.title).toBe('Bad Request');
  });

  it('name every wrong field with its pointer at once, unknown ones too', async () => {
    await server.store.write(twoDwellings);
    const body = { view: 'mine', caps: [{ phase: 'OWNER1/2027', cap_cents: 1.5 }], colour: 'blue' };
    const answer = problem(await request(server.http).post('/api/plans').send(body).expect(422));
    expect(answer.errors?.map(({ pointer }) => pointer).sort()).toEqual(['/caps/0/cap_cents', '/colour', '/view']);
  });

  it('say of a failure of ours only where the log has it', async () => {
    jest.spyOn(server.store, 'plans').mockRejectedValue(new Error('secret inside'));
    const answer = problem(await get('/api/plans').expect(500));
    expect(answer.detail).toMatch(/^The program failed; its log says where, under [0-9a-f-]{36}\.$/);
    expect(JSON.stringify(answer)).not.toContain('secret');
  });

  it('are a page where a person asked for a page', async () => {
    const answer = await request(server.http).get('/nothing').set('Accept', 'text/html').expect(404);
    expect(answer.headers['content-type']).toMatch(/^text\/html/);
    expect(answer.text).toContain('<h1>Not Found</h1>');
  });
});

describe('who is let in', () => {
  it('is not a name of somebody else that points here', async () => {
    problem(await get('/api/portfolio').set('Host', 'evil.example').expect(421));
  });

  it('is not a page of another site', async () => {
    problem(await request(server.http).post('/plans').set('Origin', 'https://evil.example').expect(403));
    problem(await request(server.http).post('/plans').set('Origin', 'null').expect(403));
  });

  it('is this machine, with headers that forbid scripts and do not ask for https', async () => {
    const { headers } = await get('/').set('Host', 'localhost:3000').set('Origin', 'http://localhost:3000').expect(200);
    expect(headers['content-security-policy']).toContain("script-src 'none'");
    expect(headers['content-security-policy']).not.toContain('upgrade-insecure-requests');
    expect(headers['strict-transport-security']).toBeUndefined();
  });
});

describe('sending survey files', () => {
  it('takes the good rows and answers with findings; the same files again change nothing', async () => {
    const first = (await upload('/api/imports', TINY).expect(200)).body as { written: boolean; counts: { created: number }; findings: unknown[] };
    expect(first).toMatchObject({ dryRun: false, written: true });
    const contents = (await get('/api/portfolio').expect(200)).body as { counts: Record<string, number>; portfolioRevision: number };
    expect(contents.counts).toMatchObject({ buildings: 1, dwellings: 1, windows: 1 });

    await upload('/api/imports', TINY).expect(200, /"created":0,"updated":0/);
    expect(((await get('/api/portfolio')).body as typeof contents).portfolioRevision).toBe(contents.portfolioRevision);
    expect(((await get('/api/imports').expect(200)).body as { file: string }[]).map(({ file }) => file)).toContain('windows.csv');
  });

  it('only looks when asked to', async () => {
    await upload('/api/imports?dryRun=true', TINY).expect(200, /"dryRun":true,"written":false/);
    expect(await server.store.find()).toBeNull();
    problem(await upload('/api/imports?dryRun=perhaps', TINY).expect(422));
  });

  it('sends bad rows back with their reason and names row and column', async () => {
    const files = { ...TINY, 'windows.csv': TINY['windows.csv'] + 'EC,001,W02,270,approx 40,1168,single clear\n' };
    const body = (await upload('/api/imports', files).expect(200)).body as unknown;
    const { findings, rejects } = body as { findings: { severity: string; file: string; row: number; column: string }[]; rejects: { of: string; rows: number; text: string }[] };
    expect(findings).toContainEqual(expect.objectContaining({ severity: 'error', file: 'windows.csv', row: 3, column: 'width_mm' }));
    expect(rejects).toHaveLength(1);
    expect(rejects[0]).toMatchObject({ of: 'windows.csv', rows: 1 });
    expect(rejects[0]?.text).toContain('approx 40');
    expect((await server.store.contents()).counts.windows).toBe(1);
  });

  it('is a problem with row and column when nothing can be used, and when nothing was sent', async () => {
    const answer = problem(await upload('/api/imports', { 'buildings.csv': 'building_id,name,latitude_deg\n,Example Court,north\n' }).expect(422));
    expect(answer.errors?.some(({ file, row }) => file === 'buildings.csv' && row === 2)).toBe(true);
    expect(problem(await request(server.http).post('/api/imports').expect(422)).errors?.[0]?.code).toBe('no-file');
  });

  it('shows a person the findings as a page in which a cell cannot become markup', async () => {
    const files = { ...TINY, 'windows.csv': TINY['windows.csv'] + 'EC,001,W02,270,<script>alert(1)</script>,1168,single clear\n' };
    const { text } = await upload('/imports', files).field('dryRun', 'true').expect(200);
    expect(text).toContain('&lt;script&gt;');
    expect(text).not.toContain('<script>');
    expect(await server.store.find()).toBeNull();
  });
});

describe('making a plan', () => {
  it('answers at once with a job that leads to the plan and its workbook', async () => {
    const plan = await madePlan();
    expect(plan).toBe('/api/plans/P-1');
    expect((await get(plan).expect(200)).body).toMatchObject({ id: 'P-1', plan: { name: 'Spring' }, workbook: '/api/plans/P-1/workbook' });
    const workbook = await get(`${plan}/workbook`).buffer(true).expect(200);
    expect(workbook.headers['content-type']).toBe('application/vnd.openxmlformats-officedocument.spreadsheetml.sheet');
    expect(workbook.headers['content-disposition']).toBe('attachment; filename="rollout-P-1.xlsx"');
  });

  it('is refused before anything was imported, and for a phase that is not there', async () => {
    expect(problem(await request(server.http).post('/api/plans').send({}).expect(409)).detail).toContain('import one first');
    await server.store.write(twoDwellings);
    const answer = problem(await request(server.http).post('/api/plans').send({ caps: [{ phase: 'OWNER1/2099', cap_cents: 1 }] }).expect(422));
    expect(answer.errors).toEqual([expect.objectContaining({ code: 'unknown-phase', pointer: '/caps/0/phase' })]);
  });

  it('that fails leaves a job that says why', async () => {
    await server.store.write(twoDwellings);
    (server.maker as MadeUpPlans).fails = 'no weather for building AA';
    const { headers } = await request(server.http).post('/api/plans').send({}).expect(202);
    expect(await doneJob(headers.location ?? '')).toMatchObject({ state: 'failed', why: 'no weather for building AA', result: null });
  });

  it('is a 404 problem for plans and jobs that are not kept', async () => {
    for (const path of ['/api/plans/P-9', '/api/plans/P-9/workbook', '/api/jobs/J-9', '/api/ranks/dwellings', '/api/ranks/facades?plan=P-9']) {
      expect(problem(await get(path).expect(404)).status).toBe(404);
    }
  });
});

describe('reading ranks', () => {
  it('goes page by page, each naming the next in body and Link header, until all lines are read once', async () => {
    await madePlan();
    const seen: number[] = [];
    let at: string | null = '/api/ranks/dwellings?limit=2';
    while (at !== null) {
      const answer = await get(at).expect(200);
      const { items, next, total } = answer.body as { items: { rank: number }[]; next: string | null; total: number };
      expect(total).toBe(5);
      expect(answer.headers.link).toBe(next === null ? undefined : `<${next}>; rel="next"`);
      seen.push(...items.map(({ rank }) => rank));
      at = next;
    }
    expect(seen).toEqual([1, 2, 3, 4, 5]);
  });

  it('refuses a limit out of range', async () => {
    expect(problem(await get('/api/ranks/dwellings?limit=0').expect(422)).errors?.[0]?.pointer).toBe('/limit');
  });
});

describe('the start page', () => {
  it('says that the database is empty, and later what is in it with links to plan, ranks and workbook', async () => {
    expect((await get('/').expect(200)).text).toContain('The database is empty');
    await madePlan();
    const { text } = await get('/').expect(200);
    expect(text).toContain('Two dwellings');
    expect(text).toMatch(/dwellings and common areas<\/th><td class="number">2</);
    expect(text).toContain('make it again'); // the made-up plan has no figures
    for (const link of ['/api/plans/P-1/workbook', '/api/openapi.json']) {
      expect(text).toContain(`href="${link}"`);
      await get(link).expect(200);
    }
  });

  it('makes a plan from its form and comes back', async () => {
    await server.store.write(twoDwellings);
    await request(server.http).post('/plans').expect(303).expect('Location', '/#work');
    expect(await server.store.jobs()).toHaveLength(1);
  });
});

describe('health', () => {
  it('tells a server that answers from a database that does not', async () => {
    await get('/api/health/live').expect(200, { status: 'up' });
    await get('/api/health/ready').expect(200, { status: 'up' });
    jest.spyOn(server.store, 'contents').mockRejectedValue(new Error('gone'));
    problem(await get('/api/health/ready').expect(503));
  });
});

describe('the description of the API', () => {
  it('is OpenAPI 3.1 and names every operation and its problems', async () => {
    const body = (await get('/api/openapi.json').expect(200)).body as unknown;
    const { openapi, paths } = body as { openapi: string; paths: Record<string, Record<string, { description?: string; responses: Record<string, { content?: object }> }>> };
    expect(openapi).toBe('3.1.0');
    expect(Object.keys(paths).sort()).toEqual([
      '/api/bills', '/api/health/live', '/api/health/ready', '/api/imports', '/api/imports/{id}', '/api/jobs', '/api/jobs/{id}', '/api/ledger', '/api/now', '/api/plans', '/api/plans/{id}',
      '/api/plans/{id}/calendar', '/api/plans/{id}/calendar.ics', '/api/plans/{id}/explain/{dwelling}', '/api/plans/{id}/papers', '/api/plans/{id}/papers/{file}', '/api/plans/{id}/proof', '/api/plans/{id}/receipts',
      '/api/plans/{id}/receipts/{figure}', '/api/plans/{id}/relay', '/api/plans/{id}/sign', '/api/plans/{id}/workbook', '/api/portfolio', '/api/ranks/dwellings', '/api/ranks/facades', '/api/records',
      '/api/shadow-line', '/api/verification', '/api/verification/meters',
    ]);
    expect(paths['/api/imports']?.post?.responses['422']?.content).toHaveProperty(['application/problem+json']);
    expect(paths['/api/plans/{id}/calendar.ics']?.get?.description).toMatch(/^Times in UTC where the daylight rule of the building is known, else .*floating/);
  });
});

describe('the description of the API to a judge from outside', () => {
  // The validator is an ES module, which jest's CommonJS mode cannot load: it judges in a process of its own.
  const JUDGE = `import { Validator } from '@seriousme/openapi-schema-validator';
let text = '';
for await (const piece of process.stdin) text += piece;
const { valid, errors } = await new Validator().validate(JSON.parse(text));
console.log(valid ? 'valid' : JSON.stringify(errors));`;
  const judged = (text: string): string => spawnSync(process.execPath, ['--input-type=module', '-e', JUDGE], { input: text, encoding: 'utf8' }).stdout.trim();

  it('is valid, and would not be with an operation that answers nothing', async () => {
    const { text } = await get('/api/openapi.json').expect(200);
    expect(judged(text)).toBe('valid');
    const broken = JSON.parse(text) as { paths: Record<string, { get: { responses?: object } }> };
    delete broken.paths['/api/portfolio']?.get.responses;
    broken.paths['/api/jobs'] = { get: { responses: { ok: {} } } };
    expect(judged(JSON.stringify(broken))).not.toBe('valid');
  });
});

describe('a server that starts again', () => {
  it('says of work left behind that it did not end', async () => {
    const { JobRunner } = await import('../../apps/server/src/jobs/job-runner.js');
    const { Edge } = await import('../../apps/server/src/edge.js');
    const left = { id: 'J1', kind: 'plan', state: 'running', input: {}, progress: 0.4, stage: 'choosing', result: null, why: null, made: '2026-06-01T08:00:00Z', started: null, ended: null } as const;
    await server.store.saveJob(left);
    await new JobRunner(server.store, new Edge()).onApplicationBootstrap();
    expect((await get('/api/jobs/J1').expect(200)).body).toMatchObject({ state: 'failed', why: 'The server ended before this was done; ask for it again.' });
  });
});
