import { pipeline, type Transform } from 'node:stream';
import { CsvError, parse } from 'csv-parse';
import iconv from 'iconv-lite';
import type { FileLook } from './file-look.js';
import type { InventoryFile } from './inventory-file.js';

/** One record of a text table; `line` is the line of the file it starts on, counted from 1. */
export interface CsvRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A table that stops making sense at a line, for example after a quote that is never closed. */
export class BrokenTable extends Error {
  constructor(
    readonly line: number | null,
    message: string,
  ) {
    super(message);
  }
}

interface ParsedRecord {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

const lineBreaksIn = (cells: readonly string[]): number => cells.reduce((sum, cell) => sum + (cell.match(/\r\n|\n|\r/g)?.length ?? 0), 0);

/**
 * The records of a file as a stream: one at a time in memory, quoted line breaks kept, blank lines left out, mixed line ends read.
 *
 * @throws BrokenTable when a quote is never closed or a record is longer than 1 MB
 */
export async function* csvRows(file: InventoryFile, look: Pick<FileLook, 'encoding' | 'delimiter'>): AsyncGenerator<CsvRow> {
  const parser = parse({
    delimiter: look.delimiter,
    record_delimiter: ['\r\n', '\n', '\r'],
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: true,
    info: true,
    max_record_size: 1_000_000,
  });
  const decoder = iconv.decodeStream(look.encoding, { stripBOM: true }) as unknown as Transform;
  // The parser carries the error of any part to the loop below; the callback has nothing left to do.
  pipeline(file.open(), decoder, parser, () => undefined);
  try {
    for await (const { record, info } of parser as AsyncIterable<ParsedRecord>) {
      if (record.some((cell) => cell.trim() !== '')) yield { line: info.lines - lineBreaksIn(record), cells: record };
    }
  } catch (fault) {
    if (!(fault instanceof CsvError)) throw fault;
    const line: unknown = fault['lines'];
    throw new BrokenTable(typeof line === 'number' ? line : null, fault.code);
  }
}
