import { build } from 'esbuild';

export type Bundle = { js: string; css: string };

/** The bench and its style as the browser gets them, without Next. `frameworkToo` leaves React in. */
export async function bundleBench(entry: string, frameworkToo = true): Promise<Bundle> {
  const result = await build({
    entryPoints: [entry],
    bundle: true,
    minify: true,
    write: false,
    outdir: 'out',
    format: 'esm',
    target: 'es2022',
    jsx: 'automatic',
    define: { 'process.env.NODE_ENV': '"production"' },
    loader: { '.woff2': 'dataurl' },
    external: frameworkToo ? [] : ['react', 'react-dom', 'react-dom/client', 'react/jsx-runtime', 'next/*'],
    logLevel: 'error',
  });
  const text = (extension: string) => result.outputFiles.find(({ path }) => path.endsWith(extension))?.text ?? '';
  return { js: text('.js'), css: text('.css') };
}
