import { SaxesParser, type SaxesTagNS } from 'saxes';
import type { InventoryFile } from '../files/inventory-file.js';

/** One reading of an interval, as the file has it. Seconds are counted from 1970 in UTC. */
export interface EspiReading {
  readonly line: number;
  readonly start_s: number;
  readonly duration_s: number;
  readonly value: number;
  /** Codes of how the reading came about. */
  readonly qualities: readonly number[];
}

export interface EspiBlock {
  /** Link of the entry it stands in; says which meter reading it belongs to. */
  readonly href: string;
  readonly line: number;
  readonly start_s: number;
  readonly duration_s: number;
  readonly readings: readonly EspiReading[];
}

export interface EspiReadingType {
  readonly uom: number;
  readonly powerOfTenMultiplier: number;
  readonly flowDirection: number | null;
  readonly accumulationBehaviour: number | null;
}

export interface EspiLocalTime {
  readonly tzOffset_s: number;
  readonly dstOffset_s: number;
  readonly dstStartRule: string | null;
  readonly dstEndRule: string | null;
}

/** What a file of readings holds, link by link. */
export interface EspiFeed {
  readonly usagePoints: readonly { readonly href: string; readonly title: string; readonly id: string; readonly line: number }[];
  /** Link of each meter reading with what it is related to. */
  readonly meterReadings: ReadonlyMap<string, readonly string[]>;
  readonly readingTypes: ReadonlyMap<string, EspiReadingType>;
  readonly localTimes: readonly EspiLocalTime[];
  readonly blocks: readonly EspiBlock[];
}

/** An XML file that cannot be followed, with the line. */
export class BrokenXml extends Error {
  constructor(
    readonly line: number,
    message: string,
  ) {
    super(message);
  }
}

const ESPI = 'http://naesb.org/espi';
/** No field of such a file is longer; a longer one is not such a file. */
const LONGEST_TEXT = 100_000;

interface Draft {
  href: string;
  up: string;
  title: string;
  id: string;
  line: number;
  related: string[];
}

/** Puts a feed together from the events of the parser: fields by name, closed resource by resource. */
class FeedBuilder {
  readonly usagePoints: EspiFeed['usagePoints'][number][] = [];
  readonly meterReadings = new Map<string, readonly string[]>();
  readonly readingTypes = new Map<string, EspiReadingType>();
  readonly localTimes: EspiLocalTime[] = [];
  readonly blocks: EspiBlock[] = [];
  private readonly path: string[] = [];
  private entry: Draft = { href: '', up: '', title: '', id: '', line: 0, related: [] };
  private fields = new Map<string, string>();
  private span: { start_s: number; duration_s: number } = { start_s: NaN, duration_s: NaN };
  private readings: EspiReading[] = [];
  private qualities: number[] = [];
  private openLine = 0;
  private text = '';
  private pointEntry: Draft | null = null;
  private readingEntry: Draft | null = null;
  private readonly typeEntries: { readonly entry: Draft; readonly type: EspiReadingType }[] = [];

  constructor(private readonly line: () => number) {}

  open(tag: SaxesTagNS): void {
    this.path.push(tag.local);
    this.text = '';
    if (tag.local === 'entry') this.entry = { href: '', up: '', title: '', id: '', line: this.line(), related: [] };
    else if (tag.local === 'link') this.link(tag);
    else if (tag.uri === ESPI) this.openResource(tag.local);
  }

  private openResource(name: string): void {
    if (name === 'IntervalBlock' || name === 'IntervalReading' || name === 'ReadingType' || name === 'LocalTimeParameters') this.fields = new Map();
    if (name === 'IntervalBlock') [this.readings, this.span, this.openLine] = [[], { start_s: NaN, duration_s: NaN }, this.line()];
    if (name === 'IntervalReading') this.qualities = [];
  }

  private link({ attributes }: SaxesTagNS): void {
    const [rel, href] = [attributes['rel']?.value ?? '', attributes['href']?.value ?? ''];
    if (rel === 'self') this.entry.href = href;
    else if (rel === 'up') this.entry.up = href;
    else if (rel === 'related') this.entry.related.push(href);
  }

  add(text: string): void {
    this.text += text;
    if (this.text.length > LONGEST_TEXT) throw new BrokenXml(this.line(), 'a field longer than any reading');
  }

  close(tag: SaxesTagNS): void {
    this.path.pop();
    const text = this.text.trim();
    this.text = '';
    if (tag.uri === ESPI) this.closeEspi(tag.local, text);
    else if (this.path.at(-1) === 'entry' && tag.local === 'title') this.entry.title = text;
    else if (this.path.at(-1) === 'entry' && tag.local === 'id') this.entry.id = text;
  }

  private closeEspi(name: string, text: string): void {
    const parent = this.path.at(-1);
    if (name === 'UsagePoint') this.pointEntry = this.entry;
    else if (name === 'MeterReading') this.readingEntry = this.entry;
    else if (name === 'ReadingType') this.typeEntries.push({ entry: this.entry, type: this.readingType() });
    else if (name === 'LocalTimeParameters') this.localTimes.push(this.localTime());
    else if (name === 'IntervalBlock') this.closeBlock();
    else if (name === 'IntervalReading') this.closeReading();
    else if (name === 'quality' && parent === 'ReadingQuality') this.qualities.push(Number(text));
    else if (parent === 'interval') this.span = { ...this.span, [name === 'start' ? 'start_s' : 'duration_s']: Number(text) };
    else this.fields.set(name, text);
  }

  /** Links may stand after the content, so an entry is known when it ends. */
  endEntry(): void {
    const { href, title, id, line, related } = this.entry;
    if (this.pointEntry === this.entry) this.usagePoints.push({ href, title, id, line });
    if (this.readingEntry === this.entry) this.meterReadings.set(href, related);
    for (const { entry, type } of this.typeEntries) if (entry === this.entry) this.readingTypes.set(href, type);
    const place = href === '' ? this.entry.up : href;
    for (let i = this.blocks.length - 1; i >= 0 && this.blocks[i]!.href === ''; i--) this.blocks[i] = { ...this.blocks[i]!, href: place };
  }

  private number(name: string): number | null {
    const text = this.fields.get(name) ?? '';
    return text === '' || !Number.isFinite(Number(text)) ? null : Number(text);
  }

  private readingType(): EspiReadingType {
    return { uom: this.number('uom') ?? -1, powerOfTenMultiplier: this.number('powerOfTenMultiplier') ?? 0, flowDirection: this.number('flowDirection'), accumulationBehaviour: this.number('accumulationBehaviour') };
  }

  private localTime(): EspiLocalTime {
    return { tzOffset_s: this.number('tzOffset') ?? 0, dstOffset_s: this.number('dstOffset') ?? 0, dstStartRule: this.fields.get('dstStartRule') ?? null, dstEndRule: this.fields.get('dstEndRule') ?? null };
  }

  private closeReading(): void {
    const [start_s, duration_s, value] = [this.number('start'), this.number('duration'), this.number('value')];
    if (start_s === null || duration_s === null || value === null || duration_s <= 0) throw new BrokenXml(this.line(), 'a reading without start, duration or value');
    this.readings.push({ line: this.line(), start_s, duration_s, value, qualities: this.qualities });
    this.fields = new Map();
  }

  private closeBlock(): void {
    const { readings } = this;
    const first = readings[0];
    if (first === undefined) return;
    const start_s = Number.isFinite(this.span.start_s) ? this.span.start_s : first.start_s;
    const end_s = readings.reduce((latest, reading) => Math.max(latest, reading.start_s + reading.duration_s), 0);
    this.blocks.push({ href: '', line: this.openLine, start_s, duration_s: Number.isFinite(this.span.duration_s) ? this.span.duration_s : end_s - start_s, readings });
  }
}

/**
 * Reads a file of readings in the open energy-usage form as a stream, piece by piece.
 *
 * @throws BrokenXml with the line where the file cannot be followed; a document type is refused, for it can make a small file endless
 */
export async function readEspiFeed(file: InventoryFile): Promise<EspiFeed> {
  const parser = new SaxesParser({ xmlns: true });
  const feed = new FeedBuilder(() => parser.line);
  parser.on('doctype', () => {
    throw new BrokenXml(parser.line, 'a document type, which such a file never has');
  });
  parser.on('error', (fault) => {
    throw new BrokenXml(parser.line, fault.message.replace(/^\d+:\d+: /, ''));
  });
  parser.on('opentag', (tag) => feed.open(tag));
  parser.on('text', (text) => feed.add(text));
  parser.on('cdata', (text) => feed.add(text));
  parser.on('closetag', (tag) => {
    feed.close(tag);
    if (tag.local === 'entry') feed.endEntry();
  });
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const decoded = (piece?: Buffer): string => {
    try {
      return piece === undefined ? decoder.decode() : decoder.decode(piece, { stream: true });
    } catch (fault) {
      throw fault instanceof TypeError ? new BrokenXml(parser.line, 'bytes that are not UTF-8') : fault;
    }
  };
  for await (const piece of file.open() as AsyncIterable<Buffer>) parser.write(decoded(piece));
  parser.write(decoded()).close();
  return feed;
}
