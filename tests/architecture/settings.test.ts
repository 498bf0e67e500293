import { expect, test } from 'vitest';
import { readSources } from './source-tree';

test('only lib/env.ts reads process.env in app and lib; commands that run before the build (*.mjs) pass it on', () => {
  const readers = [...readSources().values()].filter(
    (file) =>
      /^(app|lib)\//.test(file.path) &&
      !file.path.endsWith('.mjs') &&
      /process\s*\.\s*env\b|process\[/.test(file.text.replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '')),
  );
  expect(readers.map((file) => file.path)).toEqual(['lib/env.ts']);
});
