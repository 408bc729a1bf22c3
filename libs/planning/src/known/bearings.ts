/** Angle between two bearings, 0…180. */
export const apart_deg = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

/** A bearing brought to 0…360. */
export const wrapped_deg = (azimuth_deg: number): number => ((azimuth_deg % 360) + 360) % 360;
