import type { Building } from '#calc';
import { bearingCell } from '../cells/compass-cell.js';
import { yearCell } from '../cells/date-cell.js';
import { lengthCell_mm } from '../cells/length-cell.js';
import { areaPriceCell, moneyCell } from '../cells/money-cell.js';
import { numberCell, shareCell } from '../cells/number-cell.js';
import { idCell, textCell, textsCell, wordCell, yesNoCell } from '../cells/word-cell.js';
import { needed, optional } from '../columns/column.js';
import { defineTable, noted } from '../columns/table.js';

/** Owner entity of a building that names none. */
export const UNNAMED_OWNER = 'OWNER';

export const buildingColumns = {
  building: needed('building', { also: ['building id', 'building code', 'bldg', 'property', 'site', 'block'], about: 'short code of the building, kept as typed', example: 'EC', read: idCell }),
  name: optional('building_name', { also: ['name', 'property name'], about: 'name people use', example: 'Example Court', read: textCell }),
  ownerEntity: optional('owner_entity', { also: ['owner', 'entity'], about: 'who holds the building; caps belong to it', example: 'OWNER1', read: idCell }),
  latitude_deg: optional('latitude_deg', { also: ['latitude', 'lat'], about: 'degrees, north positive', example: '25.82', read: numberCell({ min: -66, max: 66 }) }),
  longitude_deg: optional('longitude_deg', { also: ['longitude', 'long', 'lon', 'lng'], about: 'degrees, east positive', example: '-80.30', read: numberCell({ min: -180, max: 180 }) }),
  timeZone_h: optional('time_zone_h', { also: ['time zone', 'utc offset'], about: 'hours east of UTC, standard time', example: '-5', read: numberCell({ min: -12, max: 14 }) }),
  daylightTime: optional('daylight_time', { also: ['dst', 'daylight saving', 'daylight saving time', 'clocks change'], about: 'yes where clocks go on daylight time in summer, no where they never change; times on crew papers follow it. Blank goes by a tariff on daylight time, else standard time is printed', example: 'yes', read: yesNoCell }),
  climate: optional('climate', { about: 'KEY of a built-in climate; blank takes the nearest', example: 'miami-fl', read: textCell }),
  weatherFile: optional('weather_file', { also: ['epw', 'epw file'], about: 'a weather file of your own; wins over climate', example: '', read: textCell }),
  declination_deg: optional('compass_declination_deg', { also: ['declination', 'magnetic declination', 'declination deg'], about: 'fill in when the bearings of this building were read off a compass: degrees its needle stands east of true north (west negative); they are turned to true north', example: '-6.5', read: numberCell({ min: -40, max: 40 }) }),
  airtightness: optional('airtightness', { also: ['air leakage', 'infiltration', 'draughts', 'drafts'], about: 'how tight it is against wind; blank goes by the year it was built', example: 'average', read: wordCell({ tight: ['sealed'], average: ['medium', 'normal'], leaky: ['draughty', 'drafty', 'loose'] }) }),
  paneReplacement_cents: optional('pane_replacement', { also: ['pane replacement cost', 'cost of a new pane'], about: 'what replacing one broken pane costs, glass and work, in money; for the break-even failure rate', example: '280', read: moneyCell() }),
  builtYear: optional('built_year', { also: ['built', 'year built'], about: 'year', example: '1968', read: yearCell }),
  storeys: optional('storeys', { also: ['stories', 'floors', 'levels'], about: 'whole number', example: '2', read: numberCell({ min: 1, max: 200, whole: true }) }),
  minVisibleTransmittance: optional('min_visible_transmittance', { also: ['least visible transmittance', 'min vt'], quantity: 'share', about: 'least visible transmittance a film may leave, 0…1', example: '0.35', read: shareCell }),
  maxOutsideVisibleReflectance: optional('max_outside_visible_reflectance', { also: ['highest outside visible reflectance'], quantity: 'share', about: 'highest visible reflectance outside, 0…1', example: '0.15', read: shareCell }),
  allowedFilms: optional('allowed_films', { also: ['films allowed'], about: 'films that may be used, apart by ;', example: 'A;B', read: textsCell }),
  oneFilm: optional('one_film', { also: ['one film per building'], about: 'yes: the whole building gets one film', example: 'yes', read: yesNoCell }),
  wholeElevations: optional('whole_elevations', { also: ['whole elevation'], about: 'yes: an elevation is filmed as a whole or not at all', example: 'no', read: yesNoCell }),
  notice_h: optional('notice_h', { also: ['notice hours', 'entry notice'], about: 'hours of notice before entry', example: '24', read: numberCell({ min: 0, max: 2000 }) }),
  visit_cents: optional('visit_cost', { also: ['mobilisation cost', 'mobilization cost'], about: 'cost of bringing the crew here once, in money', example: '60', read: moneyCell() }),
  visitMinutes: optional('visit_minutes', { about: 'person-minutes lost per visit', example: '45', read: numberCell({ min: 0, max: 5000 }) }),
  crew: optional('crew', { also: ['who films', 'installer'], about: 'who puts the film on: your own crew by the minute, or a contractor by the area; blank is own', example: 'own', read: wordCell({ own: ['own crew', 'in house'], contractor: ['contract', 'subcontractor'] }) }),
  contractor_cents_m2: optional('contractor_price', { unit: 'per_ft2', quantity: 'areaPrice', about: 'what a contractor asks for putting film on, by its area, film not in it, in money', example: '2.50', read: areaPriceCell }),
  contractorVisit_cents: optional('contractor_visit_cost', { about: 'what a contractor asks for coming here once, in money', example: '150', read: moneyCell() }),
  widestRoll_mm: optional('widest_roll', { unit: 'in', quantity: 'length', about: 'widest roll that gets in', example: '60', read: lengthCell_mm({ min_mm: 200, max_mm: 3000 }) }),
  turnover_1_yr: optional('turnover_1_yr', { also: ['turnover', 'turnover rate'], quantity: 'share', about: 'share of dwellings that change hands in a year, 0…1', example: '0.3', read: shareCell }),
  endYear: optional('end_year', { also: ['sale year', 'refurbishment year'], about: 'expected year of sale or refurbishment', example: '2038', read: yearCell }),
} as const;

export const buildingTable = defineTable({
  name: 'buildings',
  about: 'One row per building.',
  columns: buildingColumns,
  records: (of, inventoryRow, say): readonly Building[] => {
    if (of.ownerEntity === null) {
      say('ownerEntity', noted('owner-entity-assumed', 'the owner entity whose cap pays', `taken as ${UNNAMED_OWNER}; name it if there is more than one`));
    }
    const id = of.building ?? '';
    return [{ ...of, id, name: of.name ?? id, ownerEntity: of.ownerEntity ?? UNNAMED_OWNER, horizons: [], inventoryRow }].map(({ building: _, ...rest }) => rest);
  },
});

/** One bearing of the skyline in front of one side of a building. */
export interface HorizonRow {
  readonly building: string;
  readonly facade_deg: number;
  readonly azimuth_deg: number;
  readonly altitude_deg: number;
  readonly passes: number | null;
  readonly passesBare: number | null;
}

export const horizonTable = defineTable({
  name: 'horizons',
  about: 'One row per bearing of the skyline in front of one side of a building: neighbours, trees, hills.',
  columns: {
    building: buildingColumns.building,
    facade: needed('facade', { also: ['elevation', 'orientation', 'side', 'facade elevation'], about: 'side of the building the skyline stands before', example: 'W', read: bearingCell }),
    azimuth_deg: needed('azimuth_deg', { also: ['bearing', 'azimuth', 'heading'], about: 'bearing of this point of the skyline, clockwise from true north', example: '250', read: bearingCell }),
    altitude_deg: needed('altitude_deg', { also: ['altitude', 'height angle'], about: 'height of the skyline seen from the middle of the side, degrees', example: '22', read: numberCell({ min: 0, max: 90 }) }),
    passes: optional('passes', { also: ['leaf share passes'], quantity: 'share', about: 'share of the beam that gets through: 0 a wall, 0.2 a tree in leaf', example: '0.25', read: shareCell }),
    passesBare: optional('passes_bare', { also: ['bare tree passes', 'passes in winter'], quantity: 'share', about: 'the same while the tree is bare, from mid-November to the end of March (half a year later south of the equator); blank: as in leaf', example: '0.65', read: shareCell }),
  },
  records: (of): readonly HorizonRow[] => [
    { building: of.building ?? '', facade_deg: of.facade ?? 0, azimuth_deg: of.azimuth_deg ?? 0, altitude_deg: of.altitude_deg ?? 0, passes: of.passes, passesBare: of.passesBare },
  ],
});
