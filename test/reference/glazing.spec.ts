import { gapResistance_m2K_W, glazingOptics } from '#calc';
import { openCatalogue } from '#catalogue';
import { glassHandbook, typeOfRow } from './checks/glass-handbook.js';
import { glassHeat } from './checks/glass-heat.js';
import { glassSheets } from './checks/glass-sheets.js';
import { hold } from './checks/hold.js';
import { handbookGains } from './glazing-handbook.js';

[...glassSheets, ...glassHeat, ...glassHandbook].filter(({ table }) => table.of !== 'calc/glass/labelled-glazing').forEach(hold);

it('finds the gap of 12.7 mm air near the usual 0.17 by EN 673, and the U-factor of double clear near the full balance 2.87', () => {
  expect(Math.abs(gapResistance_m2K_W({ width_mm: 12.7, gas: 'air', emissivities: [0.84, 0.84] }) - 0.17)).toBeLessThan(0.01);
  expect(Math.abs(glazingOptics(openCatalogue().glazing.get('double-clear-3').makeUp).uFactor_W_m2K - 2.866)).toBeLessThan(0.05);
});

it('holds a built-in type for twenty rows of the handbook or more', () => {
  expect(handbookGains.rows.filter(({ given }) => typeOfRow(given.id) !== null).length).toBeGreaterThanOrEqual(20);
});
