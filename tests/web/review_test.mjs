// The page of what months came to.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { axeSource, launch, place } from './browser.mjs';

let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser.close(); });

const address = `file://${place}/out/review.html`;

for (const colorScheme of ['light', 'dark']) {
  test(`axe finds nothing in the ${colorScheme} review, and nothing is wider than a small phone`, async () => {
    const context = await browser.newContext({ viewport: { width: 320, height: 640 }, colorScheme });
    const page = await context.newPage();
    await page.goto(address);
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= 320));
    await page.addScriptTag({ content: axeSource });
    const found = await page.evaluate(() => axe.run(document, { resultTypes: ['violations'] }));
    assert.deepEqual(found.violations.map((one) => `${one.id}: ${one.nodes[0].html}`), []);
    await context.close();
  });
}

test('each food that was bought more than once has a picture with a mark for each time', async () => {
  const page = await browser.newPage();
  await page.goto(address);
  const foods = await page.$$eval('.food', (all) => all.map((one) => [
    one.querySelector('h3').textContent, one.querySelectorAll('circle').length, one.querySelectorAll('tbody tr').length,
    one.querySelectorAll('.least').length]));
  assert.ok(foods.length > 20);
  for (const [name, marks, rows, least] of foods) {
    assert.ok(marks > 1, name);
    assert.equal(marks, rows, name);
    assert.equal(least, 1, name);
  }
});
