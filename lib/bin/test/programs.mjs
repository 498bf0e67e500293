import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';

/** Chromium and PostgreSQL, from the system's packages. Installs them where it may; else says what to install. */
export function installPrograms() {
  const missing = [...(chromium() ? [] : ['chromium']), ...(hasPostgresql() ? [] : ['postgresql'])];
  if (missing.length === 0) return;
  const advice = `The tests need ${missing.join(' and ')}: on Debian, apt-get install ${missing.join(' ')}.`;
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) throw new Error(advice);
  console.log(`Installing ${missing.join(' and ')} …`);
  const quiet = { stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
  spawnSync('apt-get', ['update', '-qq'], quiet);
  const result = spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...missing], quiet);
  if (result.status !== 0 || !chromium() || !hasPostgresql())
    throw new Error(`apt-get could not install it. ${advice}`);
}

/** CHROMIUM in the environment goes first. */
export function chromium() {
  const places = [
    process.env.CHROMIUM,
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
