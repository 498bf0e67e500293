// npm run screenshots [-- --address http://127.0.0.1:3000]: takes the README's pictures from the demo of a running `npm
// start`.
import { mkdirSync } from 'node:fs';
import { chromium, type Browser, type Page } from '@playwright/test';
import { assistant, instructor, students } from '@/prisma/seed/people';
import { chromium as chromiumPath } from './test/programs.mjs';
import { answerHelp } from './help';

answerHelp(`npm run screenshots [-- --address http://127.0.0.1:3000]
  Takes the README's pictures from the demo of a running npm start.`);

const folder = 'public/screenshots';
const address = addressFrom(process.argv.slice(2));

type Picture = {
  name: string;
  as?: { email: string; password: string };
  width?: number;
  height?: number;
  dark?: boolean;
  go: (page: Page) => Promise<unknown>;
};

const student = students[0]!;

/** What is shown, and the way to it by the links that people use. */
const pictures: Picture[] = [
  { name: 'first-page', go: (page) => page.goto(address) },
  { name: 'words', go: (page) => page.goto(`${address}/words`) },
  { name: 'exercise', as: student, go: toExercise },
  { name: 'bench', as: student, height: 720, go: toBench },
  { name: 'bench-narrow', as: student, width: 390, height: 844, dark: true, go: toBench },
  {
    name: 'released',
    as: student,
    height: 1200,
    go: async (page) => {
      await page.goto(`${address}/courses`);
      await follow(page, /^Read your notes$/);
    },
  },
  {
    name: 'critique',
    as: assistant,
    go: async (page) => {
      await toExercise(page);
      await follow(page, /^Critique$/);
      await page.locator('main a[href^="/critique/"]').first().click();
    },
  },
  {
    name: 'class',
    as: instructor,
    height: 1200,
    go: async (page) => {
      await toExercise(page);
      await page.goto(`${new URL(page.url()).origin}${new URL(page.url()).pathname}/class?round=1`);
    },
  },
  {
    name: 'plan',
    as: instructor,
    height: 1200,
    go: async (page) => {
      await toExercise(page);
      await page.getByRole('link', { name: 'Plan', exact: true }).click();
    },
  },
];

async function toExercise(page: Page): Promise<void> {
  await page.goto(`${address}/courses`);
  await page.locator('main a[href^="/courses/"]:not([href$="/new"])').first().click();
  await page.locator('main a[href^="/exercises/"]').first().click();
  await page.waitForURL(/\/exercises\//);
}

async function toBench(page: Page): Promise<void> {
  await toExercise(page);
  await page.locator('main a[href*="/bench/"]').first().click();
  await page.waitForURL(/\/bench\//);
  // The guide of a first visit is left, so that the line itself is seen.
  const leave = page.getByRole('button', { name: /leave the guide/i });
  await page.locator('canvas').first().waitFor();
  if (await leave.isVisible()) await leave.click();
  await page.locator('canvas').first().waitFor();
  await page.waitForTimeout(500);
}

async function follow(page: Page, words: RegExp): Promise<void> {
  await page.locator('main').getByRole('link', { name: words }).first().click();
}

async function take(browser: Browser, picture: Picture): Promise<void> {
  const { width = 1280, height = 800, dark = false } = picture;
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  page.setDefaultTimeout(15_000);
  if (picture.as) await signIn(page, picture.as);
  const before = page.url();
  await picture.go(page);
  await page.waitForURL((url) => url.href !== before);
  await page.waitForLoadState('networkidle');
  await page.waitForTimeout(500);
  await page.screenshot({ path: `${folder}/${picture.name}.png` });
  await context.close();
  console.log(`${folder}/${picture.name}.png`);
}

async function signIn(page: Page, person: { email: string; password: string }): Promise<void> {
  await page.goto(`${address}/sign-in`);
  await page.locator('input[name=email]').fill(person.email);
  await page.locator('input[type=password]').fill(person.password);
  await page.locator('main form button[type=submit]').first().click();
  await page.waitForURL(/\/courses/);
}

function addressFrom(words: string[]): string {
  const at = words.indexOf('--address');
  return at < 0 ? 'http://127.0.0.1:3000' : (words[at + 1] ?? '').replace(/\/$/, '');
}

async function main(): Promise<void> {
  const executablePath = chromiumPath();
  if (!executablePath) throw new Error('Chromium is missing: `npm test` installs it, or name it in CHROMIUM.');
  mkdirSync(folder, { recursive: true });
  const browser = await chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
  const failed: string[] = [];
  for (const picture of pictures) {
    await take(browser, picture).catch((error: Error) =>
      failed.push(`${picture.name}: ${error.message.split('\n')[0]}`),
    );
  }
  await browser.close();
  if (failed.length > 0) throw new Error(`Not taken, is the demo running at ${address}?\n  ${failed.join('\n  ')}`);
}

main().catch((error: Error) => {
  console.error(error.message);
  process.exit(1);
});
