import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { builtInDocument } from '@/shared/editing/document';
import { present, undo } from '@/shared/editing/history';
import { rootOf } from '@/shared/editing/journal';
import { isSaved } from '@/shared/editing/sync';
import { toyBench, toyServer, toyStore } from './toy-device';

const pairs = 5;
const scope = { personKey: 'mira', draftId: 'd1', pairCount: pairs };

const act = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      kind: fc.constant('edit' as const),
      pair: fc.nat(pairs - 1),
      by: fc.integer({ min: -60, max: 60 }),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({ kind: fc.constant('send' as const), arrives: fc.boolean(), answered: fc.boolean() }),
  },
  { weight: 1, arbitrary: fc.constant({ kind: 'close' as const }) },
);

describe('nothing is lost', () => {
  it('on one device, with requests and answers dropped and the page closed at random', () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 120 }), (acts) => {
        const server = toyServer(builtInDocument(pairs));
        const store = toyStore();
        let opened = 0;
        const open = () => toyBench(store, scope, server, `window-${(opened += 1)}`);
        let bench = open();
        let expected = [...builtInDocument(pairs).offsets];
        for (const next of acts) {
          if (next.kind === 'edit') {
            bench.edit({ kind: 'nudge', run: { first: next.pair, last: next.pair }, by: next.by });
            expected = expected.map((offset, pair) => (pair === next.pair ? offset + next.by : offset));
          } else if (next.kind === 'send') bench.send(next.arrives, next.answered);
          else bench = open();
          expect(present(bench.history()).offsets).toEqual(expected);
          expect(bench.sync().conflict).toBeNull();
        }
        bench = open();
        for (let attempt = 0; attempt < 3; attempt += 1) bench.send(true, true);
        expect(isSaved(bench.sync())).toBe(true);
        expect(server.kept().document.offsets).toEqual(expected);
      }),
      { numRuns: 300 },
    );
  });

  it('not even going back to where the server was while an older change is still on its way, and the page closed then', () => {
    const server = toyServer(builtInDocument(pairs));
    const store = toyStore();
    const bench = toyBench(store, scope, server, 'w1');
    bench.edit({ kind: 'nudge', run: { first: 4, last: 4 }, by: 2 });
    bench.send(false, false);
    bench.edit({ kind: 'nudge', run: { first: 4, last: 4 }, by: -2 });
    const again = toyBench(store, scope, server, 'w2');
    for (let attempt = 0; attempt < 3; attempt += 1) again.send(true, true);
    expect(isSaved(again.sync())).toBe(true);
    expect(server.kept().document.offsets).toEqual([0, 0, 0, 0, 0]);
  });

  it('nor taken for somebody else’s when a closed window’s last request arrives after the next window was opened', () => {
    const server = toyServer(builtInDocument(pairs));
    const store = toyStore();
    const closed = toyBench(store, scope, server, 'w1');
    closed.edit({ kind: 'nudge', run: { first: 1, last: 1 }, by: 5 });
    const next = toyBench(store, scope, server, 'w2');
    // On its way as the window closed: the server has it, the journal says nothing of it.
    server.put({ clientId: 'w1', seq: 1, baseVersion: 0, document: present(closed.history()) });
    next.edit({ kind: 'nudge', run: { first: 2, last: 2 }, by: -20 });
    for (let attempt = 0; attempt < 3; attempt += 1) next.send(true, true);
    expect(next.sync().conflict).toBeNull();
    expect(isSaved(next.sync())).toBe(true);
    expect(server.kept().document.offsets).toEqual([0, 5, -20, 0, 0]);
  });

  it('on two devices: what is not chosen was shown first, and can be taken back by undo', () => {
    const server = toyServer(builtInDocument(pairs));
    const laptop = toyBench(toyStore(), scope, server, 'laptop');
    const tablet = toyBench(toyStore(), scope, server, 'tablet');
    laptop.edit({ kind: 'nudge', run: { first: 0, last: 0 }, by: 10 });
    tablet.edit({ kind: 'nudge', run: { first: 1, last: 1 }, by: -10 });
    laptop.send(true, true);
    tablet.send(true, true);
    expect(tablet.sync().conflict?.document.offsets[0]).toBe(10);
    tablet.choose('theirs');
    expect(present(tablet.history()).offsets).toEqual([10, 0, 0, 0, 0]);
    expect(present(undo(tablet.history())).offsets).toEqual([0, -10, 0, 0, 0]);
    expect(isSaved(tablet.sync())).toBe(true);
  });

  it('keeps the steps of undo through a reload', () => {
    const server = toyServer(builtInDocument(pairs));
    const store = toyStore();
    const first = toyBench(store, scope, server, 'w1');
    for (const by of [5, 5, 5]) first.edit({ kind: 'nudge', run: { first: 2, last: 2 }, by });
    const again = toyBench(store, scope, server, 'w2');
    expect(again.history()).toEqual(first.history());
  });

  it('keeps many steps of undo through reloads, in few entries, what was undone and done otherwise too', () => {
    const server = toyServer(builtInDocument(pairs));
    const store = toyStore();
    let bench = toyBench(store, scope, server, 'w1');
    for (let count = 1; count <= 150; count += 1) {
      bench.edit({ kind: 'nudge', run: { first: count % pairs, last: count % pairs }, by: count });
      if (count % 37 === 0) bench.undo(20);
      if (count % 50 === 0) bench = toyBench(store, scope, server, `w${count}`);
      expect(toyBench(store, scope, server, 'looks').history()).toEqual(bench.history());
    }
    const steps = bench.history().steps.length;
    expect(steps).toBeGreaterThan(32);
    expect([...store.entries.keys()].filter((key) => key.includes('/step/')).length).toBeLessThanOrEqual(
      Math.ceil(steps / 32),
    );
  });

  it('writes one entry for a change, two at most', () => {
    const store = toyStore();
    const bench = toyBench(store, scope, toyServer(builtInDocument(pairs)), 'w1');
    const written: string[] = [];
    const set = store.set;
    store.set = (key, value) => {
      written.push(key);
      set(key, value);
    };
    for (let count = 1; count <= 320; count += 1) bench.edit({ kind: 'nudge', run: { first: 0, last: 0 }, by: 1 });
    expect(written.length).toBeLessThanOrEqual(320 + 320 / 32);
    const last = written.length;
    bench.edit({ kind: 'nudge', run: { first: 0, last: 0 }, by: 1 });
    expect(written.slice(last).length).toBeLessThanOrEqual(2);
  });

  it('reads a journal whose steps stand alone, as they once did, and goes on with it', () => {
    const server = toyServer(builtInDocument(pairs));
    const store = toyStore();
    const root = rootOf(scope);
    const step = (tracking: number) => ({ tracking, offsets: [0, 0, 0, 0, 0] });
    [0, 5, 10].forEach((tracking, index) => store.set(`${root}step/${index}`, JSON.stringify(step(tracking))));
    store.set(`${root}change`, JSON.stringify({ clientId: 'old', seq: 2, document: step(10), cursor: 2, count: 3 }));
    const bench = toyBench(store, scope, server, 'w1');
    expect(bench.history()).toEqual({ steps: [step(0), step(5), step(10)], cursor: 2, gesture: null });
    bench.edit({ kind: 'nudge tracking', by: 5 });
    expect(toyBench(store, scope, server, 'w2').history().steps).toEqual([step(0), step(5), step(10), step(15)]);
    bench.undo(3);
    bench.edit({ kind: 'nudge tracking', by: 7 });
    expect(toyBench(store, scope, server, 'w3').history().steps).toEqual([step(0), step(7)]);
    for (let attempt = 0; attempt < 4; attempt += 1) bench.send(true, true);
    expect(server.kept().document.tracking).toBe(7);
  });

  it('goes back to the newest change alone when steps are missing', () => {
    const server = toyServer(builtInDocument(pairs));
    const store = toyStore();
    const bench = toyBench(store, scope, server, 'w1');
    for (let count = 1; count <= 40; count += 1) bench.edit({ kind: 'nudge', run: { first: 0, last: 0 }, by: 1 });
    store.remove(`${rootOf(scope)}step/0`);
    const again = toyBench(store, scope, server, 'w2');
    expect(again.history().steps).toHaveLength(1);
    expect(present(again.history()).offsets[0]).toBe(40);
    again.edit({ kind: 'nudge', run: { first: 0, last: 0 }, by: 1 });
    expect(toyBench(store, scope, server, 'w3').history()).toEqual(again.history());
  });

  it('keeps one person’s journal from another’s', () => {
    const server = toyServer(builtInDocument(pairs));
    const store = toyStore();
    toyBench(store, scope, server, 'w1').edit({ kind: 'set tracking', tracking: 9 });
    const other = toyBench(store, { ...scope, personKey: 'ola' }, server, 'w2');
    expect(present(other.history()).tracking).toBe(0);
    expect(isSaved(other.sync())).toBe(true);
  });

  it('on a full device gives up old steps before it gives up a change', () => {
    const server = toyServer(builtInDocument(pairs));
    const store = toyStore(1500);
    const bench = toyBench(store, scope, server, 'w1');
    for (let count = 1; count <= 40; count += 1) bench.edit({ kind: 'nudge', run: { first: 0, last: 0 }, by: 1 });
    expect(present(toyBench(store, scope, server, 'w2').history()).offsets[0]).toBe(40);
  });

  it('leaves an unreadable entry alone and starts from the server', () => {
    const server = toyServer(builtInDocument(pairs));
    const store = toyStore();
    toyBench(store, scope, server, 'w1').edit({ kind: 'set tracking', tracking: 9 });
    const key = [...store.entries.keys()].find((name) => name.endsWith('change')) ?? '';
    store.entries.set(key, '{"clientId":"w1","seq":');
    expect(present(toyBench(store, scope, server, 'w2').history()).tracking).toBe(0);
  });
});
