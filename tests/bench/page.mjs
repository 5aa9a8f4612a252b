// How soon a slow phone paints the page, beside an empty page in the same run: `node page.mjs MONTH.HTML DATE
// [RUNS]`, with WEB_TOOLS and WEB_BROWSER as in tests/web/page.sh; DATE is a day of shopping. Both take
// turns at 6 times CPU throttling, and medians are compared, so that what else the machine does falls on both.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const require = createRequire(process.env.WEB_TOOLS + '/');
const { chromium } = require('playwright-core');
const [file, date, runs = '9'] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), 'page-'));
const empty = join(folder, 'empty.html');
writeFileSync(empty, '<!doctype html><meta charset=utf-8><meta name=viewport content="width=device-width"><p>Empty');

const median = (numbers) => [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];
const args = process.getuid() === 0 ? ['--no-sandbox'] : [];
const browser = await chromium.launch({ executablePath: process.env.WEB_BROWSER, args });

const look = async (address, act) => {
  const page = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 6 });
  await page.goto(address);
  await page.waitForFunction(() => performance.getEntriesByName('first-contentful-paint').length > 0);
  const paint = await page.evaluate(() => performance.getEntriesByName('first-contentful-paint')[0].startTime);
  const more = act ? await act(page) : {};
  await page.context().close();
  return { paint, ...more };
};
// The list is there, and a tick takes so long until it is laid out anew.
const shop = async (page) => {
  await page.waitForFunction(() => document.documentElement.dataset.ready !== undefined);
  const ready = Number(await page.evaluate(() => document.documentElement.dataset.ready));
  const ticks = await page.evaluate(async () => {
    const out = [];
    for (const box of [...document.querySelectorAll('.stop[open] li > label > input')].slice(0, 12)) {
      await new Promise((rest) => setTimeout(rest, 100));
      const begun = performance.now();
      box.click();
      document.body.getBoundingClientRect();
      out.push(performance.now() - begun);
    }
    return out;
  });
  return { ready, ticks };
};

const of = { empty: [], month: [] };
for (let run = 0; run < Number(runs); run++) {
  of.empty.push(await look(`file://${empty}`));
  of.month.push(await look(`file://${resolve(file)}#${date}`, shop));
}
await browser.close();
rmSync(folder, { recursive: true });

const blank = median(of.empty.map((one) => one.paint));
const paint = median(of.month.map((one) => one.paint));
const ready = median(of.month.map((one) => one.ready));
const ticks = of.month.flatMap((one) => one.ticks);
console.log(`empty page: first contentful paint ${Math.round(blank)} ms`);
console.log(`month: first contentful paint ${Math.round(paint)} ms (${(paint / blank).toFixed(2)} times), list there ${Math.round(ready)} ms (${(ready / blank).toFixed(2)} times)`);
console.log(`a tick: ${median(ticks).toFixed(1)} ms in the middle, ${Math.max(...ticks).toFixed(1)} ms at most of ${ticks.length}`);
