import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/**
 * Two secrets of this installation, made at the first start and stored in a file that only its owner can read: without
 * them every restart would sign everyone out and break forms open in browsers. Values from the environment take
 * precedence.
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
