import { readFileSync } from 'node:fs';
import { parseEnv } from 'node:util';

const help = `npm start -- [options]
  --port NUMBER   where to listen (PORT; 3000)
  --host ADDRESS  on which address (HOST; 127.0.0.1, this machine only)
  --real          begin without the demo course (DEMO=no); a link for the first instructor is printed
Everything else is set in the environment, or in the file .env: see the README.`;

/** @returns {{ host: string, port: number, dataDirectory: string, environment: Record<string, string> }} */
export function readOptions(words, environment) {
  if (words.includes('--help')) {
    console.log(help);
    process.exit(0);
  }
  const given = { ...fromFile(), ...environment };
  const chosen = fromWords(words);
  const host = chosen['--host'] ?? given.HOST ?? '127.0.0.1';
  const port = portOf(chosen['--port'] ?? given.PORT ?? '3000');
  const named = host === '0.0.0.0' || host === '::' ? 'localhost' : host.includes(':') ? `[${host}]` : host;
  const address = given.NEXTAUTH_URL ?? `http://${named}:${port}`;
  return {
    host,
    port,
    address,
    dataDirectory: given.DATA_DIR ?? './data',
    environment: {
      ...fromFile(),
      ...environment,
      NODE_ENV: 'production',
      HOST: host,
      PORT: String(port),
      NEXTAUTH_URL: address,
      NEXT_TELEMETRY_DISABLED: '1',
      ...(chosen['--real'] ? { DEMO: 'no' } : {}),
    },
  };
}

function fromWords(words) {
  const chosen = {};
  for (let index = 0; index < words.length; index += 1) {
    const word = words[index];
    if (word === '--real') chosen[word] = 'yes';
    else if (word === '--port' || word === '--host') {
      chosen[word] = words[(index += 1)];
      if (chosen[word] === undefined) throw new Error(`${word} needs a value.\n${help}`);
    } else throw new Error(`"${word}" is not an option.\n${help}`);
  }
  return chosen;
}

function portOf(text) {
  const port = Number(text);
  if (!Number.isInteger(port) || port < 1 || port > 65535)
    throw new Error(`The port is "${text}"; it must be a whole number from 1 to 65535.`);
  return port;
}

/** The file .env, if there is one, read as lib/env.ts reads it; the environment itself takes precedence. */
function fromFile() {
  try {
    return parseEnv(readFileSync('.env', 'utf8'));
  } catch (error) {
    if (error.code === 'ENOENT') return {};
    throw error;
  }
}
