import type { InventoryRow, Known } from './row.js';

/** Who holds buildings and has a budget; caps belong to it, by fiscal year. */
export interface OwnerEntity {
  readonly id: string;
  readonly name: string;
  readonly inventoryRow: Known<InventoryRow>;
}

/** One bearing of a skyline as seen from the middle of a facade; azimuth clockwise from true north. */
export interface HorizonPoint {
  readonly azimuth_deg: number;
  readonly altitude_deg: number;
  /** Share of the beam that passes while the sun is below this altitude: 0 a wall, 0.2 a tree in leaf. Blank means 0. */
  readonly passes?: number;
  /** The same outside the leaf season: 0.65 a bare tree. Blank means as `passes` all year. */
  readonly passesBare?: number;
}

/** The skyline in front of one side of a building. */
export interface FacadeHorizon {
  readonly azimuth_deg: number;
  readonly points: readonly HorizonPoint[];
}

export type Airtightness = 'tight' | 'average' | 'leaky';

/** A building: where it stands, who holds it, what its windows may carry and what a visit costs. */
export interface Building {
  readonly id: string;
  readonly name: string;
  readonly ownerEntity: string;
  readonly latitude_deg: Known<number>;
  readonly longitude_deg: Known<number>;
  /** Hours east of UTC, standard time. */
  readonly timeZone_h: Known<number>;
  /** Whether clocks go on daylight time here in summer; blank goes by a tariff that says so, else it is not known. */
  readonly daylightTime?: Known<boolean>;
  /** KEY of a built-in climate; blank takes the nearest and says how far it is. */
  readonly climate: Known<string>;
  /** A weather file of the user's own; it wins over `climate`. */
  readonly weatherFile: Known<string>;
  /** Degrees a compass needle stands east of true north here: filled when bearings of this building were read off a compass. */
  readonly declination_deg?: Known<number>;
  /** How tight the building is against wind; blank goes by the year it was built. */
  readonly airtightness?: Known<Airtightness>;
  /** What a broken pane costs to replace, glass and work. */
  readonly paneReplacement_cents?: Known<number>;
  readonly builtYear: Known<number>;
  readonly storeys: Known<number>;
  readonly minVisibleTransmittance: Known<number>;
  readonly maxOutsideVisibleReflectance: Known<number>;
  /** Films that may be used here; blank allows all. */
  readonly allowedFilms: Known<readonly string[]>;
  readonly oneFilm: Known<boolean>;
  readonly wholeElevations: Known<boolean>;
  readonly notice_h: Known<number>;
  readonly visit_cents: Known<number>;
  readonly visitMinutes: Known<number>;
  /** Who puts the film on: the owner's own crew by the minute, or a contractor by the square metre. Blank is the own crew. */
  readonly crew: Known<'own' | 'contractor'>;
  /** A contractor's price per square metre of film put on, film not in it. */
  readonly contractor_cents_m2: Known<number>;
  /** What a contractor asks for coming here once. */
  readonly contractorVisit_cents: Known<number>;
  readonly widestRoll_mm: Known<number>;
  /** Share of dwellings that change hands in a year, 0…1. */
  readonly turnover_1_yr: Known<number>;
  /** Expected year of sale or refurbishment; savings end there. */
  readonly endYear: Known<number>;
  readonly horizons: readonly FacadeHorizon[];
  readonly inventoryRow: InventoryRow;
}
