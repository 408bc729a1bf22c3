import request from 'supertest';
import { MadeUpPlans, madeUpMakers, startServer, type ServerForTest } from './server-app.js';
import { twoDwellings } from '../portfolios/two-dwellings.js';

interface Problem {
  status: number;
  detail: string;
  errors?: { code: string; pointer?: string; file?: string }[];
}
interface Job {
  id: string;
  state: string;
  why: string | null;
}

let server: ServerForTest;
beforeEach(async () => {
  server = await startServer(madeUpMakers);
  await server.store.write(twoDwellings);
});
afterEach(() => server.close());

const get = (path: string) => request(server.http).get(path);
const order = (body: object, key?: string) => {
  const sending = request(server.http).post('/api/plans').send(body);
  return key === undefined ? sending : sending.set('Idempotency-Key', key);
};
const problem = (answer: request.Response): Problem => {
  expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
  return JSON.parse(answer.text) as Problem;
};
async function inState(id: string, state: string): Promise<Job> {
  for (let tries = 0; tries < 200; tries += 1) {
    const job = (await get(`/api/jobs/${id}`).expect(200)).body as Job;
    if (job.state === state) return job;
    await new Promise((wait) => setTimeout(wait, 20));
  }
  throw new Error(`the job does not come to be ${state}`);
}

describe('a plan that was ordered by mistake', () => {
  it('is stopped while it is under way; what waits behind it is stopped too, and the next one runs', async () => {
    const maker = server.maker as MadeUpPlans;
    maker.goesOn = true;
    const first = ((await order({ name: 'First' }).expect(202)).body as Job).id;
    const second = ((await order({ name: 'Second' }).expect(202)).body as Job).id;
    await inState(first, 'running');
    expect((await request(server.http).delete(`/api/jobs/${second}`).expect(200)).body).toMatchObject({ state: 'failed', why: 'It was stopped as asked.' });
    expect((await request(server.http).delete(`/api/jobs/${first}`).expect(200)).body).toMatchObject({ state: 'failed', why: 'It was stopped as asked.', result: null });
    maker.goesOn = false;
    const third = ((await order({ name: 'Third' }).expect(202)).body as Job).id;
    await inState(third, 'done');
    expect((await server.store.plans()).map(({ title }) => title)).toEqual(['Third']);
    expect((await inState(second, 'failed')).why).toBe('It was stopped as asked.');
  });

  it('cannot be stopped once it has ended, nor when it was never ordered', async () => {
    const { id } = (await order({}).expect(202)).body as Job;
    await inState(id, 'done');
    problem(await request(server.http).delete(`/api/jobs/${id}`).expect(409));
    problem(await request(server.http).delete('/api/jobs/J-9').expect(404));
  });

  it('is stopped from the start page', async () => {
    (server.maker as MadeUpPlans).goesOn = true;
    const { id } = (await order({}).expect(202)).body as Job;
    await inState(id, 'running');
    expect((await get('/')).text).toContain(`action="/jobs/${id}/stop"`);
    await request(server.http).post(`/jobs/${id}/stop`).expect(303);
    await inState(id, 'failed');
    expect((await get('/')).text).not.toContain('/stop"');
  });
});

describe('an order sent twice', () => {
  it('under one key is one job, at the same moment too', async () => {
    const [one, two] = await Promise.all([order({ name: 'Once' }, 'K-1'), order({ name: 'Once' }, 'K-1')]);
    expect((one.body as Job).id).toBe((two.body as Job).id);
    await inState((one.body as Job).id, 'done');
    expect(((await order({ name: 'Once' }, 'K-1').expect(202)).body as Job).id).toBe((one.body as Job).id);
    expect(await server.store.plans()).toHaveLength(1);
  });

  it('under one key with another request is refused, and so is a key too long', async () => {
    await order({ name: 'Once' }, 'K-1').expect(202);
    expect(problem(await order({ name: 'Twice' }, 'K-1').expect(422)).errors?.[0]?.code).toBe('key-reused');
    problem(await order({}, 'k'.repeat(201)).expect(400));
    expect(await server.store.jobs()).toHaveLength(1);
  });

  it('by the form of one page is one job, and the next page orders anew', async () => {
    const keyOf = async (): Promise<string> => /action="\/plans"><input type="hidden" name="key" value="([^"]+)"/.exec((await get('/')).text)?.[1] ?? '';
    const key = await keyOf();
    for (const each of [key, key, await keyOf()]) await request(server.http).post('/plans').type('form').send({ key: each }).expect(303);
    expect(await server.store.jobs()).toHaveLength(2);
  });
});

describe('what nobody can mean', () => {
  it.each([
    [{ seed: 1e300 }, ['/seed']],
    [{ caps: [{ phase: 'OWNER1/2027', cap_cents: 9e99 }] }, ['/caps/0/cap_cents']],
    [{ caps: {} }, ['/caps']],
    [{ caps: [{ phase: 'OWNER1/2027', cap_cents: 5 }], oneCap_cents: 5 }, ['/oneCap_cents']],
    [{ replan: 'P-9', caps: [{ phase: 'NOWHERE', cap_cents: 5 }] }, ['/caps/0/phase', '/replan']],
  ])('in an order is named with its place: %j', async (body, pointers) => {
    const { errors = [] } = problem(await order(body).expect(422));
    expect([...new Set(errors.map(({ pointer }) => pointer ?? ''))].filter((at) => !at.startsWith('/caps/') || pointers.includes(at)).sort()).toEqual(pointers);
    expect(await server.store.jobs()).toHaveLength(0);
  });

  it('is a body that is no JSON: it is not taken for an order without wishes', async () => {
    expect(problem(await request(server.http).post('/api/plans').type('text/plain').send('draws=5').expect(415)).errors?.[0]?.code).toBe('unknown-kind');
    await request(server.http).post('/api/plans').expect(202);
  });

  it('is a day that is not in the calendar', async () => {
    expect(problem(await get('/api/ledger?on=2026-02-31').expect(422)).errors?.[0]?.pointer).toBe('/on');
    await get('/api/ledger?on=2028-02-29').expect(200);
  });

  it('is a file with nothing in it, whatever is kept already', async () => {
    const broken = request(server.http).post('/api/imports').attach('files', Buffer.from('nothing,that\nis,a window\n'), 'windows.csv');
    expect(problem(await broken.expect(422)).errors?.some(({ file }) => file === 'windows.csv')).toBe(true);
  });

  it('is said once, however many fields have it', async () => {
    const { detail, errors } = problem(await order({ caps: [{ phase: 'OWNER1/2027', cap_cents: -1 }, { phase: 'OWNER1/2028', cap_cents: -1 }] }).expect(422));
    expect(detail.match(/0 or more/g)).toHaveLength(1);
    expect(errors).toHaveLength(2);
  });
});

describe('two people at one portfolio', () => {
  const films = 'film,name,solar_transmittance\n';
  const send = (tag: string) => request(server.http).post('/api/imports?dryRun=true').set('If-Match', tag).attach('files', Buffer.from(films), 'films.csv');

  it('are kept apart by If-Match: a change made for another state is not made', async () => {
    const { etag = '' } = (await get('/api/portfolio').expect(200)).headers as { etag?: string };
    await get('/api/portfolio').set('If-None-Match', etag).expect(304);
    expect((await send(etag)).status).not.toBe(412);
    await server.store.write({ ownerEntities: [{ ...twoDwellings.ownerEntities[0]!, name: 'Another name' }] });
    expect(problem(await send(etag).expect(412)).detail).toContain('has changed since');
    expect((await send('*')).status).not.toBe(412);
    problem(await request(server.http).delete('/api/imports/I-9').set('If-Match', etag).expect(412));
  });
});
