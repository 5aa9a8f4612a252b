// A trip with the phone: its stop, its surprises, its receipt, a second phone, a list made anew.
import assert from 'node:assert/strict';
import { copyFileSync, readFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { address, go, launch, layOut, money, namesOnList, newContext, open, pageData, phone, place, ready, result, settled, tripDay, tickBox } from './browser.mjs';

let browser;
const demo = result('demo');
const names = namesOnList('demo');
before(async () => (browser = await launch()));
after(() => browser.close());

const cents = (amount) => money(demo.currency, amount);
const row = (page, l) => page.locator(`#l${l}`);
const tick = (page, l) => row(page, l).locator('label').click();
const purse = async (page) => {
  await settled(page);
  return page.locator('#purse p').innerText();
};
const linesOf = (v) => demo.purchases.map((p, l) => ({ ...p, l })).filter((p) => p.visit === v);
// The stop of the trip day, and one with a credit.
const here = demo.visits.findIndex((v) => v.date === tripDay.slice(0, 10));
const stored = (page) => page.evaluate(() => JSON.parse(localStorage.getItem(JSON.parse(document.getElementById('data').textContent).key)));
const surprise = async (page, l, label, value) => {
  const price = row(page, l).locator('.price');
  if (!(await price.isVisible())) await page.getByRole('button', { name: /Show \d+ found/ }).click();
  if ((await price.getAttribute('aria-expanded')) !== 'true') await price.click();
  const input = row(page, l).getByLabel(label);
  await input.fill(value);
  await input.press('Tab');
};

test('every line stands at its stop with its price, in the order of result.json', async () => {
  const page = await open(browser, 'demo', { view: 'shop' });
  await layOut(page);
  const lines = await page.$$eval('#shop li[id]', (rows) =>
    rows.map((one) => ({ id: one.id, stop: one.closest('details').id, food: one.querySelector('bdi').textContent, cost: Number(one.querySelector('data').value) })));
  assert.deepEqual(lines, demo.purchases.map((p, l) => ({ id: `l${l}`, stop: `stop${p.visit}`, food: names[l], cost: p.cost })));
  assert.match(await page.locator('.month-sum').innerText(), new RegExp(`^\\${cents(0)} of \\${cents(demo.paid)} bought in all; the budget is \\${cents(115000)}`));
  for (const [v, visit] of demo.visits.entries()) {
    assert.equal(await page.locator(`#stop${v} .left`).textContent(), `${linesOf(v).length} to find, ${cents(visit.paid)}`);
  }
  assert.deepEqual(page.errors, []);
});

test('a trip day opens at its stop, whatever was left of earlier ones', async () => {
  const page = await open(browser, 'demo');
  assert.equal(await page.locator('.stop[open]').count(), 1);
  assert.equal(await page.locator('.stop[open]').getAttribute('id'), `stop${here}`);
  const first = await page.locator(`#stop${here} li[id] label`).first().boundingBox();
  assert.ok(first.y + first.height < phone.height - 104, `the first line ends at ${first.y + first.height}`);
  assert.deepEqual(await page.$$eval('#shop .stop', (all) => all.filter((s) => s.checkVisibility()).map((s) => s.id)),
    demo.visits.map((v, i) => [v.date, `stop${i}`]).filter(([date]) => date === tripDay.slice(0, 10)).map(([, id]) => id));
  assert.match(await purse(page), new RegExp(`of \\${cents(demo.visits[here].paid)}, ${linesOf(here).length} to find`));
});

test('a row is at least 48 px high and the whole of it ticks', async () => {
  const page = await open(browser, 'demo');
  const heights = await page.$$eval(`#stop${here} li[id] label`, (all) => all.map((e) => e.getBoundingClientRect().height));
  assert.ok(heights.length > 5 && Math.min(...heights) >= 48, `${Math.min(...heights)} px`);
  const l = linesOf(here)[0].l;
  const box = await row(page, l).locator('label').boundingBox();
  await page.mouse.click(box.x + box.width - 4, box.y + 4);
  assert.ok(await row(page, l).locator('input').isChecked());
});

test('what is found folds away, is counted, and can be shown and taken back', async () => {
  const page = await open(browser, 'demo');
  const [a, b] = linesOf(here);
  await tick(page, a.l);
  await tick(page, b.l);
  await row(page, b.l).waitFor({ state: 'hidden' });
  assert.equal(await purse(page), `${cents(a.cost + b.cost)} of ${cents(demo.visits[here].paid)}, ${linesOf(here).length - 2} to find`);
  await page.getByRole('button', { name: /Show 2 found/ }).click();
  assert.ok(await row(page, a.l).isVisible());
  await page.getByRole('button', { name: /Hide 2 found/ }).click();
  assert.ok(!(await row(page, a.l).isVisible()));
  await page.locator('#purse').getByRole('button', { name: /Undo/ }).click();
  assert.ok(await row(page, b.l).isVisible());
  assert.ok(!(await row(page, b.l).locator('input').isChecked()));
  await page.reload();
  assert.ok(await row(page, a.l).locator('input').isChecked());
  assert.ok(!(await row(page, b.l).locator('input').isChecked()));
  assert.deepEqual(page.errors, []);
});

test('a search leaves what it finds, found or not', async () => {
  const page = await open(browser, 'demo');
  const mine = linesOf(here);
  await tick(page, mine[0].l);
  const word = names[mine[0].l].slice(0, 5).toLowerCase();
  await page.getByRole('searchbox').fill(word);
  const shown = await page.$$eval(`#stop${here} li[id]`, (all) => all.filter((e) => e.checkVisibility()).map((e) => Number(e.id.slice(1))));
  const text = await page.$$eval(`#stop${here} li[id]`, (all) => all.map((e) => [Number(e.id.slice(1)), e.textContent.toLowerCase()]));
  assert.deepEqual(shown, text.filter(([, words]) => words.includes(word)).map(([l]) => l));
  assert.ok(shown.includes(mine[0].l) && shown.length < mine.length);
});

test('the credit and the tax of a stop are its own', async () => {
  const data = await pageData(await open(browser, 'demo'));
  const v = demo.visits.findIndex((visit) => visit.credit > 0);
  assert.ok(v >= 0, 'the demo has no stop with a credit');
  const page = await open(browser, 'demo', { at: `${demo.visits[v].date}T10:00:00` });
  await go(page, `stop${v}`);
  await page.locator(`#stop${v} .left`).waitFor();
  let goods = 0;
  let tax = 0;
  for (const line of linesOf(v)) {
    const rate = data.stops[v].tax[data.lines[line.l].d] ?? 0;
    await tickBox(row(page, line.l).locator('label > input'));
    goods += line.cost;
    tax += Math.round((line.cost * rate) / 1e6);
    if (goods > demo.visits[v].credit * 2 && tax > 0) break;
  }
  const due = goods + tax - Math.min(goods + tax, demo.visits[v].credit);
  assert.match(await purse(page), new RegExp(`^\\${cents(due)} of \\${cents(demo.visits[v].paid)}`));
  for (const [s, stop] of data.stops.entries()) assert.equal(stop.credit, demo.visits[s].credit);
});

test('three surprises of a stop go into its sum and its receipt', async () => {
  const page = await open(browser, 'demo');
  const mine = linesOf(here).filter((p) => p.cost > 150);
  const packs = mine.find((p) => !p.by_weight && p.packs === 1);
  const [dear, other] = mine.filter((p) => p !== packs);
  const gone = linesOf(here).at(-1);
  await surprise(page, packs.l, 'How many', '2');
  await surprise(page, dear.l, 'Paid in all', '9.87');
  await surprise(page, other.l, 'Something else instead', '1 lb shallots');
  await surprise(page, other.l, 'Note', 'looked better');
  await page.locator('.stop[open] .price').last().click();
  await page.getByRole('button', { name: /: not here$/ }).last().click();
  const sum = packs.cost * 2 + 987 + other.cost;
  assert.match(await purse(page), new RegExp(`^\\${cents(sum)} of `));

  await page.getByRole('button', { name: 'Save as a receipt' }).click();
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save the file' }).click()]);
  assert.match(download.suggestedFilename(), /^2027-03-06-[a-z-]+\.yaml$/);
  const text = readFileSync(await download.path(), 'utf8');
  assert.ok(text.startsWith(`shop: fairfield-market\ndate: 2027-03-06\nlines:\n`), text);
  assert.ok(text.includes(`, 9.87`), text);
  assert.ok(text.includes(`, ${((packs.cost * 2) / 100).toFixed(2)}`), text);
  assert.match(text, new RegExp(`\\{bought: 1 lb shallots, paid: ${(other.cost / 100).toFixed(2)}, instead of: ${other.food}\\} # looked better`));
  assert.ok(text.includes(`missing:\n  - ${gone.food}\n`), text);
  assert.ok(text.endsWith(`total: ${(sum / 100).toFixed(2)}\n`), text);
  await page.getByRole('button', { name: 'Close' }).click();

  await page.reload();
  assert.match(await purse(page), new RegExp(`^\\${cents(sum)} of `));
  assert.deepEqual(page.errors, []);
});

test('a number that is none is refused and changes nothing', async () => {
  const page = await open(browser, 'demo');
  const l = linesOf(here)[0].l;
  await surprise(page, l, 'Paid in all', 'a lot');
  await surprise(page, l, /How m/, 'some');
  assert.equal(await row(page, l).getByLabel(/How m/).getAttribute('aria-invalid'), 'true');
  assert.equal(await row(page, l).getByLabel('Paid in all').getAttribute('aria-invalid'), 'true');
  assert.ok(!(await row(page, l).locator('label > input[type=checkbox]').isChecked()));
});

test('what is not here goes to the best later stop, and back as it was', async () => {
  const page = await open(browser, 'demo');
  const data = await pageData(page);
  const l = data.lines.findIndex((line) => line.s === here && line.o.length > 0);
  assert.ok(l >= 0);
  const [stop, cost, count] = data.lines[l].o[0];
  await tick(page, l);
  await page.getByRole('button', { name: /Show 1 found/ }).click();
  await row(page, l).locator('.price').click();
  await row(page, l).getByRole('button', { name: /not here/ }).click();
  assert.match(await row(page, l).locator('.now').innerText(), new RegExp(`Not here: now at ${data.stops[stop].shop}, ${data.stops[stop].day}, ${count}, \\${cents(cost)}`));
  await settled(page);
  assert.match(await page.locator(`#stop${stop} .left`).textContent(), new RegExp(`^${linesOf(stop).length + 1} to find`));
  const moved = page.locator(`#stop${stop} li.moved`);
  assert.equal(await moved.count(), 1);
  // In the order in which one walks there.
  const departments = await page.$$eval(`#stop${stop} .walk section`, (all) => all.map((one) => Number(one.dataset.d)));
  const ranks = departments.map((d) => data.stops[stop].walk.indexOf(d)).filter((rank) => rank >= 0);
  assert.deepEqual(ranks, [...ranks].sort((a, b) => a - b));
  await row(page, l).locator('.price').click();
  await row(page, l).getByRole('button', { name: /put back/ }).click();
  assert.equal(await moved.count(), 0);
  assert.ok(await row(page, l).locator('label > input').isChecked(), 'it was found before');
  assert.deepEqual(page.errors, []);
});

test('what nobody has in time says so and who waits', async () => {
  const page = await open(browser, 'demo', { view: 'shop' });
  const data = await pageData(page);
  const l = data.lines.findIndex((line) => line.o.length === 0 && line.w.length > 0);
  await go(page, `stop${data.lines[l].s}`);
  await row(page, l).locator('.price').click();
  await row(page, l).getByRole('button', { name: /not here/ }).click();
  const note = await row(page, l).locator('.now').innerText();
  assert.ok(note.includes('No later stop has it in time.') && note.includes(data.meals[data.lines[l].w[0]]), note);
});

test('every other place lies later on the way, and is in time unless it says for whom not', async () => {
  const page = await open(browser, 'demo');
  const data = await pageData(page);
  let offers = 0;
  for (const [l, line] of data.lines.entries()) {
    const uses = demo.supplies.filter((s) => s.purchase === l).map((s) => demo.uses[s.use]);
    const first = uses.map((use) => use.date).sort()[0];
    for (const [stop, cost, , , , late] of line.o) {
      offers += 1;
      assert.ok(stop > line.s && cost > 0);
      if (late) assert.ok(data.stops[stop].date >= first && late.length > 0);
      else assert.ok(data.stops[stop].date <= first, `${line.f} at ${data.stops[stop].shop}, needed on ${first}`);
    }
  }
  assert.ok(offers > 100, `${offers} offers`);
});

test('a list that is made anew keeps what was ticked, and shows what was bought and is no longer planned', async () => {
  const page = await open(browser, 'demo');
  const mine = linesOf(here);
  for (const p of mine) await tickBox(row(page, p.l).locator('label > input'));
  await settled(page);
  const sum = await page.locator('#purse b').innerText();
  await page.evaluate(() => new Promise((done) => setTimeout(done, 600)));
  copyFileSync(`${place}/demo/month.html`, `${place}/before.html`);
  copyFileSync(`${place}/changed/month.html`, `${place}/demo/month.html`);
  try {
    await page.reload();
    const anew = await pageData(page);
    const now = anew.lines.filter((line) => anew.stops[line.s].date === tripDay.slice(0, 10)).map((line) => line.f);
    const lost = mine.filter((p) => !now.includes(p.food));
    assert.deepEqual(lost.map((p) => p.food), ['pepperoni']);
    assert.deepEqual(await page.$$eval('li.stranger bdi', (all) => all.map((e) => e.textContent)), ['pepperoni']);
    assert.match(await page.locator('li.stranger .now').textContent(), /no longer on the list/);
    // Only what is newly wanted is still to be found.
    const fresh = now.filter((food) => !mine.some((p) => p.food === food));
    assert.match(await page.locator(`#stop${here} .left`).textContent(), fresh.length ? new RegExp(`^${fresh.length} to find`) : /all found/);
    await page.locator(`#stop${here} > summary`).click();
    assert.equal(await page.locator('#purse b').innerText(), sum, 'what is in the cart');
    assert.deepEqual(page.errors, []);
  } finally {
    copyFileSync(`${place}/before.html`, `${place}/demo/month.html`);
  }
});

test('the address holds the ticks: what storage loses comes back with it', async () => {
  const page = await open(browser, 'demo');
  const [a, b] = linesOf(here);
  await tick(page, a.l);
  await tick(page, b.l);
  await page.waitForTimeout(600);
  const hash = await page.evaluate(() => location.hash);
  assert.ok(hash.length <= 60, hash);
  await page.evaluate(() => localStorage.clear());
  await page.reload();
  assert.equal(await page.locator(`#stop${here} input:checked`).count(), 2);
});

test('two phones merge line by line, the last change of each', async () => {
  const one = await open(browser, 'demo');
  const two = await open(browser, 'demo', { at: '2027-03-06T10:20:00' });
  const [a, b, c, d] = linesOf(here);
  for (const p of [a, b, c]) await tick(one, p.l);
  await surprise(one, c.l, 'Paid in all', '4.44');
  // The second puts `a` on and off, later than the first, and finds `d`.
  await tick(two, a.l);
  await two.locator('#purse').getByRole('button', { name: /Undo/ }).click();
  await tick(two, d.l);
  await go(one, 'more');
  await one.getByRole('button', { name: 'Show as a QR code' }).click();
  assert.ok(await one.getByRole('img', { name: /QR code/ }).isVisible());
  const codeOf = async (page) => {
    await go(page, 'more');
    return page.evaluate(() => { let copied = ''; navigator.clipboard.writeText = async (text) => { copied = text; }; [...document.querySelectorAll('#more button')].find((x) => x.textContent === 'Copy the link').click(); return copied; });
  };
  const [first, second] = [await codeOf(one), await codeOf(two)];
  assert.match(first, /month\.html#today~/);
  await two.goto(first); // as a link
  await one.getByLabel('A link or ticks from another phone').fill(second); // as a text
  await one.getByLabel('A link or ticks from another phone').press('Tab');
  const found = async (page) => Object.entries((await stored(page)).ticks).filter(([, r]) => r.f).map(([key, r]) => [key.split('|')[0], r.c]).sort();
  const expected = [[b.food, undefined], [c.food, 444], [d.food, undefined]].sort();
  assert.deepEqual(await found(two), expected);
  assert.deepEqual(await found(one), expected);
  assert.match(await two.locator('.told').innerText(), /updated/);
  assert.deepEqual([...one.errors, ...two.errors], []);
});

test('a link that cannot be read changes nothing and says so', async () => {
  const page = await open(browser, 'demo', { view: 'today~!!!not-a-code' });
  assert.match(await page.locator('.told').innerText(), /cannot be read/);
  assert.deepEqual(page.errors, []);
});

test('a browser that refuses storage has a list that works and says what keeps the ticks', async () => {
  const context = await newContext(browser, { viewport: phone });
  await context.addInitScript(() =>
    Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('refused', 'SecurityError'); } }));
  const page = await open(browser, 'demo', { context });
  await tick(page, linesOf(here)[0].l);
  await settled(page);
  assert.match(await page.locator(`#stop${here} .left`).textContent(), new RegExp(`^${linesOf(here).length - 1} to find`));
  assert.match(await page.locator('.warn:visible').innerText(), /stores nothing.*address/);
  await page.waitForFunction(() => location.hash.includes('~'));
  await page.reload();
  assert.equal(await page.locator(`#stop${here} input:checked`).count(), 1);
  assert.deepEqual(page.errors, []);
});

test('the keyboard alone ticks, opens a line, says what is not here, and keeps its place', async () => {
  const page = await open(browser, 'demo', { viewport: { width: 1200, height: 900 } });
  const l = linesOf(here)[0].l;
  const focused = () => page.evaluate(() => `${document.activeElement.closest('li')?.id} ${document.activeElement.tagName}`);
  for (let i = 0; i < 40 && (await focused()) !== `l${l} INPUT`; i++) await page.keyboard.press('Tab');
  assert.equal(await focused(), `l${l} INPUT`);
  const outline = await page.evaluate(() => getComputedStyle(document.activeElement).outlineStyle + getComputedStyle(document.activeElement).outlineWidth);
  assert.equal(outline, 'solid3px');
  await page.keyboard.press('Tab');
  assert.equal(await focused(), `l${l} BUTTON`);
  await page.keyboard.press('Enter');
  assert.equal(await row(page, l).locator('.price').getAttribute('aria-expanded'), 'true');
  await row(page, l).getByRole('button', { name: /not here/ }).focus();
  await page.keyboard.press('Enter');
  assert.equal(await focused(), `l${l} BUTTON`);
  assert.notEqual(await page.locator('#said').textContent(), '');
});

test('ticks from another tab of the browser appear', async () => {
  const context = await newContext(browser, { viewport: phone });
  const one = await open(browser, 'demo', { context });
  const two = await context.newPage();
  await two.goto(address('demo', tripDay.slice(0, 10)));
  await ready(two);
  const l = linesOf(here)[0].l;
  await row(two, l).locator('label').click();
  await one.waitForFunction((id) => document.querySelector(`#l${id} input`).checked, l);
});

test('all ticks can be taken off, and stay off when an older address is opened again', async () => {
  const page = await open(browser, 'demo');
  await tick(page, linesOf(here)[0].l);
  await page.waitForFunction(() => location.hash.includes('~'));
  const old = await page.evaluate(() => location.href);
  await go(page, 'more');
  page.removeAllListeners('dialog');
  page.on('dialog', (dialog) => dialog.accept());
  await page.getByRole('button', { name: 'Clear all ticks' }).click();
  await page.goto(old);
  await page.reload();
  assert.equal(await page.locator('#shop input:checked').count(), 0);
  assert.deepEqual(page.errors, []);
});
