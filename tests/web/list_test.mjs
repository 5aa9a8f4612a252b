import assert from 'node:assert/strict';
import { copyFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { address, launch, money, namesOnList, open, openAll, pageData, place, result } from './browser.mjs';

let browser;
const demo = result('demo');
const names = namesOnList('demo');
before(async () => (browser = await launch()));
after(() => browser.close());

const box = (l) => `#l${l} input`;
const purse = (page) => page.locator('#purse').innerText();
const ticked = (page) => page.locator('main input[type=checkbox]:checked').count();
const find = (test_) => demo.purchases.findIndex(test_);

test('every line stands at its stop with its price, in the order of result.json', async () => {
  const page = await open(browser, 'demo');
  const lines = await page.$$eval('#list li[id]', (rows) =>
    rows.map((row) => ({
      id: row.id,
      stop: row.closest('details').id,
      food: row.querySelector('bdi').textContent,
      cost: Number(row.querySelector('data').value),
    })));
  assert.deepEqual(lines, demo.purchases.map((p, l) => ({ id: `l${l}`, stop: `stop${p.visit}`, food: names[l], cost: p.cost })));
  const text = await purse(page);
  assert.ok(text.includes(`of ${money(demo.currency, demo.paid)} in the basket`), text);
  for (const [v, visit] of demo.visits.entries()) {
    const left = await page.locator(`#stop${v} .left`).innerText();
    assert.equal(left, `${demo.purchases.filter((p) => p.visit === v).length} to find, ${money(demo.currency, visit.paid)}`);
  }
  assert.deepEqual(page.errors, []);
});

test('ticks and sums outlast the page, and a plan that is compiled again', async () => {
  const page = await open(browser, 'demo');
  await openAll(page);
  // Two lines of the stop with tax, one of another stop. Its store credit is used up first.
  const data = await pageData(page);
  const s = data.stops.findIndex((stop) => Object.keys(stop.tax).length > 0 && stop.credit > 0);
  const taxed = find((p, l) => p.visit === s && data.stops[s].tax[data.lines[l].d]);
  const plain = find((p, l) => p.visit === s && !data.stops[s].tax[data.lines[l].d] && p.cost > 1000);
  const other = find((p) => p.visit !== s && data.stops[p.visit].credit === 0);
  for (const l of [taxed, plain, other]) await page.locator(`#l${l} label`).click();
  const [a, b, c] = [taxed, plain, other].map((l) => demo.purchases[l].cost);
  const rate = data.stops[s].tax[data.lines[taxed].d] / 1e6;
  const due = a + b + Math.round(a * rate);
  const basket = due - Math.min(due, data.stops[s].credit) + c;
  const expected = [`${money(demo.currency, basket)} of ${money(demo.currency, demo.paid)} in the basket`, `${demo.purchases.length - 3} to find, ${money(demo.currency, demo.paid - basket)}`];
  for (const words of expected) assert.ok((await purse(page)).includes(words), `${words} is not in: ${await purse(page)}`);
  assert.match(await page.locator(`#stop${s} .basket`).textContent(), new RegExp(`In the basket \\${money(demo.currency, basket - c)} of `));

  await page.reload();
  for (const words of expected) assert.ok((await purse(page)).includes(words), await purse(page));
  for (const l of [taxed, plain, other]) assert.ok(await page.locator(box(l)).isChecked());
  assert.equal(await ticked(page), 3);

  const keys = [taxed, plain, other].map((l) => data.lines[l].k);
  copyFileSync(`${place}/demo/month.html`, `${place}/before.html`);
  copyFileSync(`${place}/changed/month.html`, `${place}/demo/month.html`);
  try {
    await page.reload();
    const anew = await pageData(page);
    for (const key of keys) {
      const l = anew.lines.findIndex((line) => line.k === key);
      assert.ok(l >= 0 && (await page.locator(box(l)).isChecked()), `${key} is no longer ticked`);
    }
    assert.equal(await ticked(page), 3);
  } finally {
    copyFileSync(`${place}/before.html`, `${place}/demo/month.html`);
  }
  assert.deepEqual(page.errors, []);
});

test('a tick for another number of packs asks to be made again', async () => {
  const page = await open(browser, 'demo');
  const data = await pageData(page);
  await page.evaluate(([key, line]) => localStorage.setItem(key, JSON.stringify({ ticks: { [line]: 99 } })), [data.key, data.lines[0].k]);
  await page.reload();
  assert.equal(await ticked(page), 0);
  assert.match(await page.locator('#l0 .note').innerText(), /ticked when the list said 99/);
});

test('what is not here goes to the best later stop, with the sums, and comes back', async () => {
  const page = await open(browser, 'demo');
  await openAll(page);
  const data = await pageData(page);
  const l = data.lines.findIndex((line) => {
    const to = data.stops[line.o[0]?.[0]];
    return line.o.length > 1 && line.o[0].length === 4 && to.credit === 0 && !to.tax[line.d] && !data.stops[line.s].tax[line.d];
  });
  assert.ok(l >= 0);
  const line = data.lines[l];
  const [stop, , cost, count] = line.o[0];
  await page.locator(box(l)).check();
  await page.getByRole('button', { name: `${names[l]}: not here` }).first().click();

  const note = await page.locator(`#l${l} .note`).innerText();
  assert.ok(note.includes(`Now at ${data.stops[stop].shop}, ${data.stops[stop].day}: ${count}, ${money(demo.currency, cost)}.`), note);
  assert.ok(note.includes(`Waiting for it: ${data.meals[line.w[0]]}`), note);
  const moved = page.locator(`#stop${stop} li.moved`);
  assert.equal(await moved.count(), 1);
  assert.ok((await moved.innerText()).includes(`from ${data.stops[line.s].shop}, ${data.stops[line.s].day}`));
  assert.equal(await ticked(page), 0); // what was in the basket was not
  const sum = demo.paid - line.c + cost;
  assert.ok((await purse(page)).includes(money(demo.currency, sum)), await purse(page));
  assert.match(await page.locator(`#stop${stop} .left`).innerText(), new RegExp(`^${demo.purchases.filter((p) => p.visit === stop).length + 1} to find`));

  await moved.locator('input').check();
  await page.reload();
  await openAll(page);
  assert.ok(await page.locator(`#stop${stop} li.moved input`).isChecked());
  assert.ok((await purse(page)).includes(`${money(demo.currency, cost)} of ${money(demo.currency, sum)} in the basket`), await purse(page));

  // Not there either: on to the next that is later still, or to nobody.
  await page.locator(`#stop${stop} li.moved button`).click();
  const next = line.o.find((offer) => offer[0] > stop);
  const after_ = await page.locator(`#l${l} .note`).innerText();
  assert.ok(after_.includes(next ? data.stops[next[0]].shop : 'No later stop has it in time'), after_);
  await page.locator(`#l${l} button`).click();
  await page.locator(`#l${l} button`).click();
  assert.equal(await page.locator('li.moved').count(), 0);
  assert.ok((await purse(page)).includes(`$0.00 of ${money(demo.currency, demo.paid)} in the basket`), await purse(page));
  assert.deepEqual(page.errors, []);
});

test('a line goes to its department in the order in which one walks there', async () => {
  const page = await open(browser, 'demo');
  await openAll(page);
  const data = await pageData(page);
  const l = data.lines.findIndex((line) => line.o.length && !data.lines.some((x) => x.s === line.o[0][0] && x.d === line.d));
  assert.ok(l >= 0, 'the demo has no line whose next stop lacks its department');
  await page.locator(`#l${l} button`).click();
  const stop = data.lines[l].o[0][0];
  const departments = await page.$$eval(`#stop${stop} .walk ul`, (lists) => lists.map((list) => Number(list.dataset.d)));
  const ranks = departments.map((d) => data.stops[stop].walk.indexOf(d)).filter((rank) => rank >= 0);
  assert.deepEqual(ranks, [...ranks].sort((a, b) => a - b));
  assert.ok(departments.includes(data.lines[l].d));
});

test('what nobody has in time says so and who waits, and leaves the sums', async () => {
  const page = await open(browser, 'demo');
  await openAll(page);
  const data = await pageData(page);
  const l = data.lines.findIndex((line) => line.o.length === 0 && line.w.length > 0 && !data.stops[line.s].tax[line.d]);
  await page.locator(`#l${l} button`).click();
  const note = await page.locator(`#l${l} .note`).innerText();
  assert.ok(note.includes('No later stop has it in time.') && note.includes(data.meals[data.lines[l].w[0]]), note);
  assert.ok((await purse(page)).includes(money(demo.currency, demo.paid - data.lines[l].c)), await purse(page));
  assert.ok((await purse(page)).includes('1 not to be had'), await purse(page));
});

test('every other place lies later on the way, and is in time unless it says for whom not', async () => {
  const page = await open(browser, 'demo');
  const data = await pageData(page);
  let offers = 0;
  for (const [l, line] of data.lines.entries()) {
    const uses = demo.supplies.filter((s) => s.purchase === l).map((s) => demo.uses[s.use]);
    const first = uses.map((use) => use.date).sort()[0];
    for (const [stop, packs, cost, , late] of line.o) {
      offers += 1;
      assert.ok(stop > line.s && packs > 0 && cost > 0);
      if (late) assert.ok(data.stops[stop].date >= first && late.length > 0);
      else assert.ok(data.stops[stop].date <= first, `${line.k} at ${data.stops[stop].key}, needed on ${first}`);
    }
  }
  assert.ok(offers > 100, `${offers} offers`);
});

test('a browser that refuses storage has a list that works and says that it keeps nothing', async () => {
  const context = await browser.newContext({ viewport: { width: 360, height: 740 } });
  await context.addInitScript(() =>
    Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('refused', 'SecurityError'); } }));
  const page = await context.newPage();
  const errors = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  await page.goto(address('demo'));
  await page.locator(box(0)).check();
  assert.ok((await purse(page)).includes(`${demo.purchases.length - 1} to find`));
  assert.match(await page.locator('.warn').innerText(), /keeps nothing/);
  assert.deepEqual(errors, []);
});

test('the keyboard alone ticks, says what is not here, and keeps its place', async () => {
  const page = await open(browser, 'demo', { viewport: { width: 1200, height: 900 } });
  const focused = () => page.evaluate(() => document.activeElement.closest('li')?.id + ' ' + document.activeElement.tagName);
  for (let i = 0; i < 40 && (await focused()) !== 'l0 INPUT'; i++) await page.keyboard.press('Tab');
  assert.equal(await focused(), 'l0 INPUT');
  const outline = await page.evaluate(() => getComputedStyle(document.activeElement).outlineStyle + getComputedStyle(document.activeElement).outlineWidth);
  assert.equal(outline, 'solid3px');
  await page.keyboard.press('Space');
  assert.ok(await page.locator(box(0)).isChecked());
  await page.keyboard.press('Tab');
  assert.equal(await focused(), 'l0 BUTTON');
  await page.keyboard.press('Enter');
  assert.ok(await page.locator('#l0').evaluate((row) => row.classList.contains('gone')));
  assert.equal(await focused(), 'l0 BUTTON');
  assert.notEqual(await page.locator('#said').textContent(), '');
  await page.keyboard.press('Enter');
  assert.ok(!(await page.locator('#l0').evaluate((row) => row.classList.contains('gone'))));
});
