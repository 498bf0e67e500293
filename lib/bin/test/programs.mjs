import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';

/** Chromium without windows: the same pages in three quarters of the processor's time. */
const HEADLESS = 'chromium-headless-shell';

/** Chromium and PostgreSQL, from the system's packages. Installs them where it may; else says what to install. */
export function installPrograms() {
  const wanted = [
    // Where it can't be had, the whole browser does.
    ...(existsSync(`/usr/bin/${HEADLESS}`) ? [] : [HEADLESS]),
    ...(hasPostgresql() ? [] : ['postgresql']),
  ];
  if (wanted.length > 0 && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log(`Installing ${wanted.join(' and ')} …`);
    apt('update', '-qq');
    for (const name of wanted) install(name);
    if (!chromium()) install('chromium');
  }
  const missing = [...(chromium() ? [] : ['chromium']), ...(hasPostgresql() ? [] : ['postgresql'])];
  if (missing.length > 0)
    throw new Error(`The tests need ${missing.join(' and ')}: on Debian, apt-get install ${missing.join(' ')}.`);
}

const install = (name) => apt('install', '-y', '-qq', '--no-install-recommends', name);

function apt(...words) {
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  spawnSync('apt-get', words, { stdio: ['ignore', 'ignore', 'inherit'], env: environment });
}

/** CHROMIUM in the environment goes first. */
export function chromium() {
  const places = [
    process.env.CHROMIUM,
    `/usr/bin/${HEADLESS}`,
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/snap/bin/chromium',
  ];
  return places.find((place) => place && existsSync(place)) ?? null;
}

function hasPostgresql() {
  const versions = '/usr/lib/postgresql';
  const inPath = (process.env.PATH ?? '')
    .split(':')
    .some((folder) => existsSync(`${folder}/initdb`) && existsSync(`${folder}/postgres`));
  return (
    inPath ||
    (existsSync(versions) && readdirSync(versions).some((version) => existsSync(`${versions}/${version}/bin/initdb`)))
  );
}
