import { createHash } from 'node:crypto';
import { readCalendarFeed } from '@/lib/account/calendar';
import { route } from '@/lib/http/route';

const calendar = route(readCalendarFeed, {
  read: (_request, { token }) => ({ token }),
  respond: ({ text }) =>
    new Response(text, {
      headers: {
        'content-type': 'text/calendar; charset=utf-8',
        'content-disposition': 'inline; filename="kerncrit.ics"',
        // Kept by the one program that asked, which asks each time whether it still holds.
        'cache-control': 'private, no-cache',
        etag: `"${createHash('sha256').update(text).digest('base64url')}"`,
      },
    }),
});

/** A person's calendar. To a program that has the newest already it says only that (304). */
export async function GET(request: Request, context: { params: Promise<Record<string, string>> }) {
  const answer = await calendar(request, context);
  const etag = answer.headers.get('etag');
  const known = request.headers
    .get('if-none-match')
    ?.split(',')
    .map((tag) => tag.trim().replace(/^W\//, ''));
  if (etag === null || !known?.includes(etag)) return answer;
  return new Response(null, { status: 304, headers: { etag, 'cache-control': 'private, no-cache' } });
}
