// Runs specs for a mutant in one process: calc and the specs are compiled once and loaded anew for each mutant, packages are kept.
// It knows as much of the spec language as calc's specs speak: describe, it, test, each, skip and expect. `npm test` runs the same specs under jest.
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative, resolve } from 'node:path';
import { compileFunction } from 'node:vm';
import { transformSync } from '@swc/core';
import { declareClassPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import { DryRunStatus, TestStatus, determineHitLimitReached, toMutantRunResult } from '@stryker-mutator/api/test-runner';
import { isSpecOf, SLOW_TESTS } from './mutation-specs.mjs';

/** Cases a property is tried on, at most; under `npm test` 60 and more. */
const RUNS = 12;
const LANGUAGE = ['describe', 'it', 'test', 'expect'];
const SWC = { jsc: { parser: { syntax: 'typescript', decorators: true }, transform: { legacyDecorator: true, decoratorMetadata: true }, target: 'es2023' }, module: { type: 'commonjs' } };

const COVER = /stryCov_\w+\((?:"\d+"(?:, )?)+\)/g;
/** In the first run each count is one step in an array; Stryker's own call would take most of the time. */
const counted = (code) => code.replace(COVER, (call) => `(${[...call.matchAll(/"(\d+)"/g)].map(([, id]) => `$n[${id}]++`).join(', ')})`).replace(ACTIVE, 'false');
const ACTIVE = /stryMutAct_\w+\("(\d+)"\)/g;
/** A file with one mutant left to switch on, or none: the others would slow every hour of a year. */
const only = (code, mutant) => code.replace(COVER, '0').replace(ACTIVE, (call, id) => (id === mutant ? call : 'false'));

/** Property tests tried on no more than RUNS cases. */
const shortened = (fc) => ({ ...fc, assert: (property, more) => fc.assert(property, { ...more, numRuns: Math.min(more?.numRuns ?? RUNS, RUNS) }) });

/** Loads TypeScript of the sandbox; `fresh()` forgets what was loaded but not what was compiled. */
class Loader {
  constructor(root, language) {
    this.root = root;
    this.language = language;
    this.own = createRequire(join(root, 'package.json'));
    this.imports = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).imports;
    this.hits = new Float64Array(100_000);
    this.codes = new Map();
    this.compiled = new Map();
    this.loaded = new Map();
  }

  /** Forgets what was loaded. `at`: the file and id of the mutant to come; without it all are counted. */
  fresh(at) {
    this.loaded.clear();
    if (this.at !== undefined) this.compiled.delete(this.at.path);
    else if (at !== undefined) this.compiled.clear();
    this.at = at;
    if (at !== undefined) this.compiled.delete(at.path);
  }

  /** What was passed since the last time, by mutant. */
  harvest() {
    const found = {};
    this.hits.forEach((count, id) => count > 0 && (found[id] = count));
    this.hits.fill(0);
    return found;
  }

  load(path) {
    const known = this.loaded.get(path);
    if (known !== undefined) return known.exports;
    const module = { exports: {} };
    this.loaded.set(path, module);
    if (path.endsWith('.json')) module.exports = JSON.parse(readFileSync(path, 'utf8'));
    else this.bodyOf(path).call(module.exports, module.exports, (name) => this.named(name, dirname(path)), module, path, dirname(path), this.hits, ...LANGUAGE.map((word) => this.language[word]));
    return module.exports;
  }

  bodyOf(path) {
    if (!this.compiled.has(path)) {
      if (!this.codes.has(path)) this.codes.set(path, transformSync(readFileSync(path, 'utf8'), { ...SWC, filename: path }).code);
      const code = this.codes.get(path);
      const at = this.at === undefined ? counted(code) : only(code, path === this.at.path ? this.at.id : undefined);
      this.compiled.set(path, compileFunction(at, ['exports', 'require', 'module', '__filename', '__dirname', '$n', ...LANGUAGE], { filename: path }));
    }
    return this.compiled.get(path);
  }

  named(name, from) {
    if (name.startsWith('#')) return this.load(join(this.root, this.imports[name].source));
    if (name.startsWith('.')) return this.load(resolve(from, name).replace(/\.js$/, '.ts'));
    return name === 'fast-check' ? { __esModule: true, default: shortened(this.own(name).default) } : this.own(name);
  }
}

/** The spec language; what is written in it is gathered in `tests`. */
class Language {
  constructor(bind, expect) {
    this.expect = expect;
    this.titles = [];
    this.skipped = 0;
    this.describe = Object.assign((title, body) => this.under(title, body), { skip: (title, body) => this.under(title, body, 1) });
    this.describe.each = bind(this.describe);
    this.it = Object.assign((title, body) => this.tests.push({ title: [...this.titles, title].join(' '), body, skip: this.skipped > 0 }), { skip: () => undefined });
    this.it.each = bind(this.it);
    this.test = this.it;
  }

  under(title, body, skip = 0) {
    this.titles.push(title);
    this.skipped += skip;
    body();
    this.skipped -= skip;
    this.titles.pop();
  }
}

class SpecRunner {
  static inject = [];

  init() {
    const root = process.cwd();
    const own = createRequire(join(root, 'package.json'));
    this.root = root;
    this.took = new Map();
    this.language = new Language(own('jest-each').bind, own('expect').expect);
    this.loader = new Loader(root, this.language);
    this.specs = ['libs/calc/src', 'libs/catalogue/src', 'test/reference'].flatMap((under) => readdirSync(join(root, under), { recursive: true }).map((file) => join(under, file))).filter(isSpecOf(process.env.FILM_ROLLOUT_MUTATE));
    this.loader.load(join(root, 'test', 'seed.ts'));
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  /** The tests of the specs named, loaded anew. */
  testsOf(specs, at) {
    this.loader.fresh(at);
    return specs.flatMap((file) => {
      this.language.tests = [];
      this.loader.load(join(this.root, file));
      return this.language.tests.filter(({ title }) => !SLOW_TESTS.test(title)).map((test) => ({ ...test, id: `${file}: ${test.title}`, file }));
    });
  }

  /** Runs the quickest first, as far as is known: where one failure is enough the slow ones are then seldom needed. */
  async run(tests, bail, coverage) {
    const results = [];
    const known = (id) => this.took.get(id) ?? 0;
    for (const { id, title, body, skip, file } of tests.toSorted((a, b) => known(a.id) - known(b.id))) {
      if (skip) continue;
      const from = performance.now();
      const of = { id, name: title, fileName: join(this.root, file) };
      try {
        await body();
        results.push({ ...of, status: TestStatus.Success, timeSpentMs: performance.now() - from });
      } catch (error) {
        results.push({ ...of, status: TestStatus.Failed, timeSpentMs: performance.now() - from, failureMessage: String(error?.message ?? error).slice(0, 300) });
        if (bail) break;
      } finally {
        if (coverage !== undefined) coverage[id] = this.loader.harvest();
        this.took.set(id, Math.max(known(id), performance.now() - from));
      }
    }
    return results;
  }

  async dryRun() {
    globalThis.__stryker__ = { activeMutant: undefined };
    try {
      const listed = this.testsOf(this.specs);
      const mutantCoverage = { static: this.loader.harvest(), perTest: {} };
      const tests = await this.run(listed, false, mutantCoverage.perTest);
      return { status: DryRunStatus.Complete, tests, mutantCoverage };
    } catch (error) {
      return { status: DryRunStatus.Error, errorMessage: error.stack };
    }
  }

  async mutantRun({ activeMutant, sandboxFileName, testFilter, hitLimit, mutantActivation, disableBail }) {
    const stryker = (globalThis.__stryker__ ??= {});
    const wanted = testFilter === undefined ? null : new Set(testFilter);
    const specs = wanted === null ? this.specs : this.specs.filter((file) => testFilter.some((id) => id.startsWith(`${file}: `)));
    Object.assign(stryker, { activeMutant: mutantActivation === 'static' ? activeMutant.id : undefined, hitLimit, hitCount: hitLimit === undefined ? undefined : 0 });
    try {
      const tests = this.testsOf(specs, { path: sandboxFileName, id: activeMutant.id }).filter(({ id }) => wanted === null || wanted.has(id));
      if (!this.loader.loaded.has(sandboxFileName)) throw new Error(`no spec loads ${sandboxFileName}`);
      stryker.activeMutant = activeMutant.id;
      const results = await this.run(tests, !disableBail);
      return toMutantRunResult(determineHitLimitReached(stryker.hitCount, hitLimit) ?? { status: DryRunStatus.Complete, tests: results });
    } catch (error) {
      return toMutantRunResult(determineHitLimitReached(stryker.hitCount, hitLimit) ?? { status: DryRunStatus.Error, errorMessage: String(error.stack) });
    } finally {
      stryker.activeMutant = undefined;
    }
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, 'specs', SpecRunner)];
