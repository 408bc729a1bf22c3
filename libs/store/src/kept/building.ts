import type { Airtightness, Building, Known } from '#calc';
import { Check, Entity, Index } from 'typeorm';
import { Flag, Json, Key, Real, Text, Whole, WholeCents, blank } from '../columns.js';
import { FromFile } from '../inventory-place.js';
import { keptWithPlace } from '../kept-kind.js';

/** A building: where it stands, who holds it, what its windows may carry. */
@Entity('buildings')
@Index('buildings_by_owner', ['ownerEntity'])
@Check('buildings_place', 'latitude_deg BETWEEN -90 AND 90 AND longitude_deg BETWEEN -180 AND 180')
@Check('buildings_turnover', 'turnover_1_yr BETWEEN 0 AND 1')
export class BuildingRow extends FromFile implements Omit<Building, 'inventoryRow'> {
  @Key() id: string;
  @Text() name: string;
  @Text() ownerEntity: string;
  @Real(blank) latitude_deg: Known<number>;
  @Real(blank) longitude_deg: Known<number>;
  @Real(blank) timeZone_h: Known<number>;
  @Flag(blank) daylightTime: Known<boolean>;
  @Text(blank) climate: Known<string>;
  @Text(blank) weatherFile: Known<string>;
  @Real(blank) declination_deg: Known<number>;
  @Text(blank) airtightness: Known<Airtightness>;
  @WholeCents(blank) paneReplacement_cents: Known<number>;
  @Whole(blank) builtYear: Known<number>;
  @Whole(blank) storeys: Known<number>;
  @Real(blank) minVisibleTransmittance: Known<number>;
  @Real(blank) maxOutsideVisibleReflectance: Known<number>;
  @Json(blank) allowedFilms: Building['allowedFilms'];
  @Flag(blank) oneFilm: Known<boolean>;
  @Flag(blank) wholeElevations: Known<boolean>;
  @Real(blank) notice_h: Known<number>;
  @WholeCents(blank) visit_cents: Known<number>;
  @Real(blank) visitMinutes: Known<number>;
  @Text(blank) crew: Building['crew'];
  @Real(blank) contractor_cents_m2: Known<number>;
  @WholeCents(blank) contractorVisit_cents: Known<number>;
  @Real(blank) widestRoll_mm: Known<number>;
  @Real(blank) turnover_1_yr: Known<number>;
  @Whole(blank) endYear: Known<number>;
  @Json() horizons: Building['horizons'];
}

export const keptBuildings = keptWithPlace<Building, BuildingRow>(BuildingRow);
