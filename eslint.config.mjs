import next from 'eslint-config-next/core-web-vitals';
import typescript from 'eslint-config-next/typescript';

export default [
  { ignores: ['.next/**', 'prisma/generated/**', 'node_modules/**', 'next-env.d.ts', 'data/**', 'test-results/**', 'playwright-report/**'] },
  ...next,
  ...typescript,
  {
    rules: {
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/no-explicit-any': 'error',
    },
  },
  {
    files: ['app/**', 'lib/**'],
    ignores: ['lib/env.ts'],
    rules: {
      'no-restricted-properties': ['error', { object: 'process', property: 'env', message: 'Read settings from lib/env.ts, which checks them once and says what is wrong.' }],
    },
  },
];
