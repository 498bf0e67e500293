import { chromium, type Page } from '@playwright/test';
import { signInAs } from './e2e/walk';
import { instructor, students, assistant } from '@/prisma/seed/people';
const base = 'http://127.0.0.1:3730';
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium-headless-shell', args: ['--no-sandbox', '--disable-gpu'] });
const dir = '/tmp/shots'; (await import('node:fs')).mkdirSync(dir, { recursive: true });
async function session(person: any, opts: any) { const c = await browser.newContext({ baseURL: base, ...opts }); const p = await c.newPage(); p.setDefaultTimeout(60000); if (person) await signInAs(p, person); return p; }
const shot = async (p: Page, name: string) => { await p.waitForTimeout(900); await p.screenshot({ path: `${dir}/${name}.png` }); console.log(name, p.url()); };
const size = (w: number, h: number, dark = false) => ({ viewport: { width: w, height: h }, colorScheme: dark ? 'dark' : 'light' });
for (const [tag, o] of [['1280', size(1280, 720)], ['phone', size(390, 844)], ['dark', size(1280, 900, true)]] as const) {
  const v = await session(null, o); await v.goto('/'); await shot(v, `${tag}-first`); await v.close();
  const s = await session(students[1]!, o); await s.goto('/courses'); await shot(s, `${tag}-student-now`);
  const ex = await s.locator('a[href^="/exercises/"]').first().getAttribute('href');
  await s.goto(ex!.replace(/[?#].*|\/bench.*/g, '')); await shot(s, `${tag}-student-exercise`);
  const b = await s.locator('a[href*="/bench/"]').first().getAttribute('href');
  await s.goto(b!); await s.waitForTimeout(1500); await shot(s, `${tag}-bench`);
  await s.goto('/courses'); const rel = s.getByRole('link', { name: 'Read your notes' }).first(); if (await rel.count()) { await rel.click(); await s.waitForURL(/proofs/); await shot(s, `${tag}-released`); }
  await s.close();
  const t = await session(instructor, o); await t.goto('/courses'); await shot(t, `${tag}-staff-now`);
  const exs = ex!.replace(/[?#].*|\/bench.*/g, '');
  await t.goto(`${exs}/rounds/2/critique`); await shot(t, `${tag}-queue`);
  const d = await t.locator('a[href^="/critique/"]').first().getAttribute('href'); await t.goto(d!); await t.waitForTimeout(800); await shot(t, `${tag}-desk`);
  await t.goto(`${exs}/class`); await shot(t, `${tag}-class`);
  await t.close();
}
await browser.close();
