// The picture of the ranking in README.md, drawn from a plan: `rollout run data/demo --quiet --json > out/plan.json`, then
// `node scripts/ranking-picture.mjs out/plan.json docs/ranking.png`.
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';

const [planFile, pictureFile] = process.argv.slice(2);
if (planFile === undefined || pictureFile === undefined) {
  console.error('node scripts/ranking-picture.mjs PLAN.json PICTURE.png');
  process.exit(1);
}
const plan = JSON.parse(readFileSync(planFile, 'utf8'));

// The best of the whole list, then the best of every building that is not among them, so that the far end is seen too.
const BEST = 12;
const OF_EACH_BUILDING = 2;
const best = plan.rankedDwellings.slice(0, BEST);
const later = plan.buildings.flatMap((b) => {
  const ranked = plan.rankedDwellings.filter((r) => r.building === b.id);
  return ranked.filter((r) => r.rank > BEST).slice(0, OF_EACH_BUILDING);
});
const shown = [...best, ...later.sort((a, b) => a.rank - b.rank)];

const LEFT = 300;
const WIDTH = 1000;
const ROW = 25;
const TOP = 92;
const scaleEnd = Math.ceil(Math.max(...shown.map((r) => r.perDollarHigh)) * 10) / 10;
const at = (perDollar) => LEFT + (Math.max(0, perDollar) / scaleEnd) * (WIDTH - LEFT - 30);
const text = (x, y, words, more = '') => `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" ${more}>${words.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</text>`;
const line = (x1, y1, x2, y2, width = 1, colour = '#000') => `<line x1="${x1.toFixed(1)}" y1="${y1.toFixed(1)}" x2="${x2.toFixed(1)}" y2="${y2.toFixed(1)}" stroke="${colour}" stroke-width="${width}"/>`;

const bottom = TOP + shown.length * ROW;
const grid = Array.from({ length: Math.round(scaleEnd * 10) + 1 }, (_, i) => i / 10).flatMap((v) => [
  line(at(v), TOP - 6, at(v), bottom, 1, '#bbb'),
  text(at(v), TOP - 12, v.toFixed(2), 'text-anchor="middle" font-size="13"'),
]);
const rows = shown.flatMap((r, i) => {
  const y = TOP + i * ROW;
  const middle = y + ROW / 2;
  const planned = plan.phases.some((p) => p.phase.id === r.inPlan);
  const gap = i > 0 && r.rank !== shown[i - 1].rank + 1;
  return [
    ...(gap ? [line(10, y, WIDTH - 20, y, 1, '#888')] : []),
    text(44, middle + 5, String(r.rank), 'text-anchor="end" font-size="14"'),
    text(58, middle + 5, r.band, 'font-size="14"'),
    text(84, middle + 5, r.dwelling, 'font-size="14"'),
    text(168, middle + 5, r.inPlan.startsWith('waits') ? 'waits for a letter' : r.inPlan.startsWith('in reserve') ? 'in reserve' : r.inPlan, 'font-size="12"'),
    `<rect x="${LEFT}" y="${y + 6}" width="${(at(r.perDollar) - LEFT).toFixed(1)}" height="${ROW - 12}" fill="${planned ? '#bbb' : '#fff'}" stroke="#000"/>`,
    line(at(r.perDollarLow), middle, at(r.perDollarHigh), middle, 2),
    ...[r.perDollarLow, r.perDollarHigh].map((v) => line(at(v), middle - 5, at(v), middle + 5, 2)),
  ];
});
const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${bottom + 34}" font-family="DejaVu Sans">
<rect width="100%" height="100%" fill="#fff"/>
${text(10, 26, 'Cooling cost cut each year, per dollar of installed film', 'font-size="18" font-weight="bold"')}
${text(10, 50, `${plan.name}: rank, band, dwelling, what the plan does; grey bar: in the plan; whisker: eight in ten, by its own doubts`, 'font-size="13"')}
${grid.join('\n')}
${rows.join('\n')}
${line(LEFT, TOP - 6, LEFT, bottom, 2)}
${text(10, bottom + 22, 'A grey line marks ranks left out.', 'font-size="12"')}
</svg>`;

const fonts = join(dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')), 'ttf');
const picture = new Resvg(svg, { font: { fontFiles: ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'].map((f) => join(fonts, f)), loadSystemFonts: false, defaultFontFamily: 'DejaVu Sans' } }).render();
writeFileSync(pictureFile, picture.asPng());
console.log(`${pictureFile}: ${String(shown.length)} of ${String(plan.rankedDwellings.length)} dwellings`);
