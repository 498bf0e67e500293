import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/**
 * axe-core on a page, all its rules. No page has a frame, so it runs in the page itself and not in a second one beside it, in
 * half the time; what passed is not written out, node by node, since nobody reads it.
 */
export const axeOn = (page: Page) => new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode();
