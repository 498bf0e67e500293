import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import type { BenchProps } from '@/app/_bench/props';
import { fromWire, toWire } from '@/shared/editing/wire';
import { saveRequestSchema } from '@/shared/schemas/draft';
import { toyServer, type ToyServer } from '../../shared/editing/toy-device';
import type { Bundle } from './bundle';

/** How the server behaves at the moment. */
export type Manner = 'well' | 'silent' | 'answer lost' | 'signed out' | 'refuses';

export type BenchServer = {
  address: string;
  toy(): ToyServer;
  behave(manner: Manner): void;
  props: Partial<BenchProps> & { guided?: boolean; practice?: boolean };
  requests: number;
  close(): Promise<void>;
};

/** Serves one bench page and keeps its draft by the rules of the wire. */
export async function serveBench(bundle: Bundle, props: BenchProps): Promise<BenchServer> {
  let manner: Manner = 'well';
  const toy = toyServer({ tracking: props.spacing.tracking, offsets: props.spacing.offsets });
  const fonts = await fontFaces();
  const server = createServer((request, response) => {
    if (request.method === 'PUT') {
      let body = '';
      request.on('data', (chunk) => (body += String(chunk)));
      request.on('end', () => {
        here.requests += 1;
        const answer = (status: number, value: unknown) =>
          response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(value));
        if (manner === 'silent') return request.socket.destroy();
        if (manner === 'signed out') return answer(401, { error: { code: 'SIGNED_OUT', message: 'Sign in again.' } });
        if (manner === 'refuses') return answer(403, { error: { code: 'CLOSED', message: 'The round is over.' } });
        const sent = saveRequestSchema.parse(JSON.parse(body));
        const result = toy.put({ ...sent, document: fromWire(sent) });
        if (manner === 'answer lost') return request.socket.destroy();
        if ('version' in result) answer(200, result);
        else answer(409, { conflict: { version: result.conflict.version, ...toWire(result.conflict.document) } });
      });
      return;
    }
    if (request.url === '/bench.js')
      return response.writeHead(200, { 'content-type': 'text/javascript' }).end(bundle.js);
    if (request.url === '/painter.worker.ts')
      return response.writeHead(200, { 'content-type': 'text/javascript' }).end(bundle.worker);
    const part = bundle.parts.get((request.url ?? '').slice(1));
    if (part !== undefined) return response.writeHead(200, { 'content-type': 'text/javascript' }).end(part);
    if (request.url === '/bench.css') return response.writeHead(200, { 'content-type': 'text/css' }).end(bundle.css);
    const { version, document } = toy.kept();
    const given = {
      ...props,
      ...here.props,
      version,
      ...(({ spacing, tolerances, reasons }) => ({
        spacing,
        ...(tolerances && { tolerances }),
        ...(reasons && { reasons }),
      }))(toWire(document)),
    };
    response.writeHead(200, { 'content-type': 'text/html' }).end(page(given, fonts));
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const here: BenchServer = {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    toy: () => toy,
    behave: (next) => (manner = next),
    props: {},
    requests: 0,
    close: () =>
      new Promise((done) => {
        server.closeAllConnections();
        server.close(() => done());
      }),
  };
  return here;
}

function page(props: object, fonts: string): string {
  const data = JSON.stringify(props).replace(/</g, '\\u003c');
  return `<!doctype html><html lang="en-GB"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Bench</title><link rel="icon" href="data:,"><link rel="stylesheet" href="/bench.css"><style>${fonts}</style></head><body><main id="main" class="page ${'practice' in props && props.practice ? 'page-wide' : 'page-workbench'}"></main><script type="application/json" id="props">${data}</script><script type="module" src="/bench.js"></script></body></html>`;
}

/** The two families of the screens, from their packages. */
async function fontFaces(): Promise<string> {
  const face = async (name: string, path: string, weight: string) =>
    `@font-face{font-family:'${name}';font-weight:${weight};src:url(data:font/woff2;base64,${(await readFile(path)).toString('base64')})}`;
  const text = await face(
    'Bench Text',
    'node_modules/@fontsource-variable/source-serif-4/files/source-serif-4-latin-opsz-normal.woff2',
    '200 900',
  );
  const plain = await Promise.all(
    [400, 600].map((weight) =>
      face(
        'Bench Plain',
        `node_modules/@fontsource/source-sans-3/files/source-sans-3-latin-${weight}-normal.woff2`,
        String(weight),
      ),
    ),
  );
  return `${text}${plain.join('')}:root{--font-text:'Bench Text';--font-plain:'Bench Plain'}`;
}
