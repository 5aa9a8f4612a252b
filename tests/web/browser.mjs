// What every test of the page needs: the browser, the houses, and what list.md and result.json say.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterEach } from 'node:test';

const require = createRequire(process.env.WEB_TOOLS + '/');
const { chromium } = require('playwright-core');
export const axeSource = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
export const place = process.env.WEB_PLACE;

// Chromium's own sandbox does not start for root, as in a container.
const args = process.getuid() === 0 ? ['--no-sandbox'] : [];
export const launch = () => chromium.launch({ executablePath: process.env.WEB_BROWSER, args });

export const result = (house) => JSON.parse(readFileSync(`${place}/${house}/result.json`, 'utf8'));
export const address = (house, view = '') => `file://${place}/${house}/month.html${view ? '#' + view : ''}`;
export const pageData = (page) =>
  page.evaluate(() => Object.assign({}, ...['data', 'dishes-data'].map((id) => JSON.parse(document.getElementById(id).textContent))));

export const phone = { width: 390, height: 844 };
export const tripDay = '2027-03-06T10:12:00';
export const weekday = '2027-03-09T17:10:00';

// The script has run to its end, which it begins when the first screen is painted.
export const ready = (page) => page.waitForFunction(() => document.documentElement.dataset.ready !== undefined);

// What a test has opened is closed when it ends: a page that is left open goes on counting its seconds.
const opened = [];
afterEach(async () => {
  for (const context of opened.splice(0)) await context.close();
});
export const newContext = async (browser, options) => {
  const context = await browser.newContext(options);
  opened.push(context);
  return context;
};

// A page that fails the test at the first error of its script, on the day that is asked for.
export async function open(browser, house, { view, at = tripDay, context, ...options } = {}) {
  const home = context ?? (await newContext(browser, { viewport: phone, ...options }));
  const page = await home.newPage();
  page.errors = [];
  page.on('pageerror', (error) => page.errors.push(String(error)));
  page.on('dialog', (dialog) => {
    page.errors.push('a dialog: ' + dialog.message());
    dialog.dismiss();
  });
  await page.clock.install({ time: new Date(at) });
  await page.clock.resume();
  if (options.javaScriptEnabled !== false) {
    for (const step of ['goto', 'reload']) {
      const plain = page[step].bind(page);
      page[step] = async (...how) => {
        await plain(...how);
        await ready(page);
      };
    }
  }
  await page.goto(address(house, view));
  return page;
}

// To another part of the page.
export const go = async (page, view) => {
  await page.evaluate((hash) => (location.hash = hash), view);
  await page.waitForFunction((hash) => document.documentElement.dataset.view === (/^\d/.test(hash) ? 'today' : hash.match(/[a-z]+/)[0].replace('stop', 'shop')), view);
};

// All that lies folded in the page, as a browser without a script shows it.
export const layOut = (page) =>
  page.evaluate(() => document.querySelectorAll('noscript.folded').forEach((fold) => (fold.outerHTML = fold.textContent)));

// Sums follow a tick once its row is painted.
export const settled = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done))));

// Ticks a box; once more where the first touch came while the row was laid out anew, as on a busy machine.
export const tickBox = (box) => box.check().catch(() => box.check());

export const openAll = (page) => page.evaluate(() => document.querySelectorAll('details').forEach((d) => (d.open = true)));

// By line: what list.md calls the food.
export const namesOnList = (house) =>
  [...readFileSync(`${place}/${house}/list.md`, 'utf8').matchAll(/^- \[ \] .*\*\*(.+)\*\*/gm)].map((line) => line[1]);

export const money = (currency, cents) => currency.sign + (cents / 100).toFixed(2);

// A page of paper in points, and how many there are.
export const sheets = (pdf) => (pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g) ?? []).length;
export const print = (page) => page.pdf({ format: 'A4', preferCSSPageSize: true });
