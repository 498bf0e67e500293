import { readFileSync } from 'node:fs';
import path from 'node:path';
import { build, type Plugin } from 'esbuild';
import { withMutants, type Mutant } from './mutate';

/** A test file as one program that can be loaded again and again. `holds`: the changed files that are in it. */
export type TestBundle = { test: string; code: string; holds: string[]; golden: boolean };

const root = path.resolve('.');
const shim = path.resolve('tests/bench/mutants/stand-in.ts');

/** All files with their mutants inside, numbered through. */
export function mutateAll(files: readonly string[]): { mutants: Mutant[]; codeOf: Map<string, string> } {
  const codeOf = new Map<string, string>();
  const mutants: Mutant[] = [];
  for (const file of files) {
    const made = withMutants(file, readFileSync(file, 'utf8'), mutants.length);
    mutants.push(...made.mutants);
    codeOf.set(file, made.code);
  }
  return { mutants, codeOf };
}

/** A golden file notices change and not meaning: tests that hold against one are no witnesses here. */
const isGolden = (input: string) => /fixtures\/(golden|engine-)|golden\.test|same-in-chromium/.test(input);

export async function bundleTest(test: string, codeOf: ReadonlyMap<string, string>): Promise<TestBundle> {
  const result = await build({
    entryPoints: [test],
    bundle: true,
    write: false,
    metafile: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    jsx: 'automatic',
    // A program in a virtual machine can't import while it runs; what it would wait for is there (worker.ts).
    supported: { 'dynamic-import': false },
    packages: 'external',
    logLevel: 'silent',
    plugins: [changed(codeOf)],
  });
  const inputs = Object.keys(result.metafile.inputs);
  return {
    test,
    code: result.outputFiles[0]!.text,
    holds: inputs.filter((input) => codeOf.has(input)),
    golden: inputs.some(isGolden),
  };
}

/** The worker as one program; packages are found from the top folder. */
export async function bundleWorker(): Promise<string> {
  const result = await build({
    entryPoints: ['tests/bench/mutants/worker.ts'],
    bundle: true,
    write: false,
    platform: 'node',
    format: 'cjs',
    packages: 'external',
  });
  return result.outputFiles[0]!.text;
}

const changed = (codeOf: ReadonlyMap<string, string>): Plugin => ({
  name: 'mutants',
  setup(setup) {
    setup.onResolve({ filter: /^vitest$/ }, () => ({ path: shim }));
    setup.onResolve({ filter: /^server-only$/ }, () => ({ path: path.resolve('tests/fixtures/server-only.ts') }));
    setup.onLoad({ filter: /\.tsx?$/ }, ({ path: file }) => {
      if (file.includes('node_modules')) return null;
      const text = codeOf.get(path.relative(root, file)) ?? readFileSync(file, 'utf8');
      const contents = text
        .replaceAll('import.meta.url', JSON.stringify(`file://${file}`))
        .replaceAll('import.meta.dirname', JSON.stringify(path.dirname(file)));
      return { contents, loader: file.endsWith('x') ? 'tsx' : 'ts' };
    });
  },
});
