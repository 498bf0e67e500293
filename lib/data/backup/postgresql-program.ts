import { execFile } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { promisify } from 'node:util';
import { environmentWith, programFolders } from '@/lib/env';
import { postgresqlFields } from '../postgresql';

/**
 * Runs one of PostgreSQL's own programs on the database of the url. The password goes through the environment, where
 * other people of the machine cannot read it.
 * @throws Error with what the program said.
 */
export async function runPostgresqlProgram(name: string, url: string, options: string[]): Promise<void> {
  const { host, port, user, password, database } = postgresqlFields(url);
  const connection = [`--host=${host}`, `--port=${port}`, `--dbname=${database}`, ...(user ? [`--username=${user}`] : []), '--no-password'];
  const sslmode = new URL(url).searchParams.get('sslmode');
  const env = environmentWith({ ...(typeof password === 'string' ? { PGPASSWORD: password } : {}), ...(sslmode ? { PGSSLMODE: sslmode } : {}) });
  try {
    await promisify(execFile)(findProgram(name), [...connection, ...options], { env });
  } catch (error) {
    const said = error instanceof Error && 'stderr' in error && error.stderr ? String(error.stderr) : String(error);
    throw new Error(`${name} failed: ${said.trim()}`);
  }
}

/**
 * Debian keeps PostgreSQL's programs out of the path, in a folder a version; the latest reads all earlier ones.
 * @throws Error that says what to install.
 */
export function findProgram(name: string): string {
  const found = [...debianFolders(), ...programFolders()].map((folder) => path.join(folder, name)).find((file) => existsSync(file));
  if (!found) throw new Error(`PostgreSQL's program ${name} is not installed here (on Debian: apt-get install postgresql).`);
  return found;
}

function debianFolders(): string[] {
  const versions = '/usr/lib/postgresql';
  if (!existsSync(versions)) return [];
  return readdirSync(versions).sort((one, other) => Number(other) - Number(one)).map((version) => path.join(versions, version, 'bin'));
}
