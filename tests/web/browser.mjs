// What every test of the page needs: the browser, the two houses, and sums made anew from
// result.json.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(process.env.WEB_TOOLS + '/');
const { chromium } = require('playwright-core');
export const axeSource = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
export const place = process.env.WEB_PLACE;
export const sections = ['list', 'menu', 'days', 'prep', 'pictures', 'labels'];

// Chromium's own sandbox does not start for root, as in a container.
const args = process.getuid() === 0 ? ['--no-sandbox'] : [];
export const launch = () => chromium.launch({ executablePath: process.env.WEB_BROWSER, args });

export const result = (house) => JSON.parse(readFileSync(`${place}/${house}/result.json`, 'utf8'));
export const address = (house, section = 'list') => `file://${place}/${house}/month.html#${section}`;
export const pageData = (page) => page.evaluate(() => JSON.parse(document.getElementById('data').textContent));

// A page that fails the test at the first error of its script.
export async function open(browser, house, options = {}) {
  const { section, ...context } = options;
  const page = await (await browser.newContext({ viewport: { width: 360, height: 740 }, ...context })).newPage();
  page.errors = [];
  page.on('pageerror', (error) => page.errors.push(String(error)));
  page.on('dialog', (dialog) => {
    page.errors.push('a dialog: ' + dialog.message());
    dialog.dismiss();
  });
  await page.goto(address(house, section));
  return page;
}

export const openAll = (page) =>
  page.evaluate(() => document.querySelectorAll('details').forEach((d) => (d.open = true)));

// By line: what list.md calls the food.
export const namesOnList = (house) =>
  [...readFileSync(`${place}/${house}/list.md`, 'utf8').matchAll(/^- \[ \] .*\*\*(.+)\*\*/gm)].map((line) => line[1]);

export const money = (currency, cents) => currency.sign + (cents / 100).toFixed(2);
