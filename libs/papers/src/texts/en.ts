import { planSentences } from '#planning';
import { figures } from './en/figures.js';
import { residents } from './en/residents.js';
import { work } from './en/work.js';

/** Every sentence of the papers and of what a crew reads of a plan, in English. Names between braces are filled in; another language is a table with the same keys and names. */
export const en = { ...planSentences, ...work, ...residents, ...figures } as const;
