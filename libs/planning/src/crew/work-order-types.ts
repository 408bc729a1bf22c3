import type { Told } from '../words/told.js';

export type ShadeClock = 'daylight' | 'standard' | 'standard, rule not known';

/** When the panes of one side lie in shade on the day of the visit. */
export interface ShadeTime {
  readonly side: string;
  readonly azimuth_deg: number;
  /** ISO date the times hold for. */
  readonly day: string;
  /** `HH:MM`; null: since sunrise. */
  readonly from: string | null;
  /** `HH:MM`; null: until sunset. */
  readonly until: string | null;
  /** Clock of the times: that on the wall, on daylight or standard time that day, or standard time where nothing says whether clocks change; plans kept before have standard time. */
  readonly clock?: ShadeClock;
  /** Tariff whose dates of daylight time are taken; absent where the rule is not known. */
  readonly tariff?: string;
  /** The survey says whether clocks change; absent where it does not. */
  readonly isSurveyed?: true;
  /** The side counts as in shade while no more than this share of its glass has sun, 0…1. */
  readonly sunlitShare?: number;
  readonly why: string;
}

/** A code the crew writes beside a pane, with what it means. */
export interface DefectCode {
  readonly code: string;
  readonly words: string;
}

/** One thing to take along. */
export interface KitItem {
  readonly what: string;
  readonly quantity: number;
  readonly unit: string;
  /** The same as a sentence of the table; plans kept before have none. */
  readonly told?: Told;
}

/** What is written on the tape of a cut piece. */
export interface PieceLabel {
  readonly dwelling: string;
  readonly room: string;
  readonly pane: string;
  /** Cut size, width × length, in inches. */
  readonly size: string;
  /** Which end of the piece goes to the top of the pane. */
  readonly up: string;
  readonly film: string;
  readonly roll: string;
}

export interface WorkPane {
  readonly pane: string;
  readonly room: string;
  readonly side: string;
  readonly sight: string;
  readonly cut: string;
  readonly finished: string;
  readonly roll: string;
  readonly rollPosition: string;
  readonly reach: string;
  readonly outcome: string;
  readonly consent: string;
  readonly notes: readonly string[];
  readonly label: PieceLabel;
  /** Consent and notes as sentences of the table, in the order of the notes above, which say what the table does not know; plans kept before have none. */
  readonly told?: { readonly consent: Told; readonly notes: readonly Told[] };
}

/** What an order says in whole sentences, by their names in the table, for another language. */
export interface ToldOrder {
  readonly film: Told | string;
  readonly access: Told;
  readonly notice: Told | null;
  readonly steps: readonly Told[];
  readonly cautions: readonly Told[];
}

/** A visit's paper for one dwelling. */
export interface WorkOrder {
  readonly id: string;
  /** Panes of work before that are to be done again; absent for a line of the plan. */
  readonly again?: true;
  readonly phase: string;
  readonly building: string;
  readonly dwelling: string;
  readonly film: string;
  readonly earliest: string;
  readonly latest: string;
  /** The day the calendar gives it; null where no day was found, see the calendar. */
  readonly day: string | null;
  /** How one gets in: on the day of the visit where there is one, else in the time it may be done. */
  readonly access: string;
  /** It stands empty on its day; absent in plans kept before the day was looked at. */
  readonly isEmpty?: boolean;
  readonly notice_h: number;
  /** The text of the entry notice, ready to be printed; the local form or the lease wins. */
  readonly noticeText: string;
  readonly minutes: { readonly low: number; readonly best: number; readonly high: number };
  readonly steps: readonly string[];
  readonly shade: readonly ShadeTime[];
  readonly panes: readonly WorkPane[];
  readonly cautions: readonly string[];
  readonly defectCodes: readonly DefectCode[];
  readonly kit: readonly KitItem[];
  /** The sentences above by name; plans kept before have none. */
  readonly told?: ToldOrder;
}
