import { readPdf } from '../../../../test/papers/read-pdf.js';
import { text } from './cell.js';
import { paperFile } from './paper-bytes.js';
import type { Paper } from './paper.js';
import { dashed, factRows, heading, listed, runIn, signOff } from './parts.js';
import { writeTable } from './table.js';

const frame = { headLeft: '', headRight: '', footLeft: '', footRight: () => '' };
const WORDS = 'measure every pane before anything is cut three widths three heights the smallest counts';

/** What may stand under a heading, each beginning with the word FIRST. */
const UNDER: readonly (readonly [string, (paper: Paper) => void])[] = [
  ['a point of four lines', (p) => listed(p, [`FIRST ${WORDS} ${WORDS} ${WORDS}`, WORDS], { size: 12, mark: dashed })],
  ['a paragraph', (p) => p.write(`FIRST ${WORDS} ${WORDS}`, { size: 12 })],
  ['a table', (p) => writeTable(p, { columns: [{ head: 'FIRST', share: 1, cell: (r: string) => [text(r, 12)] }], rows: [WORDS, WORDS], headSize: 12, leastHeight: 60 })],
  ['a paragraph with its own heading', (p) => runIn(p, { head: 'FIRST', text: WORDS }, 12)],
  ['facts', (p) => factRows(p, [['FIRST', WORDS]], 12)],
  ['lines to write on', (p) => signOff(p, [['FIRST', 1]], 12)],
];

describe('a heading', () => {
  it.each(UNDER)('stands on the page of what it heads, wherever it falls: %s', async (_, under) => {
    const depths = Array.from({ length: 60 }, (_each, i) => 300 + i * 7);
    const { bytes, faults } = await paperFile({
      title: 't', language: 'en-US', created: new Date(0), frame, setup: { format: 'letter', margin: 36, frameSize: null },
      draw: (paper) => {
        for (const depth of depths) {
          paper.section();
          paper.y = paper.top + depth;
          heading(paper, `Heading ${String(depth)}`, 14);
          under(paper);
        }
      },
    });
    const pages = readPdf(bytes);
    const pageOf = (depth: number): number => pages.findIndex((p) => p.texts.some((t) => t.text === `Heading ${String(depth)}`));
    const alone = depths.filter((depth) => !(pages[pageOf(depth)]?.texts ?? []).some((t) => /FIRST/.test(t.text)));
    expect(faults).toEqual([]);
    expect(alone).toEqual([]);
    expect(pages.length).toBeGreaterThan(depths.length); // some did not fit and went on a page of their own
  });

  it('is printed where nothing follows it', async () => {
    const { bytes } = await paperFile({
      title: 't', language: 'en-US', created: new Date(0), frame, setup: { format: 'letter', margin: 36, frameSize: null },
      draw: (paper) => {
        paper.section();
        heading(paper, 'First', 14);
        paper.section();
        heading(paper, 'Last', 14);
      },
    });
    expect(readPdf(bytes).map((p) => p.texts.map((t) => t.text))).toEqual([['First'], ['Last']]);
  });
});
