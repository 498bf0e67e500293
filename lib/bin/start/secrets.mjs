import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/**
 * Two secrets of this installation, made at the first start and kept, readable by nobody else: without them every
 * restart would sign everyone out and break the forms that stand open in browsers. What the environment gives goes
 * first.
 */
export function secretsOf({ dataDirectory }) {
  const file = path.join(dataDirectory, 'secrets.json');
  if (existsSync(file)) return JSON.parse(readFileSync(file, 'utf8'));
  const secrets = {
    NEXTAUTH_SECRET: randomBytes(32).toString('base64url'),
    NEXT_SERVER_ACTIONS_ENCRYPTION_KEY: randomBytes(32).toString('base64'),
  };
  mkdirSync(dataDirectory, { recursive: true });
  writeFileSync(file, `${JSON.stringify(secrets, null, 2)}\n`, { mode: 0o600, flag: 'wx' });
  return secrets;
}
