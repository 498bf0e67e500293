import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import type { AxeResults, ElementContext, RunOptions, Result } from 'axe-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/**
 * What axe-core finds wrong on a page, or in one part of it, by all its rules. No page has a frame, so it runs in the
 * page itself, is loaded once for a page that is looked at several times, and does not list what passed: a third of the
 * time.
 */
export async function axeOn(page: Page, within?: string): Promise<Result[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source);
  return page.evaluate(async (part) => {
    const { axe } = window as unknown as {
      axe: { run(context: ElementContext, options: RunOptions): Promise<AxeResults> };
    };
    const { violations } = await axe.run(part ?? document, { resultTypes: ['violations'] });
    return violations;
  }, within);
}
