// Found where a test says `vitest`: small-runner.ts put it there.
type Api = typeof import('vitest');

const api = (globalThis as unknown as { __vitest: Api }).__vitest;
export const { describe, it, expect, beforeAll, beforeEach, afterEach, afterAll } = api;
export const test = api.it;
