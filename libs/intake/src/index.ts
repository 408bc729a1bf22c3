export { billFilesOf, fileAt, fileOfBytes, fileOfText, type InventoryFile } from './files/inventory-file.js'; // what people send
export type { Finding, Severity } from './finding.js'; // what they should know about it
export { readInventory, portfolioOf, type ExtraCells, type FileNote, type Intake, type IntakeOptions } from './read-inventory.js'; // files → records + findings
export type { InventoryRecords } from './records-from.js';
export type { RejectFile } from './reject-file.js'; // rows to correct and send again
export { compareRecords, type Comparison, type FieldChange, type ListChanges } from './changes.js'; // records against what is kept
export { IntakeService, type IntakeReport, type TakeOptions } from './intake.service.js'; // dry run and import
export { IntakeModule } from './intake.module.js';
export { inventoryFilesGuide, templateOf } from './column-guide.js'; // the columns, documented
