// Writes data/demo: the invented Example Portfolio, the same bytes every time. Run: node scripts/make-demo.mjs [folder]
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { stringify } from 'csv-stringify/sync';
import { bills, ledger } from './demo-portfolio/bills.mjs';
import { court } from './demo-portfolio/court.mjs';
import { houses } from './demo-portfolio/houses.mjs';
import { lofts } from './demo-portfolio/lofts.mjs';
import { consents, films, locks, moveouts, plan, rolls, tariffs } from './demo-portfolio/money.mjs';
import { row } from './demo-portfolio/row.mjs';
import { terrace } from './demo-portfolio/terrace.mjs';
import { tower } from './demo-portfolio/tower.mjs';

const folder = process.argv[2] ?? join(dirname(fileURLToPath(import.meta.url)), '..', 'data', 'demo');

const PLACE_FIRST = ['consent', 'building', 'plan_type', 'dwelling', 'window', 'mark'];

/** One table out of the six buildings' rows; ids first, then the columns somebody fills in the order they are first named. */
function table(rows) {
  const named = [...new Set(rows.flatMap((each) => Object.keys(each)))];
  const isDwelling = rows.some((each) => 'kind' in each && 'plan_type' in each);
  const first = (isDwelling ? ['building', 'dwelling', 'kind', 'plan_type'] : PLACE_FIRST).filter((column) => named.includes(column));
  const columns = [...first, ...named.filter((column) => !first.includes(column))];
  return stringify(rows, { header: true, columns });
}

const buildings = [court, row, tower, houses, lofts, terrace];
const gather = (part) => buildings.flatMap((building) => building[part] ?? []);
const files = {
  'buildings.csv': table(gather('building')),
  'plan-types.csv': table(gather('planTypes')),
  'dwellings.csv': table(gather('dwellings')),
  'windows.csv': table([...gather('planWindows'), ...gather('windows')]),
  'horizons.csv': table(gather('horizons')),
  'meters.csv': table(gather('meters')),
  'dwelling-meters.csv': table(gather('dwellingMeters')),
  'consents.csv': table(consents),
  'moveouts.csv': table(moveouts),
  'films.csv': table(films),
  'rolls.csv': table(rolls),
  'locks.csv': table(locks),
  'bills.csv': table(bills),
  'ledger.csv': table(ledger),
  'tariffs.json': tariffs,
  'plan.json': `${JSON.stringify(plan, null, 2)}\n`,
};

mkdirSync(folder, { recursive: true });
for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
