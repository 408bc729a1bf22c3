import type { InventoryRow, Known } from './row.js';

export type WindowFlag = 'escape' | 'tempered-mark-seen' | 'wired' | 'laminated' | 'patterned' | 'fogged' | 'cracked' | 'old-seal' | 'fire-rated' | 'skylight' | 'heavy-curtain';
export type Reach = 'floor' | 'ladder' | 'over-furniture';
export type ScreenKind = 'insect' | 'solar';
export type BlindKind = 'none' | 'light' | 'medium' | 'dark';

/** A window's own shade, beside its facade's horizon. Lengths in metres. */
export interface WindowShade {
  /** Depth of an overhang or of the balcony above, out from the glass. */
  readonly overhangDepth_m: number;
  /** From the top of the glass up to the overhang. */
  readonly overhangGap_m: number;
  readonly finDepth_m: number;
  /** From the side of the glass to the fin. */
  readonly finGap_m: number;
  /** How far the glass stands back from the face of the wall. */
  readonly reveal_m: number;
}

/** A length as it was written and as it is worked with. */
export interface EnteredLength {
  readonly entered: string;
  readonly mm: number;
}

/**
 * A window of a dwelling, or of a plan type. Width and height are the sight size of ONE pane (lite): the glass that is filmed.
 * A window of 3 rows × 4 columns has twelve panes of that size.
 */
export interface Window {
  /** `dwelling/mark`, for example `EC/007/W03`; of a plan type `plan type/mark`. */
  readonly id: string;
  readonly dwelling: Known<string>;
  readonly planType: Known<string>;
  readonly mark: string;
  readonly room: Known<string>;
  /** True bearing outwards; for a plan type's window measured from the plan's own front (front = 0). */
  readonly azimuth_deg: Known<number>;
  readonly tilt_deg: Known<number>;
  readonly width: EnteredLength;
  readonly height: EnteredLength;
  readonly liteRows: Known<number>;
  readonly liteColumns: Known<number>;
  /** Share of the opening that is frame; blank takes the glass as surveyed. */
  readonly frameShare: Known<number>;
  /** KEY of the glazing catalogue. */
  readonly glazing: Known<string>;
  readonly labelSolarHeatGain: Known<number>;
  readonly labelUFactor_W_m2K: Known<number>;
  readonly shade: Known<WindowShade>;
  readonly insectScreenShare: Known<number>;
  /** What the screen outside is; blank is an insect screen. */
  readonly screenKind?: Known<ScreenKind>;
  readonly blind: Known<BlindKind>;
  readonly sillHeight_m: Known<number>;
  readonly reach: Known<Reach>;
  readonly flags: readonly WindowFlag[];
  /** ISO date on which the glass maker's warranty ends. */
  readonly warrantyEnd: Known<string>;
  readonly replacementYear: Known<number>;
  readonly existingFilm: Known<'none' | 'present'>;
  readonly existingFilmCondition: Known<string>;
  /** Removes the plan type's window of this mark from this dwelling. */
  readonly dropped: boolean;
  readonly inventoryRow: InventoryRow;
}

/** A meter reading behind the glass; overrides catalogue figures for its building, facade and glazing. */
export interface SolarReading {
  readonly building: string;
  readonly azimuth_deg: number;
  readonly glazing: string;
  readonly bare_W_m2: Known<number>;
  readonly filmed_W_m2: Known<number>;
  readonly outdoors_W_m2: Known<number>;
  readonly film: Known<string>;
  /** ISO date, with the time of day in standard time where it was noted: 2026-05-12T15:10. */
  readonly taken: string;
  /** Of several alike in place, film and time: 1, 2, 3. */
  readonly repeat?: number;
  readonly inventoryRow: InventoryRow;
}
