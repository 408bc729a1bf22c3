export type {
  ChosenOption,
  KeepTogether,
  LinearAnswer,
  LinearProgram,
  SelectionBuilding,
  SelectionCertificate,
  SelectionEffort,
  SelectionGroup,
  SelectionMultipliers,
  SelectionOption,
  SelectionOwner,
  SelectionPhase,
  SelectionProblem,
  SelectionResult,
  SelectionTools,
  SolveLp,
} from './problem.js';
export { select } from './select.js';
export { checkCertificate, type CertificateFindings } from './certificate-check.js';
export { choiceFindings, type ChoiceFindings } from './choice-check.js';
export { explain, type LimitPrice, type OptionReason, type SelectionReasons } from './explain.js';
export { capCurve, type CapPoint } from './cap-curve.js';
