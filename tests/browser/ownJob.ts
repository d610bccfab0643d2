/** A job of one's own, begun in the built page as a person does who has a file of it. */
import type { Page } from 'playwright-core';
import type { Design } from '../../src/design/definition.ts';

const cone = (halfAngle: number, from: number, to: number) => ({ halfAngle, diameter: 20, station: 0, from, to });

/** mm and degrees; both cones touch at once where the journal stands at 0. */
export const OWN: Design = {
  conepair: 1,
  title: 'New job',
  seats: [
    { name: 'shallow', journal: cone(3, -30, 0), bush: cone(3, -30, 0) },
    { name: 'steep', journal: cone(45, 0, 5), bush: cone(45, 0, 5) },
  ],
};

export async function beginJob(page: Page, address: string): Promise<void> {
  await page.goto(`${address}#jobs`);
  await page.setInputFiles('.begin input[type=file]', {
    name: 'own.conepair.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(OWN)),
  });
  await page.waitForSelector('.journal');
}

/** The screens of the page, as its address names them, in their order. */
export const screensOf = (page: Page): Promise<string[]> =>
  page
    .locator('header nav a')
    .evaluateAll((links) => links.map((link) => new URL((link as HTMLAnchorElement).href).hash.slice(1)));
