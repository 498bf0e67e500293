// `node lib/bin/run.mjs WHAT …`: what every npm command goes through. Runs a file of ours, or the program of an
// installed package, under this Node, or, where it is too old, under a newer one that is fetched once.
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { goOnUnder, isOldNode, newerNode } from './newer-node.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const [what, ...words] = process.argv.slice(2);
if (isOldNode(process.versions.node)) orSay(() => goOnUnder(newerNode(), [process.argv[1], what, ...words]));
else {
  const file = orSay(() => (what.includes('/') ? path.join(root, what) : programOf(what)));
  process.argv.splice(1, 2, file);
  await import(pathToFileURL(file).href);
}

function orSay(act) {
  try {
    return act();
  } catch (error) {
    console.error(`\n${error.message}`);
    process.exit(1);
  }
}

/** The file that an installed package gives as its program. */
function programOf(name) {
  const require = createRequire(import.meta.url);
  let manifest;
  try {
    manifest = require.resolve(`${name}/package.json`);
  } catch {
    throw new Error(`“${name}” isn’t installed: npm start installs everything, and so does npm ci.`);
  }
  const { bin } = require(manifest);
  return path.join(path.dirname(manifest), typeof bin === 'string' ? bin : bin[name]);
}
