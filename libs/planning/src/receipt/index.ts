export type { Receipt, ReceiptAssumption, ReceiptCompute, ReceiptPart, ReceiptRow, ReceiptStep } from './receipt.js';
export type { Figure, ReceiptAt } from './figure.js';
export { headlineFigures, type NoSuchFigure, receiptFigures, receiptOf, WITHOUT_RECEIPT } from './receipts.js'; // any figure of a plan, opened to one page
export { surveyAgain, type SurveyAgain } from './survey-again.js'; // for figures that hang on hours
