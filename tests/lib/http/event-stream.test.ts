import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { eventStream } from '@/lib/http/event-stream';

/** A state that a test changes, and a reader of what is sent about it. */
function open(first: string | null) {
  let state = first;
  let hear = () => {};
  let stopped = false;
  let reads = 0;
  const abort = new AbortController();
  const response = eventStream({
    signal: abort.signal,
    listen: (heard) => {
      hear = heard;
      return () => {
        stopped = true;
      };
    },
    read: async () => {
      reads += 1;
      return state;
    },
  });
  const reader = response.body!.getReader();
  const next = async () => {
    const { value, done } = await reader.read();
    return done ? null : new TextDecoder().decode(value);
  };
  return {
    response,
    next,
    reader,
    abort,
    set: (to: string | null) => {
      state = to;
      hear();
    },
    hear: () => hear(),
    isStopped: () => stopped,
    reads: () => reads,
  };
}

it('begins with the whole present state, and says it again when it is another', async () => {
  const stream = open('{"lines":1}');
  expect(await stream.next()).toBe('retry: 2000\nevent: state\ndata: {"lines":1}\n\n');
  stream.set('{"lines":2}');
  expect(await stream.next()).toBe('event: state\ndata: {"lines":2}\n\n');
  await stream.reader.cancel();
  expect(stream.isStopped()).toBe(true);
});

it('may not be kept, compressed or held back on its way', () => {
  const { response, abort } = open('{}');
  expect(Object.fromEntries(response.headers)).toMatchObject({
    'content-type': 'text/event-stream; charset=utf-8',
    'cache-control': 'no-store, no-transform',
    'x-accel-buffering': 'no',
  });
  abort.abort();
});

it('tells a slow reader the newest state and not each one before', async () => {
  const stream = open('0');
  await stream.next();
  stream.set('1');
  await wait(400);
  for (const state of ['2', '3', '4']) {
    stream.set(state);
    await wait(200);
  }
  // One message waits for the reader; later ones are combined.
  expect([await stream.next(), await stream.next()]).toEqual([
    'event: state\ndata: 1\n\n',
    'event: state\ndata: 4\n\n',
  ]);
  expect(stream.reads()).toBe(3);
  await stream.reader.cancel();
});

it('is over when there is nothing left to tell', async () => {
  const stream = open('{}');
  await stream.next();
  stream.set(null);
  expect(await stream.next()).toBe('event: over\ndata: {}\n\n');
  expect(await stream.next()).toBeNull();
  expect(stream.isStopped()).toBe(true);
});

it('stops listening when the page has gone', async () => {
  const stream = open('{}');
  await stream.next();
  stream.abort.abort();
  expect(await stream.next()).toBeNull();
  expect(stream.isStopped()).toBe(true);
});
