import type { OptionWindow } from '../options/option.js';
import type { FilmCut } from '../rolls/cut-types.js';

/** A line of the plan before on which work was recorded: it stands as it was done. */
export interface DoneLine {
  readonly dwelling: string;
  readonly building: string;
  readonly phase: string;
  readonly option: string;
  readonly film: string;
  /** Windows that carry its film, panes to be done again counted in; plans kept before have none. */
  readonly windows?: readonly { readonly window: string; readonly film: string }[];
  readonly panesDone: number;
  readonly firstDay: string;
  readonly lastDay: string;
  readonly planned_min: number;
  /** Person-minutes as recorded; null where nobody wrote them down. */
  readonly real_min: number | null;
  /** Who put the film on; plans kept before do not say. */
  readonly crew?: 'own' | 'contractor';
}

/** A pane to be done, or done again, in a dwelling that is otherwise done. */
export interface RedoPane {
  readonly pane: string;
  readonly window: string;
  readonly dwelling: string;
  readonly phase: string;
  readonly film: string;
  readonly why: 'defect' | 'broken pane' | 'not reached';
  readonly note: string | null;
  readonly day: string | null;
}

/** Panes of a dwelling to be done again on one visit. */
export interface RedoWork {
  readonly dwelling: string;
  readonly building: string;
  readonly ownerEntity: string;
  /** The year it falls in; null where its glass is not there or no year is left. */
  readonly phase: string | null;
  readonly panes: readonly RedoPane[];
  readonly windows: readonly OptionWindow[];
  /** A pane broke and nobody knows when its new glass comes: no film before. */
  readonly waitsForGlass: boolean;
  /** ISO date from which it may be done. */
  readonly from: string;
  readonly minutes: { readonly low: number; readonly best: number; readonly high: number };
  /** Labour, consumables and their taxes; film stands with the cut list. */
  readonly work_cents: number;
  /** A contractor does it at his terms, and no minutes of the own crew are kept for it; absent for the own crew. */
  readonly crew?: 'contractor';
  /** His faulty panes are put right at no charge for the work. */
  readonly isMadeGood?: true;
}

/** Money of a phase kept for panes to be done again. */
export interface RedoMoney {
  readonly phase: string;
  readonly film_cents: number;
  readonly work_cents: number;
  readonly minutes: number;
}

/** Money of a phase that is gone. */
export interface SpentMoney {
  readonly phase: string;
  readonly spent_cents: number;
  readonly basis: 'ledger' | 'plan cost and recorded minutes';
}

/** What is left of a cap after the work: cap − spent − kept, never below zero; nothing once the year is over. */
export interface CapAfterWork {
  readonly phase: string;
  /** As the survey has it. */
  readonly cap_cents: number;
  readonly spent_cents: number;
  /** For panes to be done again. */
  readonly kept_cents: number;
  readonly left_cents: number;
  readonly isOver: boolean;
}

/** What happened since the plan before, and what of it the new plan starts from. */
export interface SettledWork {
  readonly parent: string;
  /** ISO date up to which records were counted. */
  readonly asOf: string;
  readonly done: readonly DoneLine[];
  readonly redo: readonly RedoPane[];
  /** The same panes as visits; plans kept before have none. */
  readonly redoWork?: readonly RedoWork[];
  /** What is kept of the caps for them. */
  readonly redoMoney?: readonly RedoMoney[];
  /** Film for the panes to be done again, from what is left first; none while a pane waits for glass. */
  readonly redoCuts: readonly FilmCut[];
  readonly noAccess: readonly { readonly dwelling: string; readonly days: readonly string[] }[];
  readonly spent: readonly SpentMoney[];
  /** Caps something was spent or kept of; plans kept before have none. */
  readonly caps?: readonly CapAfterWork[];
  readonly rollsLeft: readonly { readonly roll: string; readonly film: string; readonly width_mm: number; readonly length_mm: number; readonly lot: string | null }[];
  /** Real over modelled minutes, drawn towards 1 while there are few visits. */
  readonly time: { readonly factor: number; readonly recorded: number; readonly visits: number };
}
