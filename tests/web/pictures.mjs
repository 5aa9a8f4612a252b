// Pictures of the page at each size, to be looked at: `node pictures.mjs MONTH.HTML FOLDER [NAME...]`,
// with WEB_TOOLS and WEB_BROWSER as in page.sh. The demo's dates are those that are shown.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';

const require = createRequire(process.env.WEB_TOOLS + '/');
const { chromium } = require('playwright-core');
const [file, folder, ...only] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });

const phone = { width: 390, height: 844 };
const tablet = { width: 768, height: 1024 };
const desk = { width: 1280, height: 900 };
const shopping = '2027-03-06T10:12:00';
const evening = '2027-03-09T17:10:00';

const ready = (page) => page.waitForFunction(() => document.documentElement.dataset.ready !== undefined);
const tickSome = async (page) => {
  const boxes = await page.locator('.stop[open] .walk li:not(.done) label > input').all();
  for (const box of boxes.slice(0, 5)) await box.check();
  await page.waitForTimeout(1000);
  await page.evaluate(() => scrollTo(0, 0));
};
const open = (view) => async (page) => {
  await page.evaluate((hash) => (location.hash = hash), view);
  await page.waitForTimeout(150);
};
const dish = (name) => async (page) => {
  const id = await page.evaluate((n) => JSON.parse(document.getElementById('dishes-data').textContent).dishes.findIndex((d) => d.n === n), name);
  await open(`dish${id}`)(page);
};
const panel = async (page) => {
  await tickSome(page);
  await page.locator('.stop[open] .walk li:not(.done) .price').nth(2).click();
};

const pictures = {
  'phone-trip': [phone, shopping, tickSome],
  'phone-trip-dark': [phone, shopping, tickSome, { colorScheme: 'dark' }],
  'phone-panel': [phone, shopping, panel],
  'phone-receipt': [phone, shopping, async (page) => { await tickSome(page); await page.locator('.stop[open] .save').click(); }],
  'phone-day': [phone, evening],
  'phone-day-dark': [phone, evening, null, { colorScheme: 'dark' }],
  'phone-dish': [phone, evening, dish('Smoky lentil soup')],
  'phone-timers': [phone, evening, async (page) => { await dish('Smoky lentil soup')(page); await page.locator('#dishes .timer').first().click(); }],
  'phone-shop': [phone, shopping, open('shop')],
  'phone-menu': [phone, evening, open('menu')],
  'phone-cook': [phone, evening, open('cook')],
  'phone-session': [phone, evening, open('session0')],
  'phone-more': [phone, shopping, async (page) => { await tickSome(page); await open('more')(page); await page.getByRole('button', { name: 'QR code' }).click(); }],
  'phone-figures': [phone, evening, open('figures')],
  'phone-large-text': [phone, shopping, async (page) => { await page.addStyleTag({ content: 'html { font-size: 200% }' }); await tickSome(page); }],
  'small-trip': [{ width: 320, height: 640 }, shopping, tickSome],
  'tablet-trip': [tablet, shopping, tickSome],
  'tablet-dish': [tablet, evening, dish('Roast chicken')],
  'desk-trip': [desk, shopping, tickSome],
  'desk-day': [desk, evening],
  'desk-menu': [desk, evening, open('menu')],
  'desk-session': [desk, evening, open('session0')],
  'desk-figures': [desk, evening, open('figures')],
  'desk-labels': [desk, evening, open('labels')],
};
// Parts that are printed.
const sheets = { shop: 'shop', menu: 'menu', cook: 'cook', labels: 'labels', day: '2027-03-09', dish: 'dish0' };

// Those of the README, small enough to lie in the repository.
const small = { 'phone-trip': 'trip', 'phone-dish': 'dish', 'phone-day': 'day' };
const toWebp = async (browser, from, to) => {
  const page = await browser.newPage();
  const data = await page.evaluate(async (png) => {
    const image = new Image();
    image.src = `data:image/png;base64,${png}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.width, image.height];
    canvas.getContext('2d').drawImage(image, 0, 0);
    return canvas.toDataURL('image/webp', 0.8).split(',')[1];
  }, readFileSync(from).toString('base64'));
  writeFileSync(to, Buffer.from(data, 'base64'));
  await page.close();
};

const args = process.getuid() === 0 ? ['--no-sandbox'] : [];
const browser = await chromium.launch({ executablePath: process.env.WEB_BROWSER, args });
for (const [name, [viewport, time, act, more]] of Object.entries(pictures)) {
  if (only.length && !only.includes(name)) continue;
  const page = await (await browser.newContext({ viewport, deviceScaleFactor: 1, ...more })).newPage();
  page.on('pageerror', (error) => console.log(`${name}: ${error}`));
  await page.clock.install({ time: new Date(time) });
  await page.clock.resume();
  await page.goto('file://' + resolve(file));
  await ready(page);
  if (act) await act(page);
  await page.screenshot({ path: `${folder}/${name}.png`, fullPage: name.startsWith('desk-session') });
  if (small[name]) await toWebp(browser, `${folder}/${name}.png`, `${folder}/${small[name]}.webp`);
  await page.context().close();
}
for (const [name, view] of Object.entries(sheets)) {
  if (only.length && !only.includes(name)) continue;
  const page = await (await browser.newContext()).newPage();
  page.on('pageerror', (error) => console.log(`${name}: ${error}`));
  await page.goto(`file://${resolve(file)}#${view}`);
  await ready(page);
  await page.pdf({ path: `${folder}/${name}.pdf`, format: 'A4', preferCSSPageSize: true });
  await page.context().close();
}
await browser.close();
