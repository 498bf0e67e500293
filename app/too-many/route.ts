/** Pages of a person who sent too many requests redirect here: a page itself can't answer with 429 (RFC 6585 §4). */
export function GET(request: Request): Response {
  const asked = Number(new URL(request.url).searchParams.get('wait'));
  const seconds = Number.isInteger(asked) && asked > 0 ? Math.min(asked, 3_600) : 60;
  const minutes = Math.ceil(seconds / 60);
  return new Response(
    `<!doctype html><html lang="en"><meta charset="utf-8"><title>Please wait a little</title>
<h1>Please wait a little</h1>
<p>There were too many tries from your network. Wait ${minutes === 1 ? 'a minute' : `${minutes} minutes`}, then go back and open the page again.</p>
`,
    {
      status: 429,
      headers: {
        'content-type': 'text/html; charset=utf-8',
        'cache-control': 'no-store',
        'retry-after': String(seconds),
      },
    },
  );
}
