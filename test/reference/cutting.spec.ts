import { cutting, stripRun } from './checks/choosing-and-cutting.js';
import { hold } from './checks/hold.js';
import { strips } from './cutting-strips.js';

cutting.forEach(hold);

it('strips, in the mean, lie well below both plain passes', () => {
  const over = { ours: 0, shelf: 0, guillotine: 0 };
  for (const { given, expect: { optimum } } of strips.rows) {
    const run = stripRun(given);
    for (const name of ['ours', 'shelf', 'guillotine'] as const) over[name] += run[name] / optimum - 1;
  }
  expect(over.ours).toBeLessThan(0.6 * over.guillotine);
  expect(over.ours).toBeLessThan(over.shelf);
});
