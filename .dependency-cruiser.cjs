// Who may import whom. One row per lib, one list for the flow inside calc; a backward arrow is an error.
const LIBS = {
  calc: [],
  catalogue: ['calc'],
  weather: ['calc', 'catalogue'],
  store: ['calc'],
  intake: ['calc', 'catalogue', 'weather', 'store'],
  planning: ['calc', 'catalogue', 'weather', 'store'],
  workers: ['calc', 'planning'],
  kernels: ['calc', 'catalogue', 'weather'],
  papers: ['calc', 'planning'],
  workbook: ['calc', 'planning', 'papers'],
};
const FLOW = ['units', 'money', 'portfolio', 'sun', 'weather', 'sky', 'shade', 'glass', 'dwelling', 'cooling', 'tariff', 'lifecycle', 'labour', 'selection', 'cutting', 'verification', 'uncertainty'];
const SPEC = '\\.(spec|bench)\\.ts$';

const libRules = Object.entries(LIBS).map(([lib, may]) => ({
  name: `${lib}-imports-only-${may.join('-') || 'itself'}`,
  severity: 'error',
  from: { path: `^libs/${lib}/src`, pathNot: SPEC },
  to: { path: '^(libs|apps)/', pathNot: `^libs/(${[lib, ...may].join('|')})/src` },
}));
const flowRules = FLOW.map((folder, at) => ({
  name: `calc-flow-${folder}`,
  severity: 'error',
  from: { path: `^libs/calc/src/${folder}/`, pathNot: SPEC },
  to: { path: '^libs/calc/src/', pathNot: `^libs/calc/src/(${FLOW.slice(0, at + 1).join('|')})/` },
}));

module.exports = {
  forbidden: [
    { name: 'no-circular', severity: 'error', from: {}, to: { circular: true } },
    { name: 'unresolved', severity: 'error', from: {}, to: { couldNotResolve: true } },
    ...libRules,
    ...flowRules,
    { name: 'calc-pure', severity: 'error', from: { path: '^libs/calc/src', pathNot: SPEC }, to: { pathNot: '^libs/calc/src|node_modules/suncalc/' } },
    { name: 'sun-package-behind-calc-sun', severity: 'error', from: { pathNot: '^libs/calc/src/sun/|' + SPEC }, to: { path: 'node_modules/suncalc/' } },
    { name: 'libs-not-apps', severity: 'error', from: { path: '^libs/' }, to: { path: '^apps/' } },
    { name: 'apps-apart', severity: 'error', from: { path: '^apps/([^/]+)/' }, to: { path: '^apps/', pathNot: '^apps/$1/' } },
    { name: 'front-door-only', severity: 'error', from: { path: '^(apps|libs)/([^/]+)/' }, to: { path: '^libs/([^/]+)/src/(?!index\\.ts$)', pathNot: '^$1/$2/' } },
    { name: 'calc-folders-by-their-index', severity: 'error', from: { path: '^libs/calc/src/([^/]+)/', pathNot: SPEC }, to: { path: '^libs/calc/src/[^/]+/(?!index\\.ts$)', pathNot: '^libs/calc/src/$1/' } },
    {
      name: 'edge-files-only',
      severity: 'error',
      from: { path: '^libs/(intake|planning|workbook|papers)/src', pathNot: '\\.(service|module)\\.ts$|/index\\.ts$|' + SPEC },
      to: { path: '^libs/store/|node_modules/(@nestjs|typeorm)/', dependencyTypesNot: ['type-only'] },
    },
    { name: 'store-alone-knows-its-driver', severity: 'error', from: { pathNot: '^libs/store/src|' + SPEC }, to: { path: 'node_modules/(sqlite3|pg|typeorm|@nestjs/typeorm)/' } },
    { name: 'workers-alone-start-threads', severity: 'error', from: { pathNot: '^libs/workers/src|' + SPEC }, to: { path: 'node_modules/piscina/|^(node:)?worker_threads$' } },
    { name: 'nothing-leans-on-tests', severity: 'error', from: { path: '^(apps|libs)/', pathNot: SPEC }, to: { path: '^test/|' + SPEC } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['source', 'import', 'node', 'default'], extensions: ['.ts', '.js', '.mjs', '.json'] },
  },
};
