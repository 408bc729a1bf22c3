/** Radians in a degree; for loops that keep radians inside. */
export const RAD_PER_DEG = Math.PI / 180;

/** Cosine of an angle in degrees. @param angle_deg degrees @returns −1…1 @source definition */
export function cosDeg(angle_deg: number): number {
  return Math.cos(angle_deg * RAD_PER_DEG);
}

/** Sine of an angle in degrees. @param angle_deg degrees @returns −1…1 @source definition */
export function sinDeg(angle_deg: number): number {
  return Math.sin(angle_deg * RAD_PER_DEG);
}

/** Tangent of an angle in degrees. @param angle_deg degrees, not an odd multiple of 90 @returns the tangent @source definition */
export function tanDeg(angle_deg: number): number {
  return Math.tan(angle_deg * RAD_PER_DEG);
}
