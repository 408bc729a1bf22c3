// Own time by source file and function from the processor profiles of a folder (main thread and workers).
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Lines of text, dearest first: seconds, share, where. */
export function whereTimeGoes(folder, most = 45) {
  const own = new Map();
  let total = 0;
  for (const name of readdirSync(folder).filter((each) => each.endsWith('.cpuprofile'))) {
    const { nodes, samples, timeDeltas } = JSON.parse(readFileSync(join(folder, name), 'utf8'));
    const places = new Map(nodes.map(({ id, callFrame: { functionName, url } }) => [id, `${url.replace(/^.*\/(libs|node_modules|scripts)\//, '$1/') || 'node'} ${functionName || '(no name)'}`]));
    samples.forEach((id, i) => {
      const place = places.get(id);
      if (place === 'node (idle)' || place === 'node (program)' || place === 'node (root)') return;
      const seconds = timeDeltas[i] / 1e6;
      total += seconds;
      own.set(place, (own.get(place) ?? 0) + seconds);
    });
  }
  const lines = [...own].sort((a, b) => b[1] - a[1]).slice(0, most);
  return [`${total.toFixed(2)} s of processor time`, ...lines.map(([place, seconds]) => `${seconds.toFixed(2).padStart(8)} s ${((100 * seconds) / total).toFixed(1).padStart(5)} %  ${place}`)].join('\n');
}
