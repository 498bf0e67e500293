/** @type {import('next').NextConfig} */
const config = {
  poweredByHeader: false,
  reactStrictMode: true,
  // These carry WebAssembly or native code and are loaded by Node as they are.
  serverExternalPackages: ['harfbuzzjs', 'wawoff2', 'better-sqlite3', '@node-rs/argon2', 'pg'],
  // Types and lint are checked by `npm test`, once.
  typescript: { ignoreBuildErrors: true },
};

export default config;
