import { build } from 'esbuild';

/** `worker` is the painter's thread, asked for by its own name beside the page. */
export type Bundle = { js: string; css: string; worker: string };

/** The bench and its style as the browser gets them, without Next. `frameworkToo` leaves React in. */
export async function bundleBench(entry: string, frameworkToo = true): Promise<Bundle> {
  const [page, worker] = await Promise.all([
    bundle(entry, frameworkToo),
    bundle('app/_bench/drawing/painter.worker.ts', true),
  ]);
  return { ...page, worker: worker.js };
}

async function bundle(entry: string, frameworkToo: boolean): Promise<{ js: string; css: string }> {
  const result = await build({
    entryPoints: [entry],
    bundle: true,
    minify: true,
    write: false,
    outdir: 'out',
    format: 'esm',
    target: 'es2022',
    jsx: 'automatic',
    // Next's link asks for more of its settings than there are here.
    define: { 'process.env.NODE_ENV': '"production"', 'process.env': '{}' },
    loader: { '.woff2': 'dataurl' },
    external: frameworkToo ? [] : ['react', 'react-dom', 'react-dom/client', 'react/jsx-runtime', 'next/*'],
    logLevel: 'error',
  });
  const text = (extension: string) => result.outputFiles.find(({ path }) => path.endsWith(extension))?.text ?? '';
  return { js: text('.js'), css: text('.css') };
}
