import type { Catalogue } from '#catalogue';
import type { HourlyYear } from '#calc';
import { createReadStream, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Readable } from 'node:stream';
import { createGunzip, gunzipSync } from 'node:zlib';
import { EpwReader } from './epw.js';
import type { WeatherFinding, WeatherReading } from './finding.js';
import { Tmy3Reader } from './tmy3.js';

/** A reader fed line by line, whatever the format. */
class AnyReader {
  #reader: EpwReader | Tmy3Reader | null = null;
  constructor(readonly name: string) {}

  take(line: string): void {
    const first = this.#reader === null ? line.replace(/^\uFEFF/, '') : line;
    // A TMY3 file begins with its station's number, an EPW file with the word LOCATION.
    this.#reader ??= /^\s*\d{5,6},/.test(first) ? new Tmy3Reader(this.name) : new EpwReader(this.name);
    this.#reader.take(first);
  }

  finish(): WeatherReading {
    return (this.#reader ?? new EpwReader(this.name)).finish();
  }
}

/**
 * Reads hourly weather from text in EPW or TMY3 form.
 *
 * @param text the whole file
 * @param name the file's name, for findings and source
 */
export function readWeatherText(text: string, name: string): WeatherReading {
  const reader = new AnyReader(name);
  for (const line of text.split(/\r\n|\n|\r/)) reader.take(line);
  return reader.finish();
}

/**
 * Reads hourly weather from a stream, line by line.
 *
 * @param stream bytes of the file, already unpacked
 * @param name the file's name, for findings and source
 */
export async function readWeatherStream(stream: Readable, name: string): Promise<WeatherReading> {
  const reader = new AnyReader(name);
  // Split by hand: the line reader of Node does not pass on a fault of its stream.
  let rest = '';
  for await (const piece of stream.setEncoding('latin1') as AsyncIterable<string>) {
    const lines = (rest + piece).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) reader.take(line.replace(/\r$/, ''));
  }
  if (rest !== '') reader.take(rest);
  return reader.finish();
}

/** Reads a weather file from disk as a stream; a name ending in .gz is unpacked on the way. */
export async function readWeatherFile(path: string): Promise<WeatherReading> {
  const bytes = createReadStream(path);
  if (!path.endsWith('.gz')) return readWeatherStream(bytes, basename(path));
  const plain = createGunzip();
  bytes.on('error', (fault) => plain.destroy(fault));
  return readWeatherStream(bytes.pipe(plain), basename(path, '.gz'));
}

/** What a figure's weather is asked by. */
export type AskedWeather = { readonly epw: string } | { readonly climate: string };

/**
 * The year of weather a figure is asked for, with what is to be known of a user's own file: a file, or a built-in climate by KEY.
 *
 * @throws RangeError when the file cannot be read or used, or there is no such KEY; the text says why
 */
export function weatherAndFindings(of: AskedWeather, catalogue: Catalogue): { readonly weather: HourlyYear; readonly findings: readonly WeatherFinding[] } {
  if ('climate' in of) return { weather: catalogue.climates.year(of.climate), findings: [] };
  let bytes: Buffer;
  try {
    bytes = readFileSync(of.epw);
  } catch (fault) {
    throw new RangeError(`epw must be a file that can be read, got ${of.epw} (${(fault as Error).message})`, { cause: fault });
  }
  const packed = bytes[0] === 0x1f && bytes[1] === 0x8b;
  const { weather, findings } = readWeatherText((packed ? gunzipSync(bytes) : bytes).toString('latin1'), basename(of.epw, '.gz'));
  if (weather !== null) return { weather, findings };
  throw new RangeError(`epw must be a year of hourly weather, got ${of.epw}: ${findings.filter((each) => each.severity === 'refused').map((each) => each.text).join(' ')}`);
}

/** The year alone, as `weatherAndFindings`. */
export const weatherOf = (of: AskedWeather, catalogue: Catalogue): HourlyYear => weatherAndFindings(of, catalogue).weather;
