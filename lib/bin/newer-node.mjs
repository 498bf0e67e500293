import { spawn, spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, readFileSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

// Plain JavaScript that an old Node can still read: it runs before anything else.

const pinned = fileURLToPath(new URL('newer-node/', import.meta.url));
/** Beside the packages, not among them: these are installed by it. */
const folder = fileURLToPath(new URL('../../.node/', import.meta.url));

/** @returns {string} the oldest Node that package.json allows, as `major.minor` */
export function neededNode() {
  const { engines } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
  return engines.node.replace('>=', '');
}

/** @param {string} version as `process.versions.node` has it */
export function isOldNode(version, needed = neededNode()) {
  const [major, minor] = version.split('.').map(Number);
  const [needMajor, needMinor] = needed.split('.').map(Number);
  return major < needMajor || (major === needMajor && minor < needMinor);
}

/**
 * A Node that is new enough, from the registry, fetched the first time: the versions and checksums stand in
 * newer-node/package-lock.json.
 * @returns {string} the program
 * @throws where this kind of machine has none, or it can't be fetched
 */
export function newerNode({ platform = process.platform, arch = process.arch } = {}) {
  const { packages } = JSON.parse(readFileSync(path.join(pinned, 'package-lock.json'), 'utf8'));
  const found = Object.entries(packages).find(
    ([place, each]) => place && each.os.includes(platform) && each.cpu.includes(arch),
  );
  const own = `This is Node ${process.versions.node}; Kerncrit needs ${neededNode()} or later`;
  if (!found) throw new Error(`${own}, and none can be fetched for ${platform} on ${arch}: install one (nodejs.org).`);
  const [place, { version, bin }] = found;
  const program = path.join(folder, place, bin.node);
  if (versionOf(program) !== version) {
    console.error(`${own}. Fetching Node ${version}, once, into the folder .node …`);
    mkdirSync(folder, { recursive: true });
    for (const name of ['package.json', 'package-lock.json']) copyFileSync(path.join(pinned, name), folder + name);
    npm(['ci', '--prefix', folder, '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error']);
    if (versionOf(program) !== version)
      throw new Error(`${own}, and Node ${version} could not be fetched: see above, or install one (nodejs.org).`);
  }
  return realpathSync(program);
}

/**
 * Runs a program of Node's under the newer one, in this one's place: same words, folder, input and output; signals go
 * on to it, and this process ends as it does.
 */
export function goOnUnder(node, words) {
  const separator = process.platform === 'win32' ? ';' : ':';
  const child = spawn(node, words, {
    stdio: 'inherit',
    env: {
      ...process.env,
      PATH: `${path.dirname(node)}${separator}${process.env.PATH}`,
      npm_node_execpath: node,
      NODE: node,
    },
  });
  // A terminal sends Ctrl-C to both; who stops this process alone means the other.
  for (const signal of ['SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  process.on('SIGINT', () => undefined);
  // npm dies of a signal without passing it on: its end means the other, too.
  const parent = process.ppid;
  if (process.env.npm_lifecycle_event) setInterval(() => process.ppid !== parent && child.kill('SIGTERM'), 500).unref();
  child.once('error', (error) => {
    console.error(error.message);
    process.exitCode = 1;
  });
  child.once('exit', (code, signal) => {
    if (!signal) return process.exit(code ?? 1);
    process.removeAllListeners(signal);
    process.kill(process.pid, signal);
  });
}

function versionOf(program) {
  if (!existsSync(program)) return null;
  const { stdout } = spawnSync(program, ['--version'], { encoding: 'utf8' });
  return stdout?.trim().replace(/^v/, '') ?? null;
}

function npm(words) {
  const own = process.env.npm_execpath;
  const [program, first] = own ? [process.execPath, [own]] : ['npm', []];
  spawnSync(program, [...first, ...words], {
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: !own && process.platform === 'win32',
  });
}
