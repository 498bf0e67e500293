/** The answer of a route: a file to keep, never in a cache. `name` must not hold anybody's name. */
export function fileResponse(text: string, mime: string, name: string): Response {
  const safe = name.replace(/[^\w.-]+/g, '-').replace(/^-+|-+$/g, '');
  return new Response(text, {
    headers: { 'content-type': `${mime}; charset=utf-8`, 'content-disposition': `attachment; filename="${safe}"`, 'cache-control': 'no-store', 'x-content-type-options': 'nosniff' },
  });
}
