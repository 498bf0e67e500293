import { inParts } from '@/lib/http/in-parts';

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

export { csvOf, csvRows, plainCsvOf } from '@/shared/text/csv';
