import { basename } from 'node:path';

const MEGABYTE = 1024 * 1024;

/** What one request may bring. A survey of ten thousand dwellings stays under a tenth of it. */
export const UPLOAD_LIMITS = { fileSize: 200 * MEGABYTE, files: 40, fields: 20, parts: 60 };

/**
 * The file's own name. The multipart parser reads names as Latin-1 while browsers send UTF-8, and some send a whole path.
 */
export function nameAsSent(parsed: string): string {
  const utf8 = Buffer.from(parsed, 'latin1').toString('utf8');
  const name = utf8.includes('\uFFFD') ? parsed : utf8;
  return basename(name.replaceAll('\\', '/'));
}

/** A file as the multipart parser hands it over. */
export interface UploadedFile {
  readonly originalname: string;
  readonly buffer: Buffer;
}
