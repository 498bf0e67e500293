import next from 'eslint-config-next/core-web-vitals';
import typescript from 'eslint-config-next/typescript';

const config = [
  {
    ignores: [
      '.next/**',
      'prisma/generated/**',
      'node_modules/**',
      '.node/**',
      'next-env.d.ts',
      '/data/**',
      'test-results/**',
      'playwright-report/**',
    ],
  },
  // React is in app and in *.tsx only; its compiler's rules, run on everything else, were half of the time.
  ...next.map((entry) => (entry.rules ? { ...entry, files: ['app/**/*.{ts,tsx}', '**/*.tsx'] } : entry)),
  ...typescript,
  {
    rules: {
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/no-explicit-any': 'error',
      // One name means one thing at a place. A type and a value may share a name, and so may the parameters of a function's type.
      '@typescript-eslint/no-shadow': ['error', { hoist: 'functions-and-types', ignoreTypeValueShadow: true }],
      // There is no pages directory for it to look into.
      '@next/next/no-html-link-for-pages': 'off',
    },
  },
  {
    files: ['app/**', 'lib/**'],
    // The commands in plain JavaScript run before anything is installed, and hand the environment on to other programs.
    ignores: ['lib/env.ts', 'lib/bin/**/*.mjs'],
    rules: {
      'no-restricted-properties': [
        'error',
        {
          object: 'process',
          property: 'env',
          message: 'Read settings from lib/env.ts, which checks them once and says what is wrong.',
        },
      ],
    },
  },
];

export default config;
