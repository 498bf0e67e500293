import { build } from 'esbuild';

/**
 * `worker` is the painter's thread, asked for by its own name beside the page; `parts` are the files that the page's
 * code is divided into, by name, and `later` those of them that it fetches only when they are needed.
 */
export type Bundle = { js: string; css: string; worker: string; parts: Map<string, string>; later: Set<string> };

/** The bench and its style as the browser gets them, without Next. `frameworkToo` leaves React in. */
export async function bundleBench(entry: string, frameworkToo = true): Promise<Bundle> {
  const [page, worker] = await Promise.all([
    bundle(entry, frameworkToo),
    bundle('app/_bench/drawing/painter.worker.ts', true),
  ]);
  return { ...page, worker: worker.js };
}

async function bundle(entry: string, frameworkToo: boolean): Promise<Omit<Bundle, 'worker'>> {
  const result = await build({
    entryPoints: [entry],
    bundle: true,
    minify: true,
    write: false,
    outdir: 'out',
    format: 'esm',
    splitting: true,
    metafile: true,
    entryNames: 'bench',
    chunkNames: 'part-[hash]',
    target: 'es2022',
    jsx: 'automatic',
    // Next's link asks for more of its settings than there are here.
    define: { 'process.env.NODE_ENV': '"production"', 'process.env': '{}' },
    loader: { '.woff2': 'dataurl' },
    external: frameworkToo ? [] : ['react', 'react-dom', 'react-dom/client', 'react/jsx-runtime', 'next/*'],
    logLevel: 'error',
  });
  const parts = new Map<string, string>();
  for (const { path, text } of result.outputFiles) parts.set(path.slice(path.lastIndexOf('/') + 1), text);
  const outputs = result.metafile.outputs;
  const now = new Set<string>();
  const follow = (path: string) => {
    if (now.has(path)) return;
    now.add(path);
    for (const next of outputs[path]?.imports ?? [])
      if (next.kind === 'import-statement' && !next.external) follow(next.path);
  };
  follow('out/bench.js');
  const [js, css] = [parts.get('bench.js') ?? '', parts.get('bench.css') ?? ''];
  for (const name of ['bench.js', 'bench.css']) parts.delete(name);
  return { js, css, parts, later: new Set([...parts.keys()].filter((name) => !now.has(`out/${name}`))) };
}
