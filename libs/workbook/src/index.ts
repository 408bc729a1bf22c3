export { rolloutWorkbook, workbookBytes, writeRolloutWorkbook } from './rollout-workbook.js'; // a plan as sheets for its three readers
