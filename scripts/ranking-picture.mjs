// The picture of the ranking in README.md, drawn by the same function as page and sheet: `rollout run data/demo --quiet --json > out/plan.json`, then
// `npm run ranking-picture -- out/plan.json docs/ranking.png`.
import { readFileSync, writeFileSync } from 'node:fs';
import { english, pngOf, rankingPicture, sayIn, svgOf } from '#papers';

const [planFile, pictureFile] = process.argv.slice(2);
if (planFile === undefined || pictureFile === undefined) {
  console.error('npm run ranking-picture -- PLAN.json PICTURE.png');
  process.exit(1);
}
const plan = JSON.parse(readFileSync(planFile, 'utf8'));
writeFileSync(pictureFile, pngOf(svgOf(rankingPicture(plan, sayIn(english))), 2));
