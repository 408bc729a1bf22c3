// Makes sure that the packages of the lock file are there: `node scripts/install.mjs`, and the first step of demo and test.
// Plain Node, since nothing is installed yet when it runs.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, openSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
const inRoot = (...parts) => join(root, ...parts);

/** Ends with one sentence; nothing else is worth reading then. */
export function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}

const isMain = (url) => process.argv[1] !== undefined && fileURLToPath(url) === process.argv[1];
/** Whether a script is the one that was started, or one that another script uses. */
export const startedHere = isMain;

function checkNode() {
  const { engines } = JSON.parse(readFileSync(inRoot('package.json'), 'utf8'));
  const [major, minor] = engines.node.replace('>=', '').split('.').map(Number);
  const [here, hereMinor] = process.versions.node.split('.').map(Number);
  if (here < major || (here === major && hereMinor < minor)) {
    stop(`film-rollout needs Node ${major}.${minor} or newer, and this is Node ${process.versions.node}.`);
  }
}

/** Packages of the lock file that are not installed in its version. Those for other machines do not count. */
function missingPackages() {
  const installed = inRoot('node_modules', '.package-lock.json');
  const wanted = JSON.parse(readFileSync(inRoot('package-lock.json'), 'utf8')).packages;
  const there = existsSync(installed) ? JSON.parse(readFileSync(installed, 'utf8')).packages : {};
  return Object.entries(wanted)
    .filter(([path, { optional }]) => path !== '' && optional !== true)
    .filter(([path, { version }]) => there[path]?.version !== version)
    .map(([path]) => path);
}

const works = (command, args) => spawnSync(command, args, { stdio: 'ignore' }).status === 0;
const databaseLoads = () =>
  works(process.execPath, ['-e', `require(${JSON.stringify(inRoot('node_modules', 'sqlite3'))})`]);

function missingBuildTools() {
  const tools = { python3: ['python3', 'python'], make: ['make', 'gmake'], 'g++': [process.env.CXX ?? 'g++', 'c++', 'clang++'] };
  return Object.entries(tools)
    .filter(([, names]) => !names.some((name) => works(name, ['--version'])))
    .map(([tool]) => tool);
}

function npm(args) {
  mkdirSync(inRoot('out'), { recursive: true });
  const log = inRoot('out', 'install.log');
  const to = openSync(log, 'w');
  const own = process.env.npm_execpath;
  const [command, first] = own?.endsWith('.js') ? [process.execPath, [own]] : ['npm', []];
  // npm run sets NODE_ENV-like switches for its children; the build needs the development packages whatever they say.
  const { status } = spawnSync(command, [...first, ...args], { cwd: root, stdio: ['ignore', to, to], shell: process.platform === 'win32' });
  return { ok: status === 0, tail: readFileSync(log, 'utf8').trim().split('\n').slice(-15).join('\n') };
}

function say(tail) {
  const tools = missingBuildTools();
  if (tools.length > 0) {
    stop(`The database package sqlite3 has no ready-made binary for this machine and cannot be compiled because ${tools.join(', ')} ${tools.length > 1 ? 'are' : 'is'} missing: install ${tools.length > 1 ? 'them' : 'it'} (Debian: apt-get install python3 make g++) and run this again.`);
  }
  stop(`The packages could not be installed; the whole story is in out/install.log, its end is:\n${tail}`);
}

/** Installs what is missing and says so; does nothing when all is there. */
export function install() {
  checkNode();
  const missing = missingPackages();
  if (missing.length === 0 && databaseLoads()) return;
  console.error(missing.length === 0 ? 'Building the database package, once …' : `Installing ${missing.length} package${missing.length > 1 ? 's' : ''}, once; where sqlite3 must be compiled this takes a few minutes …`);
  const started = Date.now();
  const { ok, tail } = npm(missing.length === 0 ? ['rebuild', 'sqlite3'] : ['ci', '--include=dev', '--no-audit', '--no-fund']);
  if (!ok || !databaseLoads()) say(tail);
  console.error(`Installed in ${Math.round((Date.now() - started) / 1000)} s.`);
}

if (startedHere(import.meta.url)) install();
