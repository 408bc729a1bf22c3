import type { DrawSpread, Influence } from '#calc';
import type { BreakEvens } from './break-evens.js';

/** What draws say of money. */
export interface LineChances {
  /** Mean yearly saving over the film's life, all payers, net of added heating, cents. */
  readonly yearly_cents: DrawSpread;
  /** Net present value in the plan's view, cents. */
  readonly value_cents: DrawSpread;
  /** Share of draws in which the savings of the film's life add up to its cost; of a plan, in which its value is not below zero. */
  readonly paysBackShare: number;
  readonly words: string;
}

/** What the draws say of a line of the plan. */
export interface LineOutlook {
  readonly dwelling: string;
  readonly option: string;
  readonly phase: string;
  readonly asModelled: LineChances;
  /** The same with the share of a modelled saving that bills are expected to show drawn too. */
  readonly inBills: LineChances;
  /** Share of selections made again, each under one draw, that take this dwelling; null where none was made. */
  readonly inPlanShare: number | null;
  readonly breakEvens: BreakEvens;
}

/** An uncertain input as it was drawn. */
export interface OutlookInput {
  readonly label: string;
  readonly unit: string;
  readonly scope: string;
  readonly source: string;
}

/** How sure the plan is: what a few hundred draws of all that is not known say, each by full runs of the hours. */
export interface Outlook {
  readonly seed: number;
  readonly draws: number;
  /** Selections made again. */
  readonly selections: number;
  /** How far those selections end below their own bounds, as a share; null where none was made, absent in plans kept before. */
  readonly selectionGap?: { readonly middle: number; readonly worst: number } | null;
  readonly asModelled: LineChances;
  readonly inBills: LineChances;
  readonly lines: readonly LineOutlook[];
  /** What moves the plan's value, strongest first. */
  readonly influences: readonly Influence[];
  readonly inputs: readonly OutlookInput[];
  /** As modelled, and as expected in bills. */
  readonly words: readonly string[];
}

/** How many draws, from which seed, and how many selections are made again. */
export interface OutlookOrder {
  readonly seed: number;
  readonly draws: number;
  readonly selections: number;
}
