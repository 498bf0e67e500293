import { letOthersIn } from '@/lib/let-others-in';

/** A text that was made in parts goes out in parts: put together it would be copied several times, all at once. */
export function inParts(parts: Iterable<string>): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  const left = parts[Symbol.iterator]();
  return new ReadableStream<Uint8Array>({
    async pull(controller) {
      await letOthersIn();
      const next = left.next();
      if (next.done) controller.close();
      else controller.enqueue(encoder.encode(next.value));
    },
  });
}

/** An object as JSON in parts: an element of its one long list at a time, written when it is its turn. */
export function* jsonParts<Whole extends object, Key extends keyof Whole & string>(
  whole: Whole & Record<Key, readonly unknown[]>,
  list: Key,
): Generator<string> {
  const { [list]: elements, ...rest } = whole;
  const others = JSON.stringify(rest).slice(0, -1);
  yield `${others}${others === '{' ? '' : ','}${JSON.stringify(list)}:[`;
  for (const [place, element] of (elements as readonly unknown[]).entries())
    yield `${place === 0 ? '' : ','}${JSON.stringify(element)}`;
  yield ']}';
}
