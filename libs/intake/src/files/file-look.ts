import iconv from 'iconv-lite';
import { dateOrderIn } from '../cells/date-cell.js';
import type { DateOrder, DecimalMark, Remark } from '../cells/reading.js';
import type { InventoryFile } from './inventory-file.js';

/** How a text file is to be read, found from its bytes; each can be set by hand instead. */
export interface FileLook {
  readonly encoding: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  readonly delimiter: ',' | ';' | '\t' | '|';
  readonly decimal: DecimalMark;
  readonly dateOrder: DateOrder | null;
}

const HEAD_BYTES = 65_536;
const DELIMITERS = [',', ';', '\t', '|'] as const;

const broken = (code: string, expected: string, whatToDo: string): Remark => ({ severity: 'error', code, expected, whatToDo });
const TEXT_TABLE = 'a text table with commas, semicolons or tabs';

/** What the whole file's bytes say: is it UTF-8, where do zero bytes stand. Detectors that guess by language were wrong on our samples. */
interface ByteLook {
  readonly head: Buffer;
  readonly size: number;
  readonly zerosEven: number;
  readonly zerosOdd: number;
  readonly utf8: boolean;
}

async function lookAtBytes(file: InventoryFile): Promise<ByteLook> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const heads: Buffer[] = [];
  let [size, zerosEven, zerosOdd, headSize, utf8] = [0, 0, 0, 0, true];
  for await (const piece of file.open() as AsyncIterable<Buffer>) {
    for (let at = piece.indexOf(0); at >= 0; at = piece.indexOf(0, at + 1)) {
      if ((size + at) % 2 === 0) zerosEven++;
      else zerosOdd++;
    }
    utf8 &&= isUtf8(decoder, piece);
    if (headSize < HEAD_BYTES) heads.push(piece.subarray(0, HEAD_BYTES - headSize));
    headSize += piece.length;
    size += piece.length;
  }
  utf8 &&= isUtf8(decoder, null);
  return { head: Buffer.concat(heads), size, zerosEven, zerosOdd, utf8 };
}

function isUtf8(decoder: TextDecoder, piece: Buffer | null): boolean {
  try {
    if (piece === null) decoder.decode();
    else decoder.decode(piece, { stream: true });
    return true;
  } catch {
    return false; // that is the answer: a fatal decoder throws on the first byte that is not UTF-8
  }
}

function encodingOf({ head, size, zerosEven, zerosOdd, utf8 }: ByteLook): FileLook['encoding'] | Remark {
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  if (head[0] === 0xfe && head[1] === 0xff) return 'utf-16be';
  if (size > 0 && zerosOdd > size / 8 && zerosOdd > 4 * zerosEven) return 'utf-16le';
  if (size > 0 && zerosEven > size / 8 && zerosEven > 4 * zerosOdd) return 'utf-16be';
  if (zerosEven + zerosOdd > 0) return broken('not-text', TEXT_TABLE, 'the file holds bytes that no text has; save it again as CSV');
  return utf8 ? 'utf-8' : 'windows-1252';
}

/** Counts each delimiter outside quotes on the lines of the head; the one that most lines agree on wins. */
function delimiterOf(head: string): FileLook['delimiter'] {
  const lines = head.split(/\r\n|\n|\r/).slice(0, 60).map((line) => line.replace(/"[^"]*"/g, ''));
  let best: { delimiter: FileLook['delimiter']; score: number } = { delimiter: ',', score: 0 };
  for (const delimiter of DELIMITERS) {
    const tally = new Map<number, number>();
    for (const line of lines) {
      const count = line.split(delimiter).length - 1;
      if (count > 0) tally.set(count, (tally.get(count) ?? 0) + 1);
    }
    for (const [count, times] of tally) {
      // Lines that agree weigh most; more columns break a tie, which keeps decimal commas from winning over semicolons.
      const score = times * 100 + Math.min(count, 99);
      if (score > best.score) best = { delimiter, score };
    }
  }
  return best.delimiter;
}

function decimalOf(head: string, delimiter: string): DecimalMark {
  const bare = delimiter === ',' ? [...head.matchAll(/"([^"]*)"/g)].map(([, cell = '']) => cell) : head.split(/\r\n|\n|\r/).flatMap((line) => line.split(delimiter));
  const cells = bare.map((cell) => cell.replace(/^"|"$/g, '').trim());
  const commas = cells.filter((cell) => /^-?(\d{1,3}(\.\d{3})+|\d+),\d+( ?%| ?[a-z]+2?)?$/i.test(cell) && !/^-?\d{1,3},\d{3}$/.test(cell)).length;
  const points = cells.filter((cell) => /^-?(\d{1,3}(,\d{3})+|\d+)\.\d+( ?%| ?[a-z]+2?)?$/i.test(cell) && !/^-?\d{1,3}\.\d{3}$/.test(cell)).length;
  return commas > points ? ',' : '.';
}

function dateOrderOf(head: string): DateOrder | null {
  const orders = new Set([...head.matchAll(/\b\d{1,2}[/.]\d{1,2}[/.]\d{4}\b/g)].map(([date]) => dateOrderIn(date)));
  if (orders.has('day-month') === orders.has('month-day')) return null;
  return orders.has('day-month') ? 'day-month' : 'month-day';
}

/** Looks at a file before it is read. A remark in place of a look says why it cannot be read at all. */
export async function lookAtFile(file: InventoryFile): Promise<FileLook | Remark> {
  const bytes = await lookAtBytes(file);
  if (bytes.size === 0) return broken('file-empty', TEXT_TABLE, 'the file holds nothing; send it again');
  if (bytes.head.subarray(0, 2).toString('latin1') === 'PK') return broken('not-text', TEXT_TABLE, 'this is a workbook or a zip with another name; save the sheet as CSV');
  if (bytes.head.subarray(0, 4).toString('latin1') === '%PDF') return broken('not-text', TEXT_TABLE, 'this is a PDF with another name; save the sheet as CSV');
  const encoding = encodingOf(bytes);
  if (typeof encoding !== 'string') return encoding;
  const head = iconv.decode(bytes.head, encoding);
  const delimiter = delimiterOf(head);
  return { encoding, delimiter, decimal: decimalOf(head, delimiter), dateOrder: dateOrderOf(head) };
}
