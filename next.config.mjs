// Pages named *.dev.tsx (the guide to our own parts) exist in development only, *.bench.ts(x) (what others are held
// against) in benchmarks only; a production build leaves both out.
const pageExtensions = [
  'tsx',
  'ts',
  ...(process.env.NODE_ENV === 'development' ? ['dev.tsx'] : []),
  ...(process.env.KERNCRIT_BENCH ? ['bench.tsx', 'bench.ts'] : []),
];

/** @type {import('next').NextConfig} */
const config = {
  pageExtensions,
  poweredByHeader: false,
  reactStrictMode: true,
  // These carry WebAssembly or native code and are loaded by Node as they are.
  serverExternalPackages: [
    'pdfkit',
    'fontkit',
    'harfbuzzjs',
    'wawoff2',
    'better-sqlite3',
    '@node-rs/argon2',
    'pg',
    'pino',
    'prom-client',
  ],
  // Everyone gets a page's title in its head at once, never later in the body: what is refused and what was never there
  // are then answered alike, whichever of their parts was ready first.
  htmlLimitedBots: /.*/,
  // Letters that were sent earlier link to the old address.
  redirects: async () => [
    { source: '/courses/:courseId/keeping', destination: '/courses/:courseId/retention', permanent: true },
  ],
  // Types and lint are checked by `npm test`, once.
  typescript: { ignoreBuildErrors: true },
};

export default config;
