export { openCatalogue, type Catalogue } from './catalogue.js';
