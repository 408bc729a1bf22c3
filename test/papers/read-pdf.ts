import { inflateSync } from 'node:zlib';

/** A run of letters as it stands on a page: y counts down from the top edge to where the letters stand. */
export interface PdfText {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
  readonly x: number;
  readonly y: number;
}

export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly PdfText[];
}

type Objects = ReadonlyMap<string, string>;

const objectsOf = (file: string): Objects => new Map([...file.matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/g)].map((m): [string, string] => [m[1]!, m[2]!]));

const streamOf = (object: string): string => inflateSync(Buffer.from(object.slice(object.indexOf('stream\n') + 7, object.lastIndexOf('\nendstream')), 'latin1')).toString('latin1');

const referred = (objects: Objects, text: string, name: string): string => objects.get(new RegExp(`/${name} (\\d+) 0 R`).exec(text)?.[1] ?? '') ?? '';

/** Letters of each glyph of a font, from the table that lets text be copied. */
function lettersOf(objects: Objects, font: string): string[] {
  const table = /\[(.*)\]\s*endbfrange/s.exec(streamOf(referred(objects, font, 'ToUnicode')))?.[1] ?? '';
  return [...table.matchAll(/<([0-9a-f ]*)>/g)].map((m) => m[1]!.split(' ').map((code) => String.fromCharCode(parseInt(code, 16))).join(''));
}

interface PdfFont {
  readonly letters: readonly string[];
  readonly bold: boolean;
}

function fontsOf(objects: Objects, page: string): Map<string, PdfFont> {
  const resources = referred(objects, page, 'Resources');
  return new Map(
    [...resources.matchAll(/\/(F\d+) (\d+) 0 R/g)].map((m): [string, PdfFont] => {
      const font = objects.get(m[2]!) ?? '';
      return [m[1]!, { letters: lettersOf(objects, font), bold: font.includes('-Bold') }];
    }),
  );
}

type Matrix = readonly [number, number, number, number, number, number];

/** First `a`, then `b`. */
const after = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3], a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3],
  a[4] * b[0] + a[5] * b[2] + b[4], a[4] * b[1] + a[5] * b[3] + b[5],
];

const matrixOf = (line: string): Matrix => line.split(' ').slice(0, 6).map(Number) as unknown as Matrix;

function textsOf(objects: Objects, page: string, height: number): PdfText[] {
  const fonts = fontsOf(objects, page);
  const texts: PdfText[] = [];
  const kept: Matrix[] = [];
  let at: Matrix = [1, 0, 0, 1, 0, 0];
  let place: Matrix = at;
  let font: PdfFont | undefined;
  let size = 0;
  for (const line of streamOf(referred(objects, page, 'Contents')).split('\n')) {
    const ends = line.slice(line.lastIndexOf(' ') + 1);
    if (ends === 'q') kept.push(at);
    else if (ends === 'Q') at = kept.pop() ?? at;
    else if (ends === 'cm') at = after(matrixOf(line), at);
    else if (ends === 'Tm') place = after(matrixOf(line), at);
    else if (ends === 'Tf') [font, size] = [fonts.get(line.split(' ')[0]!.slice(1)), Number(line.split(' ')[1])];
    else if (ends === 'TJ') {
      const glyphs = [...line.matchAll(/<([0-9a-f]*)>/g)].flatMap((run) => run[1]!.match(/.{4}/g) ?? []);
      texts.push({ text: glyphs.map((g) => font?.letters[parseInt(g, 16)] ?? '?').join(''), size, bold: font?.bold ?? false, x: place[4], y: height - place[5] });
    }
  }
  return texts;
}

/** Reads back a PDF as the papers write it, by a way of its own: its text with place and size, page by page. */
export function readPdf(bytes: Uint8Array): PdfPage[] {
  const objects = objectsOf(Buffer.from(bytes).toString('latin1'));
  const pages = [...objects.values()].find((o) => o.includes('/Type /Pages')) ?? '';
  const kids = /\/Kids \[([^\]]*)\]/.exec(pages)?.[1] ?? '';
  return [...kids.matchAll(/(\d+) 0 R/g)].map((m) => {
    const page = objects.get(m[1]!)!;
    const [width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(page)!.slice(1).map(Number) as [number, number];
    return { width, height, texts: textsOf(objects, page, height) };
  });
}

export const textOf = (page: PdfPage): string => page.texts.map((t) => t.text).join('\n');
