import { inflateRawSync } from 'node:zlib';

const END = 0x06054b50;
const ENTRY = 0x02014b50;

/** Text of a file in a zip, found by its list of contents; for what the workbook reader does not show. */
export function zipEntry(zip: Uint8Array, name: string): string {
  const bytes = Buffer.from(zip);
  let end = bytes.length - 22;
  while (bytes.readUInt32LE(end) !== END) end -= 1;
  let at = bytes.readUInt32LE(end + 16);
  while (bytes.readUInt32LE(at) === ENTRY) {
    const [size, nameLength, extra, comment, start] = [bytes.readUInt32LE(at + 20), bytes.readUInt16LE(at + 28), bytes.readUInt16LE(at + 30), bytes.readUInt16LE(at + 32), bytes.readUInt32LE(at + 42)];
    if (bytes.toString('utf8', at + 46, at + 46 + nameLength) === name) {
      const data = start + 30 + bytes.readUInt16LE(start + 26) + bytes.readUInt16LE(start + 28);
      const packed = bytes.subarray(data, data + size);
      return (bytes.readUInt16LE(at + 10) === 0 ? packed : inflateRawSync(packed)).toString('utf8');
    }
    at += 46 + nameLength + extra + comment;
  }
  throw new RangeError(`name must be in the zip, got ${name}`);
}
