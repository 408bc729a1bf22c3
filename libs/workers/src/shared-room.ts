import type { OptionRoom } from '#planning';

/** The same hours in memory that threads look into without a copy. */
function sharedHours(hours: Float64Array): Float64Array {
  if (hours.buffer instanceof SharedArrayBuffer) return hours;
  const shared = new Float64Array(new SharedArrayBuffer(hours.byteLength));
  shared.set(hours);
  return shared;
}

function sharedFields<T extends object>(record: T): T {
  const fields = Object.entries(record).map(([name, value]): [string, unknown] => [name, value instanceof Float64Array ? sharedHours(value) : value]);
  return Object.fromEntries(fields) as T;
}

/** The room with its sun, weather and facades put where all threads see them once, however many threads there are. */
export function sharedRoom(room: OptionRoom): OptionRoom {
  const sites = [...room.sites].map(([key, site]): [string, typeof site] => [
    key,
    { ...site, weather: sharedFields(site.weather), sun: sharedFields(site.sun), facades: new Map([...site.facades].map(([f, sky]) => [f, sharedFields(sky)])) },
  ]);
  return { ...room, sites: new Map(sites) };
}
