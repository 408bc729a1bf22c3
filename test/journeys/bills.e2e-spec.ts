import request from 'supertest';
import { madeUpMakers, startServer, type ServerForTest } from './server-app.js';
import { twoDwellings } from '../portfolios/two-dwellings.js';

interface Bills {
  bills: { meter: string; firstDay: string; lastDay: string; use_kWh: number; used: boolean; why: string | null }[];
  gaps: { firstDay: string; lastDay: string; days: number }[];
}
interface Taken {
  written: boolean;
  counts: { created: number; updated: number };
  findings: { code: string; value: string | null }[];
}

let server: ServerForTest;
beforeEach(async () => {
  server = await startServer(madeUpMakers);
  await server.store.write(twoDwellings);
});
afterEach(() => server.close());

const send = (query: string, name: string, text: string) => request(server.http).post(`/api/bills${query}`).attach('files', Buffer.from(text), name);
const kept = async (): Promise<Bills> => (await request(server.http).get('/api/bills?meter=AA/M1').expect(200)).body as Bills;

const SUPPLIER = `Read from,Read to,kWh used,Total charge,Read type
2026-03-16,2026-04-14,701,$133.19,Actual
2026-04-15,2026-05-14,988,$187.72,Actual
2026-06-15,2026-07-14,1520,$288.80,Estimate
`.replace('Read from', 'From').replace('Read to', 'To');

describe('the way of a bill through the server', () => {
  it('a table with the supplier’s own headers and no meter is taken for the meter named, and what is odd comes back with its days', async () => {
    const dry = (await send('?meter=AA/M1&dryRun=true', 'download.csv', SUPPLIER).expect(200)).body as Taken;
    expect([dry.written, dry.counts.created, (await kept()).bills.length]).toEqual([false, 3, 2]);

    const taken = (await send('?meter=AA/M1', 'download.csv', SUPPLIER).expect(200)).body as Taken;
    expect(taken).toMatchObject({ written: true, counts: { created: 3 } });
    expect(taken.findings.map(({ code }) => code)).toEqual(expect.arrayContaining(['bill-estimated', 'bills-gap', 'bill-settles-estimate']));
    expect(taken.findings.find(({ code }) => code === 'bills-gap')?.value).toBe('AA/M1: no bill from 2026-05-15 to 2026-06-14, 31 days');

    const { bills, gaps } = await kept();
    // The bill kept before was an estimate, so the first reading after it is left out as well.
    expect(bills.map(({ firstDay, used }) => [firstDay, used])).toEqual([['2026-01-14', true], ['2026-02-13', false], ['2026-03-16', false], ['2026-04-15', true], ['2026-06-15', false]]);
    expect(bills.find(({ firstDay }) => firstDay === '2026-06-15')?.why).toBe('nobody read the meter for 2026-06-15 to 2026-07-14');
    expect(gaps).toMatchObject([{ firstDay: '2026-05-15', lastDay: '2026-06-14', days: 31 }]);

    const again = (await send('?meter=AA/M1', 'download.csv', SUPPLIER).expect(200)).body as Taken;
    expect(again).toMatchObject({ written: false, counts: { created: 0, updated: 0 } });
  });

  it('a corrected bill takes the place of the one of the same days', async () => {
    await send('', 'bills.csv', 'meter,first_day,last_day,use_kWh,estimated\nAA/M1,2026-02-13,2026-03-15,803,no\n').expect(200);
    expect((await kept()).bills.map(({ use_kWh, used }) => [use_kWh, used])).toEqual([[812.4, true], [803, true]]);
  });

  it('files of which nothing can be used are a problem, and so is a meter that is not there', async () => {
    await send('?meter=ZZ/1', 'download.csv', SUPPLIER).expect(422).expect('content-type', /problem\+json/);
    await send('', 'readings.xml', '<!DOCTYPE feed><feed/>').expect(422, /document type/);
    await send('?by=week', 'download.csv', SUPPLIER).expect(422);
    await request(server.http).get('/api/bills?meter=ZZ/1').expect(404).expect('content-type', /problem\+json/);
  });

  it('the ledger says what the caps still leave', async () => {
    const body = (await request(server.http).get('/api/ledger?on=2026-09-01').expect(200)).body as unknown;
    expect(body).toMatchObject({
      on: '2026-09-01',
      phases: [{ phase: 'OWNER1/2027', cap_cents: 1_400_000, expiredQuotes_cents: 310_000, remaining_cents: 1_400_000 }, { phase: 'OWNER1/2028' }],
      quotes: [{ id: 'L1', state: 'expired' }],
      findings: [{ severity: 'warning', subject: 'L1' }],
    });
    await request(server.http).get('/api/ledger?on=soon').expect(422);
  });
});
