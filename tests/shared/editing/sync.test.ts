import { describe, expect, it } from 'vitest';
import { advance, isSaved, nextToSend, startSync, type Sync, type SyncEvent } from '@/shared/editing/sync';

const spacing = (offset: number) => ({ tracking: 0, offsets: [offset] });
const change = (seq: number, offset: number) => ({ clientId: 'a', seq, document: spacing(offset) });
const run = (...events: SyncEvent[]): Sync => events.reduce(advance, startSync({ version: 3, document: spacing(0) }));

describe('one draft between bench and server', () => {
  it('is saved once the server has taken the newest change', () => {
    const sent = run({ kind: 'changed', change: change(1, 5) }, { kind: 'sending' });
    expect(nextToSend(sent)).toMatchObject({ seq: 1, baseVersion: 3 });
    expect(isSaved(sent)).toBe(false);
    const done = advance(sent, { kind: 'accepted', version: 4 });
    expect(isSaved(done)).toBe(true);
    expect(done.server).toEqual({ version: 4, document: spacing(5) });
  });
  it('sends a change again as it was when no answer came, and the newer one after it', () => {
    let sync = run(
      { kind: 'changed', change: change(1, 5) },
      { kind: 'sending' },
      { kind: 'changed', change: change(2, 9) },
      { kind: 'unreachable' },
    );
    expect(nextToSend(sync)).toMatchObject({ seq: 1, baseVersion: 3, document: spacing(5) });
    sync = advance(sync, { kind: 'accepted', version: 4 });
    expect(nextToSend(sync)).toMatchObject({ seq: 2, baseVersion: 4, document: spacing(9) });
    expect(sync.trouble.kind).toBe('none');
  });
  it('shows a conflict, sends nothing until a choice is made, and keeps what is done meanwhile', () => {
    const theirs = { version: 8, document: spacing(-40) };
    let sync = run({ kind: 'changed', change: change(1, 5) }, { kind: 'sending' }, { kind: 'conflicted', theirs });
    expect(sync.conflict).toEqual(theirs);
    sync = advance(sync, { kind: 'changed', change: change(2, 6) });
    expect(nextToSend(sync)).toBeNull();
    expect(nextToSend(advance(sync, { kind: 'chose mine' }))).toMatchObject({
      seq: 2,
      baseVersion: 8,
      document: spacing(6),
    });
    const yielded = advance(sync, { kind: 'chose theirs' });
    expect(isSaved(yielded)).toBe(true);
    expect(yielded.server).toEqual(theirs);
  });
  it('takes a conflict with its own change for the answer that went missing', () => {
    const sync = run(
      { kind: 'changed', change: change(1, 5) },
      { kind: 'sending' },
      { kind: 'conflicted', theirs: { version: 4, document: spacing(5) } },
    );
    expect(isSaved(sync)).toBe(true);
    expect(sync.server.version).toBe(4);
  });
  it('follows another window while nothing is unsent here, and asks when something is', () => {
    const news = { kind: 'heard' as const, server: { version: 4, document: spacing(7) } };
    expect(run(news).server.version).toBe(4);
    expect(run({ kind: 'changed', change: change(1, 5) }, news).conflict).toEqual(news.server);
    expect(run({ kind: 'heard', server: { version: 2, document: spacing(1) } }).server.version).toBe(3);
  });
  it('keeps everything through an ended session and a refusal', () => {
    const out = run({ kind: 'changed', change: change(1, 5) }, { kind: 'sending' }, { kind: 'signed out' });
    expect(nextToSend(out)).toMatchObject({ seq: 1 });
    const refused = advance(out, { kind: 'refused', reason: 'the round is over' });
    expect(nextToSend(refused)).toBeNull();
    expect(isSaved(refused)).toBe(false);
    expect(nextToSend(advance(refused, { kind: 'changed', change: change(2, 6) }))).toMatchObject({ seq: 2 });
  });
  it('has nothing to send when a change is taken back before it was sent', () => {
    expect(isSaved(run({ kind: 'changed', change: change(1, 5) }, { kind: 'changed', change: change(2, 0) }))).toBe(
      true,
    );
  });
});
