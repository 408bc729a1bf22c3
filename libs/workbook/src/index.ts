export { MOST_DWELLINGS_IN_MEMORY, rolloutWorkbook, streamRolloutWorkbook, workbookBytes, writeRolloutWorkbook } from './rollout-workbook.js'; // a plan as sheets for its readers
