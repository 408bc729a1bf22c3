import { plainText } from './cell-text.js';
import { fault, known, type CellReader } from './reading.js';

const EXPECTED = 'hours of the day such as 8-17, or 22-6 over midnight; the second is the hour it ends';

/** Hours 0…23 of a day: "8-17" is the nine hours from 8 to 17 o'clock; parts stand apart by ;. */
export const hoursCell: CellReader<readonly number[]> = (text) => {
  const found = new Set<number>();
  for (const part of plainText(text).split(/[;,|]/)) {
    const ends = /^ ?(\d{1,2})(?::00)? ?(?:-|–|to) ?(\d{1,2})(?::00)? ?$/.exec(part);
    const [from, to] = [Number(ends?.[1]), Number(ends?.[2])];
    if (ends === null || from > 23 || to > 24 || from === to) return fault('not-hours', EXPECTED, 'correct the hours, or leave the cell blank');
    for (let hour = from; hour !== to % 24 || found.size === 0; hour = (hour + 1) % 24) found.add(hour);
  }
  return known([...found].sort((a, b) => a - b));
};
