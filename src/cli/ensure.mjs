/**
 * node src/cli/ensure.mjs [--browser]
 *
 * Runs before start, solve and test: sees that Node is new enough, that the packages of the lock file are
 * installed and, with --browser, that there is a Chromium to test with. Node's own modules only, since it
 * runs before anything is installed; every word goes to standard error, since solve speaks JSON on standard output.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const LEAST_NODE = [20, 19];
const top = fileURLToPath(new URL('../../', import.meta.url));
const lockFile = `${top}package-lock.json`;
const installedFile = `${top}node_modules/.package-lock.json`;

const say = (/** @type {string} */ words) => process.stderr.write(`conepair: ${words}\n`);

/** @returns {never} */
function stop(/** @type {string} */ words) {
  say(words);
  process.exit(1);
}

/** Runs a command with both its outputs on standard error; true when it succeeded. */
function run(/** @type {string} */ command, /** @type {string[]} */ args, env = process.env) {
  // npm is a command file on Windows, which only a shell starts
  return (
    spawnSync(command, args, { cwd: top, env, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' }).status ===
    0
  );
}

function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  const [leastMajor = 0, leastMinor = 0] = LEAST_NODE;
  if (major < leastMajor || (major === leastMajor && minor < leastMinor))
    stop(`Node ${LEAST_NODE.join('.')} or newer is needed; this is Node ${process.versions.node}.`);
}

/** What each package is, by its place; npm's own record leaves out the top and the optional packages of other machines. */
function packagesOf(/** @type {string} */ file) {
  return /** @type {Record<string, { version?: string, integrity?: string, optional?: boolean, peer?: boolean }>} */ (
    JSON.parse(readFileSync(file, 'utf8')).packages ?? {}
  );
}

function packagesAreCurrent() {
  if (!existsSync(installedFile)) return false;
  // a fresh clone or a touched file is newer than the installation without being different: then the contents decide
  if (statSync(lockFile).mtimeMs <= statSync(installedFile).mtimeMs) return true;
  try {
    const wanted = packagesOf(lockFile);
    const installed = packagesOf(installedFile);
    const same = (/** @type {string} */ place) =>
      installed[place]?.version === wanted[place]?.version && installed[place]?.integrity === wanted[place]?.integrity;
    const wantedAreThere = Object.keys(wanted).every(
      (place) => place === '' || same(place) || (wanted[place]?.optional === true && installed[place] === undefined),
    );
    return wantedAreThere && Object.keys(installed).every((place) => wanted[place] !== undefined);
  } catch {
    return false;
  }
}

function ensurePackages() {
  if (packagesAreCurrent()) return;
  say('installing the packages of package-lock.json …');
  if (!run('npm', ['ci', '--no-audit', '--no-fund']))
    stop('the packages could not be installed; the words of npm above say why. Run "npm ci" once that is mended.');
}

function ensureBrowser() {
  const named = process.env.CHROMIUM;
  const browser = named ?? '/usr/bin/chromium';
  if (existsSync(browser)) return;
  if (named !== undefined)
    stop(`CHROMIUM names ${named}, which does not exist; let it name a Chromium or Chrome executable.`);
  const mayInstall = process.getuid?.() === 0 && spawnSync('apt-get', ['--version'], { stdio: 'ignore' }).status === 0;
  if (mayInstall) {
    say('installing Chromium for the browser tests …');
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    if (
      run('apt-get', ['update'], env) &&
      run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], env) &&
      existsSync(browser)
    )
      return;
  }
  stop(
    `the browser tests need Chromium, and ${browser} does not exist: install it (Debian: "apt-get install chromium" as root), or let the environment variable CHROMIUM name a Chromium or Chrome executable.`,
  );
}

checkNode();
ensurePackages();
if (process.argv.includes('--browser')) ensureBrowser();
