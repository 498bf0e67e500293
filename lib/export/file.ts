import { letOthersIn } from '@/lib/let-others-in';

/** A route's answer: a file to save, never cached. `name` must not contain a person's name. Text is UTF-8. */
export function fileResponse(
  body: string | readonly string[] | Uint8Array<ArrayBuffer> | ReadableStream<Uint8Array>,
  mime: string,
  name: string,
): Response {
  const safe = name.replace(/[^\w.-]+/g, '-').replace(/^-+|-+$/g, '');
  return new Response(isParts(body) ? inParts(body) : body, {
    headers: {
      'content-type': typeof body === 'string' || isParts(body) ? `${mime}; charset=utf-8` : mime,
      'content-disposition': `attachment; filename="${safe}"`,
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
    },
  });
}

const isParts = (body: unknown): body is readonly string[] => Array.isArray(body);

/** A text that was made in parts goes out in parts: put together it would be copied several times, all at once. */
function inParts(parts: readonly string[]): ReadableStream<Uint8Array> {
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

export { csvOf, csvRows, plainCsvOf } from '@/shared/text/csv';
