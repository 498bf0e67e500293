import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';

const stampFile = 'node_modules/.kerncrit-installed';

/** Installs exactly the packages of package-lock.json, unless they are already there. */
export function installIfChanged() {
  const lock = readFileSync('package-lock.json', 'utf8');
  const stamp = createHash('sha256').update(lock).digest('hex');
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp) return;
  if (!isInstalled(JSON.parse(lock))) {
    console.log('Installing packages (a few minutes the first time) …');
    run(['ci', '--include=dev', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error']);
  }
  writeFileSync(stampFile, stamp);
}

/** npm's own list of what it installed: sufficient after an installation by hand. */
function isInstalled({ packages }) {
  const list = 'node_modules/.package-lock.json';
  if (!existsSync(list)) return false;
  const there = JSON.parse(readFileSync(list, 'utf8')).packages;
  return Object.entries(packages).every(
    ([place, { version, optional }]) =>
      place === '' || optional || (there[place]?.version === version && existsSync(`${place}/package.json`)),
  );
}

function run(words) {
  const npm = process.env.npm_execpath;
  const [program, first] = npm ? [process.execPath, [npm]] : ['npm', []];
  const result = spawnSync(program, [...first, ...words], {
    stdio: 'inherit',
    shell: !npm && process.platform === 'win32',
  });
  if (result.status !== 0)
    throw new Error('The packages could not be installed: see npm’s output above. Is there a network connection?');
}
