import { afterEach, expect, it, vi } from 'vitest';
import { startSender } from '@/app/_bench/session/sender';
import { builtInDocument, type SpacingDocument } from '@/shared/editing/document';
import { openJournal, writeChange, type Written } from '@/shared/editing/journal';
import { record } from '@/shared/editing/history';
import { advance, isSaved } from '@/shared/editing/sync';
import { sameDocument } from '@/shared/editing/document';
import type { SaveRequest } from '@/shared/schemas/draft';
import { toyStore } from '../shared/editing/toy-device';

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const scope = { personKey: 'person', draftId: 'draft', pairCount: 3 };

/** A bench whose server refuses the first `refusals` saves with 429, and keeps what it takes after that. */
function openBench(refusals: number, retryAfter: string) {
  vi.useFakeTimers();
  const nothing = () => undefined;
  vi.stubGlobal('window', { addEventListener: nothing, removeEventListener: nothing });
  vi.stubGlobal('document', { visibilityState: 'visible', addEventListener: nothing, removeEventListener: nothing });
  vi.stubGlobal('navigator', {});
  const stored: SaveRequest[] = [];
  const askedAt: number[] = [];
  vi.stubGlobal('fetch', (_address: string, { body }: { body: string }) => {
    askedAt.push(Date.now());
    if (askedAt.length <= refusals)
      return Promise.resolve(
        Response.json({ error: { code: 'TOO_MANY' } }, { status: 429, headers: { 'retry-after': retryAfter } }),
      );
    stored.push(JSON.parse(body) as SaveRequest);
    return Promise.resolve(Response.json({ version: stored.length }));
  });

  const device = toyStore();
  const opened = openJournal(device, scope, { version: 0, document: builtInDocument(3) });
  let { history, sync } = opened;
  let written: Written | null = opened.written;
  let seq = 0;
  const sender = startSender({
    address: '/save',
    draftId: scope.draftId,
    device,
    scope,
    sync: () => sync,
    setSync: (next) => (sync = next),
    reopen: nothing,
  });
  return {
    stored,
    askedAt,
    saved: () => isSaved(sync),
    set: (offset: number) => {
      const document: SpacingDocument = { ...builtInDocument(3), offsets: [offset, 0, 0] };
      history = record(history, document, sameDocument);
      seq += 1;
      const change = { clientId: 'bench', seq, document };
      written = writeChange(device, scope, change, history, written);
      sync = advance(sync, { kind: 'changed', change });
      sender.kick();
    },
  };
}

it('waits as long as it is told, and then sends what was refused and what came after', async () => {
  const { set, stored, askedAt, saved } = openBench(3, '30');
  set(-10);
  await vi.advanceTimersByTimeAsync(5_000);
  expect(askedAt).toHaveLength(1);
  await vi.advanceTimersByTimeAsync(3 * 40_000);
  set(-25);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(saved()).toBe(true);
  expect(stored.map(({ seq, spacing }) => [seq, spacing.offsets[0]])).toEqual([
    [1, -10],
    [2, -25],
  ]);
  for (const [place, at] of askedAt.slice(1, 4).entries()) expect(at - askedAt[place]!).toBeGreaterThanOrEqual(30_000);
});

it('loses nothing that is changed while it waits', async () => {
  const { set, stored, saved } = openBench(4, '9');
  for (let offset = 1; offset <= 40; offset += 1) {
    set(-offset);
    await vi.advanceTimersByTimeAsync(1_000);
  }
  await vi.advanceTimersByTimeAsync(120_000);
  expect(saved()).toBe(true);
  expect(stored.at(-1)!.spacing.offsets[0]).toBe(-40);
});
