/** How it stands with filming a pane, from least to most to be done first. Words only; no outcome promises that glass will not break. */
export type SuitabilityOutcome = 'no-listed-trigger' | 'ask-first' | 'written-consent-needed';

/** Outcomes from mild to strict; the strict one wins where rules differ. */
export const OUTCOMES: readonly SuitabilityOutcome[] = ['no-listed-trigger', 'ask-first', 'written-consent-needed'];

/** What is known of a pane with a film on it; null is not known. Temperatures, sizes and shares carry their unit. */
export interface PaneFacts {
  /** Sheets in the unit: 1 single, 2 sealed double, 3 triple. */
  readonly layers: number | null;
  readonly strength: 'annealed' | 'heat-strengthened' | 'tempered' | null;
  readonly temperedMarkSeen: boolean | null;
  readonly tinted: boolean | null;
  readonly lowE: boolean | null;
  /** Of the thickest sheet. */
  readonly thickness_mm: number | null;
  readonly paneArea_m2: number | null;
  readonly longestEdge_m: number | null;
  /** Of the pane that carries the film, glass and film together, 0…1. */
  readonly combinedAbsorptance: number | null;
  /** Highest estimate over the weather cases looked at. */
  readonly edgeStress_MPa: number | null;
  readonly sealAge_yr: number | null;
  readonly sealTested: boolean | null;
  readonly fogged: boolean | null;
  readonly damaged: boolean | null;
  readonly unexplainedBreakage: boolean | null;
  readonly wired: boolean | null;
  readonly laminated: boolean | null;
  readonly patterned: boolean | null;
  readonly bent: boolean | null;
  readonly skylight: boolean | null;
  readonly fireRated: boolean | null;
  readonly heated: boolean | null;
  readonly plastic: boolean | null;
  readonly lettered: boolean | null;
  readonly escape: boolean | null;
  readonly frame: 'gasketed' | 'metal-without-gasket' | 'concrete' | 'dark' | null;
  readonly sealantHard: boolean | null;
  readonly deepRecess: boolean | null;
  readonly shadow: 'none' | 'narrow-perimeter' | 'angular' | 'straight' | null;
  readonly heatTrap: boolean | null;
  readonly airOnGlass: boolean | null;
  readonly warrantyInForce: boolean | null;
  readonly existingFilm: 'none' | 'present' | null;
}

/** One test on a fact. Of a fact not known it fails, unless `orUnknown` plans it on the careful side. */
export interface RuleTest {
  readonly fact: keyof PaneFacts;
  readonly is?: string | boolean | number;
  readonly isNot?: string | boolean | number;
  readonly atLeast?: number;
  readonly above?: number;
  readonly orUnknown?: boolean;
  /** Holds only where the fact is not known. */
  readonly unknown?: boolean;
}

/** A line of the rule table: when all its tests hold, its outcome and reason stand. */
export interface SuitabilityRule {
  readonly id: string;
  readonly all: readonly RuleTest[];
  readonly outcome: SuitabilityOutcome;
  readonly reason: string;
  readonly source: string;
}

/** The strictest outcome of the rules that hold, with the reason of each, strictest first. */
export interface Suitability {
  readonly outcome: SuitabilityOutcome;
  readonly reasons: readonly string[];
  /** Ids of the rules behind the reasons, in the same order. */
  readonly rules: readonly string[];
}

/** Stands under every outcome, the mildest above all. */
export const STANDING_ADVICE =
  "The film maker's film-to-glass chart, the window's warranty and local code still decide; licensed practice applies.";

function holds(test: RuleTest, facts: PaneFacts): boolean {
  const value = facts[test.fact];
  if (test.unknown !== undefined) return (value === null) === test.unknown;
  if (value === null) return test.orUnknown === true;
  if (test.is !== undefined && value !== test.is) return false;
  if (test.isNot !== undefined && value === test.isNot) return false;
  if (test.atLeast !== undefined && !(typeof value === 'number' && value >= test.atLeast - 1e-9)) return false;
  if (test.above !== undefined && !(typeof value === 'number' && value > test.above + 1e-9)) return false;
  return true;
}

/** Facts of which nothing is known; a survey fills in what it has. */
export const NOTHING_KNOWN: PaneFacts = {
  layers: null,
  strength: null,
  temperedMarkSeen: null,
  tinted: null,
  lowE: null,
  thickness_mm: null,
  paneArea_m2: null,
  longestEdge_m: null,
  combinedAbsorptance: null,
  edgeStress_MPa: null,
  sealAge_yr: null,
  sealTested: null,
  fogged: null,
  damaged: null,
  unexplainedBreakage: null,
  wired: null,
  laminated: null,
  patterned: null,
  bent: null,
  skylight: null,
  fireRated: null,
  heated: null,
  plastic: null,
  lettered: null,
  escape: null,
  frame: null,
  sealantHard: null,
  deepRecess: null,
  shadow: null,
  heatTrap: null,
  airOnGlass: null,
  warrantyInForce: null,
  existingFilm: null,
};

/**
 * Whether a pane may carry a film without asking anybody, by the rule table.
 *
 *   the strictest outcome among the rules all of whose tests hold; none holds: no listed trigger
 *
 * @param facts what is known of the pane and of the film on it
 * @param rules the rule table
 * @returns outcome in words, every reason, and the standing advice at the end
 * @source rule table; each rule names its own
 */
export function suitability(facts: PaneFacts, rules: readonly SuitabilityRule[]): Suitability {
  const strictness = (rule: SuitabilityRule): number => OUTCOMES.indexOf(rule.outcome);
  const held = rules.filter((rule) => rule.all.every((test) => holds(test, facts))).sort((a, b) => strictness(b) - strictness(a));
  return {
    outcome: held[0]?.outcome ?? 'no-listed-trigger',
    reasons: [...held.map((rule) => rule.reason), STANDING_ADVICE],
    rules: held.map((rule) => rule.id),
  };
}
