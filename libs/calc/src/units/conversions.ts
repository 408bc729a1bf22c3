// Factors are exact definitions: the inch of 25.4 mm and the International Table Btu of 1055.05585262 J
// (NIST SP 811 (2008), appendix B.8; from memory). A ton of cooling is 12,000 Btu/h by definition.
const MM_PER_IN = 25.4;
const M2_PER_FT2 = 0.09290304;
const W_PER_BTU_H = 1055.05585262 / 3600;
const BTU_H_PER_TON = 12_000;

/** Inches to mm: inch × 25.4. @param length_in inches @returns mm @source NIST SP 811 (2008), appendix B.8 (from memory) */
export function mmOf_in(length_in: number): number {
  return length_in * MM_PER_IN;
}

/** Mm to inches: mm / 25.4. @param length_mm mm @returns inches @source NIST SP 811 (2008), appendix B.8 (from memory) */
export function inOf_mm(length_mm: number): number {
  return length_mm / MM_PER_IN;
}

/** Square feet to m²: ft² × 0.09290304. @param area_ft2 square feet @returns m² @source NIST SP 811 (2008), appendix B.8 (from memory) */
export function m2Of_ft2(area_ft2: number): number {
  return area_ft2 * M2_PER_FT2;
}

/** M² to square feet: m² / 0.09290304. @param area_m2 m² @returns square feet @source NIST SP 811 (2008), appendix B.8 (from memory) */
export function ft2Of_m2(area_m2: number): number {
  return area_m2 / M2_PER_FT2;
}

/** Btu/h to W: Btu/h × 1055.05585262 / 3600. @param heat_Btu_h International Table Btu per hour @returns W @source NIST SP 811 (2008), appendix B.8 (from memory) */
export function WOf_Btu_h(heat_Btu_h: number): number {
  return heat_Btu_h * W_PER_BTU_H;
}

/** W to Btu/h: W × 3600 / 1055.05585262. @param heat_W watts @returns International Table Btu per hour @source NIST SP 811 (2008), appendix B.8 (from memory) */
export function Btu_hOf_W(heat_W: number): number {
  return heat_W / W_PER_BTU_H;
}

/** Tons of cooling to W: ton × 12,000 Btu/h. @param cooling_ton tons @returns W @source common practice: one ton is 12,000 Btu/h */
export function WOf_ton(cooling_ton: number): number {
  return cooling_ton * BTU_H_PER_TON * W_PER_BTU_H;
}

/** W to tons of cooling: W / (12,000 Btu/h). @param cooling_W watts @returns tons @source common practice: one ton is 12,000 Btu/h */
export function tonOf_W(cooling_W: number): number {
  return cooling_W / (BTU_H_PER_TON * W_PER_BTU_H);
}

/** Btu/h·ft² to W/m²: × 3.154591. @param flux_Btu_h_ft2 heat flow per area @returns W/m² @source NIST SP 811 (2008), appendix B.8 (from memory) */
export function W_m2Of_Btu_h_ft2(flux_Btu_h_ft2: number): number {
  return (flux_Btu_h_ft2 * W_PER_BTU_H) / M2_PER_FT2;
}

/** W/m² to Btu/h·ft²: / 3.154591. @param flux_W_m2 heat flow per area @returns Btu/h·ft² @source NIST SP 811 (2008), appendix B.8 (from memory) */
export function Btu_h_ft2Of_W_m2(flux_W_m2: number): number {
  return (flux_W_m2 * M2_PER_FT2) / W_PER_BTU_H;
}

/** Degrees Fahrenheit to Celsius: (°F − 32) / 1.8. @param temperature_degF °F @returns °C @source NIST SP 811 (2008), appendix B.8 (from memory) */
export function degCOf_degF(temperature_degF: number): number {
  return (temperature_degF - 32) / 1.8;
}

/** Degrees Celsius to Fahrenheit: °C × 1.8 + 32. @param temperature_degC °C @returns °F @source NIST SP 811 (2008), appendix B.8 (from memory) */
export function degFOf_degC(temperature_degC: number): number {
  return temperature_degC * 1.8 + 32;
}
