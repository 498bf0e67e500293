import { readdirSync, readFileSync } from 'node:fs';
import { expect, test, type APIResponse, type Page } from '@playwright/test';
import { type ExportKind, exportKinds } from '@/shared/schemas/export';
import { addOutsider, closeWall, idsOf, madeUp, type DemoIds } from './demo-ids';
import { bram, browserOf, ines } from './demo-people';

type Address = (ids: DemoIds) => string;
type Write = { method: string; address: Address; body?: (ids: DemoIds) => object };

/** Pages that show a student nothing of anyone else's, whatever is asked. */
const open = [
  '',
  'accessibility',
  'account',
  'account/erase',
  'courses',
  'faces',
  'faces/[key]',
  'first/[token]',
  'join/[token]',
  'practice',
  'records',
  'reset/[token]',
  'sign-in',
  'sign-in/forgotten',
  'words',
];

/** Pages of a course that each of its students may open, with their own things on them: shut for everyone outside. */
const ofTheCourse: Record<string, Address> = {
  'courses/[courseId]': ({ courseId }) => `/courses/${courseId}`,
  'courses/[courseId]/term': ({ courseId }) => `/courses/${courseId}/term`,
  'exercises/[exerciseId]': ({ exerciseId }) => `/exercises/${exerciseId}`,
  'exercises/[exerciseId]/demonstrations': ({ exerciseId }) => `/exercises/${exerciseId}/demonstrations`,
  'exercises/[exerciseId]/bench/[specimenId]': ({ exerciseId, specimenId }) =>
    `/exercises/${exerciseId}/bench/${specimenId}`,
  'exercises/[exerciseId]/same-text': ({ exerciseId }) => `/exercises/${exerciseId}/same-text`,
};

const plan: Address = ({ exerciseId }) => `/exercises/${exerciseId}/plan`;

/** Pages of those who teach, and of another student's work: shut for a student. */
const shut: Record<string, Address> = {
  'courses/new': () => '/courses/new',
  'courses/[courseId]/copy': ({ courseId }) => `/courses/${courseId}/copy`,
  'courses/[courseId]/class': ({ courseId }) => `/courses/${courseId}/class`,
  'courses/[courseId]/exercises/new': ({ courseId }) => `/courses/${courseId}/exercises/new`,
  'courses/[courseId]/exercises/removed': ({ courseId }) => `/courses/${courseId}/exercises/removed`,
  'courses/[courseId]/retention': ({ courseId }) => `/courses/${courseId}/retention`,
  'courses/[courseId]/people': ({ courseId }) => `/courses/${courseId}/people`,
  'courses/[courseId]/people/import': ({ courseId }) => `/courses/${courseId}/people/import`,
  'courses/[courseId]/people/[memberId]': ({ courseId, memberId }) => `/courses/${courseId}/people/${memberId}`,
  'courses/[courseId]/people/[memberId]/term': ({ courseId, memberId }) =>
    `/courses/${courseId}/people/${memberId}/term`,
  'courses/[courseId]/settings': ({ courseId }) => `/courses/${courseId}/settings`,
  'critique/[proofId]/[specimenId]': ({ proofId, specimenId }) => `/critique/${proofId}/${specimenId}`,
  'exercises/[exerciseId]/class': ({ exerciseId }) => `/exercises/${exerciseId}/class`,
  'exercises/[exerciseId]/map': ({ exerciseId }) => `/exercises/${exerciseId}/map`,
  // One that is not shown; those that are shown are tried in demonstration.spec.ts.
  'exercises/[exerciseId]/demonstrations/[demonstrationId]': ({ exerciseId, demonstrationId }) =>
    `/exercises/${exerciseId}/demonstrations/${demonstrationId}`,
  'exercises/[exerciseId]/plan': plan,
  ...Object.fromEntries(
    ['brief', 'close', 'criteria/new', 'publish', 'remove', 'rounds/new', 'specimens/find', 'specimens/new'].map(
      (part) => [`exercises/[exerciseId]/plan/${part}`, (ids: DemoIds) => `${plan(ids)}/${part}`],
    ),
  ),
  'exercises/[exerciseId]/plan/criteria/[criterionId]': (ids) => `${plan(ids)}/criteria/${ids.criterionId}`,
  'exercises/[exerciseId]/plan/rounds/[roundId]': (ids) => `${plan(ids)}/rounds/${ids.roundId}`,
  'exercises/[exerciseId]/plan/rounds/[roundId]/more-time': (ids) => `${plan(ids)}/rounds/${ids.roundId}/more-time`,
  'exercises/[exerciseId]/plan/rounds/[roundId]/sections/[sectionId]': (ids) =>
    `${plan(ids)}/rounds/${ids.roundId}/sections/${ids.sectionId}`,
  'exercises/[exerciseId]/plan/specimens/[specimenId]': (ids) => `${plan(ids)}/specimens/${ids.specimenId}`,
  'exercises/[exerciseId]/plan/specimens/[specimenId]/change': (ids) =>
    `${plan(ids)}/specimens/${ids.specimenId}/change`,
  'exercises/[exerciseId]/progress': ({ exerciseId }) => `/exercises/${exerciseId}/progress`,
  'exercises/[exerciseId]/references': ({ exerciseId }) => `/exercises/${exerciseId}/references`,
  'exercises/[exerciseId]/references/carry': ({ exerciseId }) => `/exercises/${exerciseId}/references/carry`,
  'exercises/[exerciseId]/references/[specimenId]': ({ exerciseId, specimenId }) =>
    `/exercises/${exerciseId}/references/${specimenId}`,
  'exercises/[exerciseId]/rounds/[number]/agreement': ({ exerciseId }) => `/exercises/${exerciseId}/rounds/2/agreement`,
  'exercises/[exerciseId]/rounds/[number]/agreement/[proof]': ({ exerciseId, proofId }) =>
    `/exercises/${exerciseId}/rounds/2/agreement/${proofId}`,
  'exercises/[exerciseId]/rounds/[number]/second': ({ exerciseId }) => `/exercises/${exerciseId}/rounds/2/second`,
  'exercises/[exerciseId]/rounds/[number]/critique': ({ exerciseId }) => `/exercises/${exerciseId}/rounds/2/critique`,
  'exercises/[exerciseId]/rounds/[number]/release': ({ exerciseId }) => `/exercises/${exerciseId}/rounds/2/release`,
  'exercises/[exerciseId]/rounds/[number]/specimens/[specimenId]': ({ exerciseId, specimenId }) =>
    `/exercises/${exerciseId}/rounds/2/specimens/${specimenId}`,
  'exercises/[exerciseId]/rounds/[number]/wall': ({ exerciseId }) => `/exercises/${exerciseId}/rounds/2/wall`,
  'wall/[wallId]': ({ wallId }) => `/wall/${wallId}`,
  'proofs/[proofId]': ({ proofId }) => `/proofs/${proofId}`,
};

/** Open to anyone with the code, signed in or not; a wrong code is not found. */
const byCode: Record<string, Write[]> = {
  'w/[code]': [{ method: 'GET', address: ({ wallCode }) => `/w/${wallCode}` }],
  'api/w/[code]': [
    { method: 'GET', address: ({ wallCode }) => `/api/w/${wallCode}` },
    {
      method: 'PUT',
      address: ({ wallCode }) => `/api/w/${wallCode}`,
      body: () => ({ phone: 'p'.repeat(22), at: null }),
    },
  ],
  'api/w/[code]/live': [{ method: 'GET', address: ({ wallCode }) => `/api/w/${wallCode}/live` }],
};

const spacing = { tracking: 0, offsets: [-5] };

const exported: Record<ExportKind, Address> = {
  agreement: ({ exerciseId }) => `/api/exports/agreement/${exerciseId}?round=1`,
  class: ({ exerciseId }) => `/api/exports/class/${exerciseId}?round=1`,
  'class-set': ({ exerciseId }) => `/api/exports/class-set/${exerciseId}?round=1&licence=read`,
  map: ({ exerciseId }) => `/api/exports/map/${exerciseId}?round=1`,
  marks: ({ exerciseId }) => `/api/exports/marks/${exerciseId}?round=1`,
  notes: ({ exerciseId }) => `/api/exports/notes/${exerciseId}?round=1`,
  oneroster: ({ exerciseId }) => `/api/exports/oneroster/${exerciseId}?round=1`,
  'released-notes': ({ proofId }) => `/api/exports/released-notes/${proofId}`,
  'sheet-previews': ({ exerciseId, proofId }) =>
    `/api/exports/sheet-previews/${exerciseId}?round=2&proof=${proofId}&licence=read`,
  sheets: ({ proofId }) => `/api/exports/sheets/${proofId}?licence=read`,
};

/** Route handlers that lead to another student's things or to what those who teach do. */
const routes: Record<string, Write[]> = {
  'api/class/map/[exerciseId]': [
    { method: 'GET', address: ({ exerciseId }) => `/api/class/map/${exerciseId}?round=1` },
  ],
  'api/critique/claims': ['PUT', 'DELETE'].map((method) => ({
    method,
    address: () => '/api/critique/claims',
    body: ({ proofId }) => ({ proof: proofId }),
  })),
  'api/critique/marks': [
    {
      method: 'PUT',
      address: () => '/api/critique/marks',
      body: ({ proofId, criterionVersionId }) => ({ proofId, criterionVersionId, level: 1, version: -1, why: '' }),
    },
  ],
  'api/critique/next': [
    {
      method: 'POST',
      address: () => '/api/critique/next',
      body: ({ exerciseId }) => ({ exerciseId, roundNumber: 2, section: null, after: null }),
    },
  ],
  'api/critique/skips': [
    { method: 'PUT', address: () => '/api/critique/skips', body: ({ proofId }) => ({ proof: proofId, to: 'skipped' }) },
  ],
  'api/critique/state': [
    { method: 'PUT', address: () => '/api/critique/state', body: ({ proofId }) => ({ proof: proofId, to: 'open' }) },
  ],
  'api/critique/notes': [
    {
      method: 'POST',
      address: () => '/api/critique/notes',
      body: ({ proofId, specimenVersionId }) => ({
        proofId,
        specimenVersionId,
        requestKey: 'guessed-key',
        fromPair: 0,
        toPair: 0,
        body: 'Mine.',
        suggestion: [-5],
      }),
    },
  ],
  'api/critique/notes/[noteId]': [
    {
      method: 'PUT',
      address: ({ noteId }) => `/api/critique/notes/${noteId}`,
      body: () => ({ version: 0, body: 'Mine.', suggestion: null }),
    },
  ],
  'api/critique/notes/[noteId]/state': [
    {
      method: 'PUT',
      address: ({ noteId }) => `/api/critique/notes/${noteId}/state`,
      body: () => ({ version: 0, to: 'settled' }),
    },
  ],
  'api/critique/notes/[noteId]/answers': [
    {
      method: 'POST',
      address: ({ noteId }) => `/api/critique/notes/${noteId}/answers`,
      body: () => ({ afterSeq: 1, body: 'Mine.' }),
    },
  ],
  'api/critique/stock-notes': [
    {
      method: 'POST',
      address: () => '/api/critique/stock-notes',
      body: ({ courseId }) => ({ courseId, body: 'Mine.', fault: '', shared: true }),
    },
  ],
  'api/critique/stock-notes/[stockNoteId]': [
    { method: 'DELETE', address: ({ stockNoteId }) => `/api/critique/stock-notes/${stockNoteId}` },
  ],
  'api/demonstrations/[demonstrationId]': [
    {
      method: 'PUT',
      address: ({ demonstrationId }) => `/api/demonstrations/${demonstrationId}`,
      body: ({ specimenVersionId }) => ({
        specimenVersionId,
        title: 'Mine',
        recorded: { start: spacing, steps: [{ tracking: 5, moves: [], run: null, reason: '' }] },
      }),
    },
  ],
  'api/drafts/[draftId]': [
    { method: 'GET', address: ({ draftId }) => `/api/drafts/${draftId}` },
    {
      method: 'PUT',
      address: ({ draftId }) => `/api/drafts/${draftId}`,
      body: () => ({ baseVersion: 0, clientId: 'guess', seq: 1, spacing }),
    },
  ],
  'api/exports/[kind]/[id]': exportKinds.map((kind) => ({ method: 'GET', address: exported[kind] })),
  'api/exports/spacing/[proofId]/[specimenId]': [
    {
      method: 'GET',
      address: ({ proofId, specimenId }) => `/api/exports/spacing/${proofId}/${specimenId}?as=json&licence=read`,
    },
  ],
  'api/walls/[wallId]': [
    { method: 'GET', address: ({ wallId }) => `/api/walls/${wallId}` },
    { method: 'PUT', address: ({ wallId }) => `/api/walls/${wallId}`, body: () => ({ kind: 'pointing', to: 'show' }) },
  ],
  'api/walls/[wallId]/live': [{ method: 'GET', address: ({ wallId }) => `/api/walls/${wallId}/live` }],
  'api/walls/[wallId]/notes': [
    {
      method: 'POST',
      address: ({ wallId }) => `/api/walls/${wallId}/notes`,
      body: () => ({ line: 'B'.repeat(10), pair: 0, body: 'Mine.', requestKey: 'guessed-key' }),
    },
  ],
  'api/references/[specimenVersionId]': [
    {
      method: 'PUT',
      address: ({ specimenVersionId }) => `/api/references/${specimenVersionId}`,
      body: () => ({ draftId: 'guess', clientId: 'guess', seq: 1, baseVersion: 0, spacing }),
    },
  ],
};
const pagesByCode = ['w/[code]'];
/** One’s own data, a calendar by its secret address, next-auth’s own handlers, and the answer to too many requests: covered by their own tests. */
const ownRoutes = [
  'api/account/data',
  'api/auth/[...nextauth]',
  'api/calendar/[token]',
  'api/practice-results',
  'too-many',
];

test('every page and every route of the tree is tried here', () => {
  const all = readdirSync('app', { recursive: true, encoding: 'utf8' });
  const dirs = (file: string) =>
    all
      .filter((path) => path === file || path.endsWith(`/${file}`))
      .map((path) => path.slice(0, -file.length).replace(/\/$/, ''))
      .sort();
  const known = new Set([...open, ...Object.keys(ofTheCourse), ...Object.keys(shut), ...pagesByCode]);
  expect([...known].sort()).toEqual(dirs('page.tsx'));
  const handlers = dirs('route.ts');
  const tried = {
    ...routes,
    ...Object.fromEntries(Object.entries(byCode).filter(([path]) => !pagesByCode.includes(path))),
  };
  expect([...ownRoutes, ...Object.keys(tried)].sort()).toEqual(handlers);
  for (const route of handlers.filter((one) => !ownRoutes.includes(one))) {
    const methods = [
      ...readFileSync(`app/${route}/route.ts`, 'utf8').matchAll(/export const (GET|PUT|POST|PATCH|DELETE)\b/g),
    ].map(([, method]) => method);
    expect([...new Set(tried[route]!.map(({ method }) => method))].sort(), route).toEqual(methods.sort());
  }
});

/**
 * An answer without what differs by itself: the nonce, the ids that were asked for, and which of a page's own parts was
 * ready first.
 */
async function bytesOf(response: APIResponse, ids: DemoIds): Promise<string> {
  const nonce = /'nonce-([^']+)'/.exec(response.headers()['content-security-policy'] ?? '')?.[1];
  const asked = [nonce, ...Object.values({ ...ids })].filter((value) => value !== undefined);
  return inOneOrder(asked.reduce((text, value) => text.replaceAll(value, '…'), await response.text()));
}

/**
 * A page's data arrives in the order in which it was ready, in as many scripts as that took: all of them, sorted, after
 * the rest.
 */
function inOneOrder(html: string): string {
  const sent: string[] = [];
  const rest = html.replaceAll(
    /<script nonce="…">self\.__next_f\.push\(\[1,("(?:[^"\\]|\\.)*")\]\)<\/script>/g,
    (_script, text: string) => {
      sent.push(JSON.parse(text) as string);
      return '';
    },
  );
  return [rest, ...sent.join('').split('\n').sort()].join('\n');
}

/** `known`: names that they know already, since they are in it; a page's title may say them. */
async function expectNotThere(
  page: Page,
  real: DemoIds,
  { address, method = 'GET', body }: Partial<Write> & { address: Address },
  known: readonly string[] = [],
) {
  const nobodys = madeUp();
  const ask = (ids: DemoIds) =>
    page.request.fetch(address(ids), {
      method,
      maxRedirects: 0,
      headers: { 'sec-fetch-site': 'same-origin' },
      ...(body ? { data: body(ids) } : {}),
    });
  const [theirs, none] = [await ask(real), await ask(nobodys)];
  expect(`${theirs.status()} ${address({ ...real })}`).toBe(`404 ${address({ ...real })}`);
  expect(none.status()).toBe(404);
  expect(theirs.headers()['content-type']).toBe(none.headers()['content-type']);
  const answered = known.reduce(
    (text, name) => text.replaceAll(` · ${name} · Kerncrit`, ' · Kerncrit'),
    await bytesOf(theirs, real),
  );
  expect(answered).toBe(await bytesOf(none, nobodys));
}

test('a student meets nothing of another student and nothing of those who teach, by any page', async ({
  browser,
  baseURL,
}) => {
  const page = await browserOf(browser, ines);
  const real = idsOf(baseURL!, bram.email);
  const own = ['Lettering for display, first term', 'Signs for a harbour'];
  for (const address of Object.values(shut)) await expectNotThere(page, real, { address }, own);
  for (const address of Object.values(ofTheCourse))
    expect((await page.request.get(address(real))).status(), address(real)).toBe(200);
});

test('nor by any route, to read or to write', async ({ browser, baseURL }) => {
  const page = await browserOf(browser, ines);
  const real = idsOf(baseURL!, bram.email);
  for (const writes of Object.values(routes)) for (const write of writes) await expectNotThere(page, real, write);
});

test('somebody in no course meets nothing of it at all', async ({ browser, baseURL }) => {
  const page = await browserOf(browser, await addOutsider(baseURL!));
  const real = idsOf(baseURL!, bram.email);
  for (const address of [...Object.values(shut), ...Object.values(ofTheCourse)])
    await expectNotThere(page, real, { address });
  for (const writes of Object.values(routes)) for (const write of writes) await expectNotThere(page, real, write);
});

test('a visitor is led to signing in by every page of a course, and told so by every route', async ({
  request,
  baseURL,
}) => {
  const real = idsOf(baseURL!, bram.email);
  for (const address of [...Object.values(shut), ...Object.values(ofTheCourse)]) {
    const response = await request.get(address(real), { maxRedirects: 0 });
    expect(`${response.status()} ${response.headers().location}`).toBe(
      `307 /sign-in?next=${encodeURIComponent(address(real))}`,
    );
  }
  for (const writes of Object.values(routes)) {
    for (const { method, address, body } of writes) {
      const response = await request.fetch(address(real), {
        method,
        headers: { 'sec-fetch-site': 'same-origin' },
        ...(body ? { data: body(real) } : {}),
      });
      expect(`${method} ${address(real)} ${response.status()}`).toBe(`${method} ${address(real)} 401`);
    }
  }
});

test('what a student may open names no other student', async ({ browser, baseURL }) => {
  const page = await browserOf(browser, ines);
  const real = idsOf(baseURL!, bram.email);
  for (const address of Object.values(ofTheCourse)) {
    const text = await (await page.request.get(address(real))).text();
    for (const hidden of [bram.name, bram.email, real.memberId, real.proofId, real.draftId, real.noteId])
      expect(text.includes(hidden), `${address(real)} ${hidden}`).toBe(false);
  }
});

test('a wall is open to its code alone: wrong, closed and never there are the same bytes', async ({
  request,
  browser,
  baseURL,
}) => {
  const real = idsOf(baseURL!, bram.email);
  const page = await (await browser.newContext()).newPage();
  for (const { method, address, body } of Object.values(byCode)
    .flat()
    .filter((one) => !one.address(real).endsWith('/live'))) {
    const answer = await request.fetch(address(real), {
      method,
      headers: { 'sec-fetch-site': 'same-origin' },
      ...(body ? { data: body(real) } : {}),
    });
    expect(`${method} ${address(real)} ${answer.status()}`).toBe(`${method} ${address(real)} 200`);
    const text = await answer.text();
    for (const hidden of [bram.name, bram.email, ines.name, real.memberId, real.proofId, real.exerciseId, real.wallId])
      expect(text.includes(hidden), `${address(real)} ${hidden}`).toBe(false);
  }
  closeWall(baseURL!, real.wallId);
  for (const write of Object.values(byCode).flat()) await expectNotThere(page, real, write);
});
