import { createReadStream } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { Readable } from 'node:stream';

/** A file somebody sent, opened as a stream as often as needed. */
export interface InventoryFile {
  readonly name: string;
  readonly open: () => Readable;
}

/** A file on the disk. */
export const fileAt = (path: string): InventoryFile => ({ name: basename(path), open: () => createReadStream(path) });

/** A file already in memory, for example an upload. */
export const fileOfBytes = (name: string, bytes: Uint8Array): InventoryFile => ({ name, open: () => Readable.from([Buffer.from(bytes)]) });

/** A text as a file; for tests and small pastes. */
export const fileOfText = (name: string, text: string): InventoryFile => fileOfBytes(name, new TextEncoder().encode(text));

/** Files of a folder (csv, txt, json and xml, by name), one file, or the files themselves. Other files of a folder, and what somebody expects of it, are left alone. */
export async function filesOf(source: string | readonly InventoryFile[]): Promise<readonly InventoryFile[]> {
  if (typeof source !== 'string') return source;
  if (!(await stat(source)).isDirectory()) return [fileAt(source)];
  const names = (await readdir(source)).filter((name) => /\.(csv|tsv|txt|json|xml)$/i.test(name) && !/^expect(ed-|ations)/.test(name));
  return names.sort().map((name) => fileAt(join(source, name)));
}

/** Files of bills: of a folder its bills.csv and its XML files, otherwise the files as named. */
export async function billFilesOf(paths: readonly string[]): Promise<readonly InventoryFile[]> {
  const files: InventoryFile[] = [];
  for (const path of paths) {
    const isFolder = (await stat(path)).isDirectory();
    const found = await filesOf(path);
    files.push(...(isFolder ? found.filter(({ name }) => /\.xml$/i.test(name) || /^bills.*\.(csv|tsv|txt)$/i.test(name)) : found));
  }
  return files;
}
