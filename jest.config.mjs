// CommonJS mode through swc: several packages here are CommonJS that load ESM, which jest's own ESM mode cannot do on Node 20.
const swc = (parser, transform = {}) => [
  '@swc/jest',
  { jsc: { parser, transform, target: 'es2023', keepClassNames: true }, module: { type: 'commonjs' }, sourceMaps: 'inline' },
];

export default {
  testEnvironment: 'node',
  roots: ['<rootDir>/apps', '<rootDir>/libs', '<rootDir>/test'],
  testRegex: '\\.(e2e-)?spec\\.ts$',
  testEnvironmentOptions: { customExportConditions: ['source', 'node', 'node-addons'] },
  moduleNameMapper: { '^(\\.{1,2}/.*)\\.js$': ['$1.ts', '$1.js'] },
  transform: {
    '\\.ts$': swc({ syntax: 'typescript', decorators: true }, { legacyDecorator: true, decoratorMetadata: true }),
    '\\.m?js$': swc({ syntax: 'ecmascript' }),
  },
  transformIgnorePatterns: [
    '/node_modules/(?!(@nestjs|file-type|strtok3|token-types|uint8array-extras|@tokenizer|@borewit|suncalc)/)',
    '<rootDir>/dist/',
  ],
  setupFiles: ['<rootDir>/test/seed.ts'],
  testTimeout: 30_000,
  // By default one processor is left idle, which on two halves the speed.
  maxWorkers: '100%',
};
