import type { Progress } from '#planning';

const WIDTH = 24;

/** Says on standard error how far a stage is; one line that moves on a terminal, one line in ten seconds elsewhere. */
export function progressOn(stream: NodeJS.WriteStream, quiet: boolean): Progress {
  let last = 0;
  return (stage, done, of) => {
    const now = Date.now();
    const end = done === of;
    if (quiet || (!end && now - last < (stream.isTTY ? 100 : 10_000))) return;
    last = now;
    const full = Math.round((done / Math.max(1, of)) * WIDTH);
    const line = `  ${stage.padEnd(10)} [${'#'.repeat(full)}${'.'.repeat(WIDTH - full)}] ${String(done)} of ${String(of)}`;
    stream.write(stream.isTTY ? `\r${line}${end ? '\n' : ''}` : `${line}\n`);
  };
}

/** A number with its noun: 1 pane, 1,200 panes. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count.toLocaleString('en-US')} ${count === 1 ? one : many}`;

/** A text as a sentence: a capital at its start, a full stop at its end. */
export const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1) + (/[.!?]$/.test(words) ? '' : '.');

const DAY = /^\d{4}-\d{2}-\d{2}$/;

/** A table of plain text: columns as wide as their widest cell, numbers to the right. */
export function tableText(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((title, i) => Math.max(title.length, ...rows.map((row) => (row[i] ?? '').length)));
  const isNumber = head.map((_, i) => rows.every((row) => /^[-−$0-9.,%–… ]*$/.test(row[i] ?? '') && !DAY.test(row[i] ?? '')));
  const line = (cells: readonly string[]): string => cells.map((cell, i) => (isNumber[i] === true ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!))).join('  ').trimEnd();
  return [line(head), widths.map((w) => '-'.repeat(w)).join('  '), ...rows.map(line)].join('\n');
}
