import { openCatalogue } from '#catalogue';
import { payerShares, type Portfolio } from '#calc';
import { fileOfText, portfolioOf, readInventory } from '#intake';
import { readdirSync, readFileSync } from 'node:fs';
import { buildingWeather, type Plan, planPortfolio, workersHere } from '#planning';

const FOLDER = 'test/inventories/ok/two-buildings';
const catalogue = openCatalogue();
const textOf = (name: string): string => readFileSync(`${FOLDER}/${name}`, 'utf8');

/** The two buildings with another table of meters and other files laid over. */
async function inventory(over: Readonly<Record<string, string>>): Promise<Portfolio> {
  const names = [...new Set([...readdirSync(FOLDER), ...Object.keys(over)])];
  const intake = await readInventory(names.map((name) => fileOfText(name, over[name] ?? textOf(name))));
  expect(intake.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return portfolioOf(intake, '2026-07-01');
}

function plan(portfolio: Portfolio): Promise<Plan> {
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  return planPortfolio({ portfolio, catalogue, weather, id: 'P', revision: 1, parent: null, madeOn: '2026-07-01', program: 'test', inputHash: 'none', findings: [] }, workersHere);
}

const meters = (rule: string): string => `meter,building,tariff,use,payer_rule,owner_share,reset_lag_yr,vacancy_share,vacancy_months,base_load_kwh_yr\nQA-M1,QA,FLAT,${rule},2600\nQB-001,QB,FLAT,${rule},2200\nQB-002,QB,FLAT,${rule},2900\n`;
const CENTRAL = textOf('dwellings.csv').replaceAll('single-speed,2,10,SEER', 'central,2,0.9,kW/ton');

const CASES: readonly (readonly [string, Readonly<Record<string, string>>, (age: number) => number])[] = [
  ['a master meter the owner pays', { 'meters.csv': meters('all,owner,1,,,') }, () => 1],
  ['meters the tenants pay, empty a tenth of the time', { 'meters.csv': meters('all,tenant,0,,0.1,') }, () => 0.1],
  ['sub-meters, empty three months of the year', { 'meters.csv': meters('all,sub-meter,0,,,3') }, () => 0.25],
  ['a bill passed on by ratio that follows after two years', { 'meters.csv': meters('all,ratio,0.4,2,,') }, (age) => (age <= 2 ? 1 : 0.4)],
  ['common areas', { 'meters.csv': meters('common,common,1,,,') }, () => 1],
  ['a central plant by its formula, 60 % passed on', { 'meters.csv': meters('cooling,ratio,0.4,0,,'), 'dwellings.csv': CENTRAL }, () => 0.4],
];

describe('who pays what a meter bills', () => {
  it.each(CASES)('%s: owner and tenant are the whole, from the file to the plan', async (_, files, ownerShare) => {
    const made = await plan(await inventory(files));
    expect(made.lines.length).toBeGreaterThan(0);
    for (const meter of made.meters) {
      expect(meter.prices).toBeDefined();
      expect((meter.prices?.owner_cents ?? 0) + (meter.prices?.tenant_cents ?? 0)).toBe(meter.togetherSaving_cents);
      expect(Math.abs((meter.prices?.owner_cents ?? 0) - ownerShare(1) * meter.togetherSaving_cents)).toBeLessThanOrEqual(1);
    }
    for (const line of made.payback.lines) {
      line.yearly_cents.forEach((whole, i) => {
        const shares = payerShares(line.payer, i + 1);
        expect(shares.owner + shares.tenant).toBeCloseTo(1, 12);
        // The owner's part is what the rule of the file says, reckoned here and not by the program.
        expect(line.owner_cents[i]).toBeCloseTo(whole * ownerShare(i + 1), 6);
      });
      expect(line.npvOwner_cents).toBeLessThanOrEqual(line.npv_cents + 1e-6);
    }
  }, 60_000);

  it('a plan made after the first orders spends only what the cap still leaves', async () => {
    const before = await plan(await inventory({}));
    const first = before.phases.find(({ spending }) => spending.total_cents > 0)!;
    const { id, ownerEntity, cap_cents } = first.phase;
    // So much is ordered that less than half of what the plan wanted is left; part of it is paid already.
    const ordered = (cap_cents - first.spending.total_cents / 2) / 100;
    const paid = Math.floor(ordered / 3);
    const ledger = `entry,owner_entity,phase,kind,date,amount,settles\nPO-1,${ownerEntity},${id},committed,2026-07-02,${ordered.toFixed(2)},\nPAY-1,${ownerEntity},${id},paid,2026-07-20,${paid},PO-1\n`;
    const after = await plan(await inventory({ 'ledger.csv': ledger }));
    const again = after.phases.find(({ phase }) => phase.id === id)!;
    expect(again.phase.cap_cents).toBe(cap_cents - Math.round(ordered * 100));
    expect(again.spending.total_cents).toBeLessThanOrEqual(again.phase.cap_cents);
    expect(again.spending.total_cents).toBeLessThan(first.spending.total_cents);
    expect(after.ledger?.phases.find(({ phase }) => phase === id)).toMatchObject({ cap_cents, paid_cents: paid * 100, remaining_cents: again.phase.cap_cents });
    expect(after.findings.some(({ subject, text }) => subject === id && text.includes('ordered and not yet paid'))).toBe(true);
  }, 60_000);
});
