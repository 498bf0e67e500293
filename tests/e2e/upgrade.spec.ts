import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from '@playwright/test';
import { assistant, instructor, students } from '@/prisma/seed/people';
import { releasedPages, storedForms, unpackStored } from '@/tests/fixtures/stored/stored';
import { startBeside } from './server-beside';
import { signInAs, walk } from './walk';

const people = [instructor, assistant, students[0]!];

for (const form of storedForms) {
  test(`what version ${form} stored is upgraded at the start, opens on every page and says what was released`, async ({
    browser,
    baseURL,
  }) => {
    test.setTimeout(600_000);
    const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-stored-'));
    const server = await startBeside(Number(new URL(baseURL!).port) + 1, [], {
      DATABASE_URL: `file:${unpackStored(form, folder)}`,
    });
    try {
      expect(server.said).toContain('Kerncrit is at');
      for (const person of people) {
        const context = await browser.newContext({ baseURL: server.origin });
        const page = await context.newPage();
        await signInAs(page, person);
        const { seen, faults } = await walk(page, ['/courses'], async () => []);
        expect(seen.size).toBeGreaterThan(8);
        expect(faults).toEqual([]);
        for (const { proofId, words } of releasedPages(form).filter(({ as }) => as === person.email)) {
          await page.goto(`/proofs/${proofId}`);
          const said = (await page.locator('main').textContent())!.replace(/\s/g, '');
          const missing = words.filter((word) => !said.includes(word.replace(/\s/g, '')));
          expect(missing, proofId).toEqual([]);
        }
        await context.close();
      }
    } finally {
      await server.stop();
      rmSync(folder, { recursive: true, force: true });
    }
  });
}
