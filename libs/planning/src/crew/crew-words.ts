import type { DefectCode } from './work-order-types.js';

/** Every sentence of the crew's papers, in one place: a second language is a second object of this shape. */
export interface CrewWords {
  readonly everyTime: readonly string[];
  readonly cautions: {
    readonly leadPaint: string;
    readonly ladder: string;
    readonly escape: string;
    readonly temperedMark: string;
    readonly oldFilm: string;
    readonly fogged: string;
    readonly cold: string;
  };
  readonly steps: {
    readonly measure: string;
    readonly cut: (film: string) => string;
    readonly oldFilm: string;
    readonly clean: string;
    readonly hang: string;
    readonly trim: (gap: string) => string;
    readonly look: string;
    readonly leave: string;
    readonly record: string;
    readonly day30: string;
  };
  readonly notice: (of: { readonly dwelling: string; readonly panes: number; readonly person_h: string; readonly notice_h: number; readonly day: string }) => string;
  readonly noDay: string;
  readonly access: {
    readonly occupied: (notice_h: number) => string;
    /** An empty time to come, while no day is set. */
    readonly empty: (out: string, until: string | null) => string;
    /** On the day of the visit. */
    readonly emptyThatDay: (out: string, until: string | null) => string;
    /** On a day on which somebody lives there, though an empty time is known. */
    readonly occupiedThatDay: (notice_h: number, empty: { readonly out: string; readonly until: string | null }) => string;
  };
  readonly notes: {
    readonly filmOnSide: (film: string) => string;
    readonly fromPlanType: (type: string) => string;
    readonly notLaid: string;
    readonly redo: (of: { readonly why: 'defect' | 'broken pane' | 'not reached'; readonly day: string | null; readonly note: string | null }) => string;
  };
  readonly redo: { readonly again: string; readonly waits: string; readonly needsGlass: string; readonly newGlass: string };
  readonly place: (along: string, across: string) => string;
  readonly up: string;
  readonly shade: {
    readonly neverSun: string;
    readonly wall: string;
    readonly skyline: string;
    readonly both: string;
    readonly allDaySun: (side: string) => string;
    readonly clock: string;
  };
  readonly calendar: {
    readonly noRoom: string;
    readonly over: (last: string, soonest: string) => string;
    readonly full: (days: number) => string;
    readonly notPlaced: (why: string) => string;
    readonly notPlacedToDo: string;
    readonly overfull: (of: { readonly used: number; readonly reserve: number; readonly open: number }) => string;
    readonly overfullToDo: string;
    readonly reserve: (of: { readonly share: number; readonly source: string; readonly days: number }) => string;
  };
  readonly kit: {
    readonly cutPieces: (film: string) => string;
    readonly slip: string;
    readonly blades: string;
    readonly cloths: string;
    readonly ladder: string;
    readonly sheet: string;
    readonly scraper: string;
    readonly tape: string;
    readonly leaveBehind: string;
    readonly units: { readonly piece: string; readonly litre: string };
  };
  readonly defects: readonly DefectCode[];
}

export const CREW_WORDS_EN: CrewWords = {
  everyTime: [
    'Follow local code, the limits of the glass and film makers and licensed practice. Stop and call when a pane is cracked, loose or not as listed.',
    'Glass and blades cut: gloves and eye protection; keep people clear below; leave a broken pane where it is and report it.',
    'Work on facades that lie in shade; hot glass dries the solution and cracks more easily.',
  ],
  cautions: {
    leadPaint: 'Building from before 1978, or of unknown year: treat paint at the frame as lead paint; more than 6 square feet inside or 20 outside disturbed needs a certified firm (40 CFR 745).',
    ladder: 'Ladder at 4 to 1, tied or footed, three points of contact, never on the top steps; fall protection by the local rule from 4 or 6 ft up.',
    escape: 'Escape window: its hardware must stay free and working.',
    temperedMark: 'Keep the tempered mark in the corner of the glass visible.',
    oldFilm: 'Old film comes off first; look at the bare glass again for scratches and edge damage before filming.',
    fogged: 'Fogged sealed unit listed: do not film a pane that is wet inside; write FOG and go on.',
    cold: 'No filming on a day below 50 °F outdoors (trade practice); the film sheet wins.',
  },
  steps: {
    measure: 'Measure every pane before anything is cut: three widths, three heights, the smallest counts; write them in. Where the glass is larger than its piece allows, cut nothing from that roll: send the sizes to the office and cut by the new layout of the rest of the roll.',
    cut: (film) => `Cut ${film} from the roll and place named at each pane; label the piece with dwelling, room, pane and which end is up.`,
    oldFilm: 'Take the old film off, clean off the glue, look at the glass.',
    clean: 'Cover sill and floor. Wash the glass and its edges, blade it once over, rinse.',
    hang: 'Wet the glass, hang the piece from the top, wet its face, press the water out from the middle.',
    trim: (gap) => `Trim to ${gap} in from the gasket, press again, dry the edge.`,
    look: 'Look square-on from 6 ft in daylight without direct sun. Water bubbles and haze are not defects: they dry.',
    leave: 'Leave the drying and cleaning sheet. Take every blade and all backing film with you.',
    record: 'Tick each pane or write its code; write the minutes, the film used and who was there.',
    day30: 'Day 30: look again from 6 ft; only what is left then is a defect.',
  },
  notice: ({ dwelling, panes, person_h, notice_h, day }) =>
    `Notice of entry, dwelling ${dwelling}. On ${day} a crew of the maintenance staff will enter to put solar-control film on ${String(panes)} window ${panes === 1 ? 'pane' : 'panes'}; about ${person_h} hours of work for one person, less for a crew. Please clear 3 ft in front of the windows and open blinds. The film looks hazy while it dries: do not touch or clean it for 30 days. Given at least ${String(notice_h)} h before entry. Local rules or the lease may ask for another form or a longer time; they win.`,
  noDay: 'a day still to be set',
  access: {
    occupied: (notice_h) => `occupied: written notice ${String(notice_h)} h before, or as the lease says`,
    empty: (out, until) => `empty from ${out}${until === null ? '' : ` until ${until}`}: do it then`,
    emptyThatDay: (out, until) => `empty that day (from ${out}${until === null ? ', no end known' : ` until ${until}`})`,
    occupiedThatDay: (notice_h, { out, until }) => `occupied that day: written notice ${String(notice_h)} h before, or as the lease says; no working day was free while it stands empty (from ${out}${until === null ? '' : ` until ${until}`})`,
  },
  notes: {
    filmOnSide: (film) => `film ${film} on this side`,
    fromPlanType: (type) => `size from plan type ${type}: measure before cutting`,
    notLaid: 'not laid: see the cut list',
    redo: ({ why, day, note }) => `${{ defect: 'do again', 'broken pane': 'new glass after a break', 'not reached': 'not reached on the first visit' }[why]}${day === null ? '' : `, seen ${day}`}${note === null ? '' : `: ${note}`}`,
  },
  redo: {
    again: 'again',
    waits: 'waits for glass',
    needsGlass: 'Needs glass first: no film before the new pane is in and measured.',
    newGlass: 'New glass: measure it, look for a coating and a tempered mark; it may be another make than the old pane. Its seal must have set.',
  },
  place: (along, across) => `${along} along, ${across} across`,
  up: 'label end is the top of the pane',
  shade: {
    neverSun: 'the sun does not reach this side on this day',
    wall: 'the sun stands behind the wall',
    skyline: 'the skyline hides the sun',
    both: 'the wall or the skyline hides the sun',
    allDaySun: (side) => `The ${side} side has sun from sunrise to sunset that day: film it early or hang a sheet outside.`,
    clock: 'Times of shade are standard time; add an hour while clocks show summer time. Balconies, and trees not on the surveyed skyline, bring shade earlier.',
  },
  calendar: {
    noRoom: 'loading, parking and keys take the whole crew day',
    over: (last, soonest) => `the last day is ${last}, and with letters and notice the work cannot begin before ${soonest}`,
    full: (days) => (days === 0 ? 'no working day lies between its first and last day' : `its ${String(days)} working days are full or blocked`),
    notPlaced: (why) => `no working day was found: ${why}`,
    notPlacedToDo: 'move it to another year, add crew days, or give the work to a contractor',
    overfull: ({ used, reserve, open }) => `${String(used)} crew days of work and ${String(reserve)} kept for doors that stay shut do not fit the ${String(open)} working days`,
    overfullToDo: 'add crew days or hours, or move dwellings to a later year',
    reserve: ({ share, source, days }) => `${String(days)} crew ${days === 1 ? 'day' : 'days'} are kept free at the end of the years for visits where nobody opens: ${(share * 100).toFixed(0)} % of the days with visits (${source}).`,
  },
  kit: {
    cutPieces: (film) => `Cut and labelled pieces of film ${film}`,
    slip: 'Slip solution',
    blades: 'Blades, new',
    cloths: 'Lint-free cloths',
    ladder: 'Ladder',
    sheet: 'Dust sheets',
    scraper: 'Scraper and bag for old film',
    tape: 'Steel tape',
    leaveBehind: 'Drying and cleaning sheet for the resident',
    units: { piece: 'pieces', litre: 'litres' },
  },
  defects: [
    { code: 'DIRT', words: 'specks under the film' },
    { code: 'HAIR', words: 'hair or fibre under the film' },
    { code: 'BUBBLE', words: 'air (not water) under the film after drying' },
    { code: 'CREASE', words: 'fold or finger of film' },
    { code: 'SCRATCH', words: 'scratch in film or glass' },
    { code: 'EDGE', words: 'edge lifts or is ragged' },
    { code: 'GAP', words: 'gap at the gasket wider than 5/32 in' },
    { code: 'SHORT', words: 'piece too small for the pane' },
    { code: 'TEAR', words: 'film torn' },
    { code: 'SEAM', words: 'seam open or crooked' },
    { code: 'CRACK', words: 'glass cracked or broken: stop, keep people away, report' },
    { code: 'FOG', words: 'moisture between the panes of a sealed unit' },
  ],
};
