// Days, dishes, sessions: what the page says, and what it does while one cooks.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { go, launch, layOut, newContext, open, pageData, result, weekday } from './browser.mjs';

let browser;
const demo = result('demo');
before(async () => (browser = await launch()));
after(() => browser.close());

const shownDays = (page) => page.$$eval('.day', (all) => all.filter((d) => d.checkVisibility()).map((d) => d.id.slice(1)));

test('a day that is no trip opens on itself, with what is taken out, cooked and eaten', async () => {
  const page = await open(browser, 'demo', { at: weekday });
  assert.deepEqual(await shownDays(page), ['2027-03-09']);
  assert.equal(await page.locator('.stop:visible').count(), 0);
  assert.equal(await page.locator('#purse').isVisible(), false);
  const text = await page.locator('.day.here').innerText();
  for (const meal of demo.meals.filter((m) => m.date === '2027-03-09'))
    for (const dish of meal.dishes) assert.ok(text.includes(dish.name), dish.name);
  assert.match(text, /Signe is with you.*Joost is away/);
});

test('an address with a day opens that day, and one can go on from there', async () => {
  const page = await open(browser, 'demo', { at: weekday, view: '2027-03-10' });
  assert.deepEqual(await shownDays(page), ['2027-03-10']);
  await page.getByRole('link', { name: 'The day after' }).click();
  await page.waitForFunction(() => document.querySelector('.day.here').id === 'd2027-03-11');
  await page.getByRole('link', { name: 'Today' }).last().click();
  await page.waitForFunction(() => document.querySelector('.day.here').id === 'd2027-03-09');
  await page.goBack();
  assert.deepEqual(await shownDays(page), ['2027-03-11']);
});

test('at midnight the page turns to the next day, unless another day was asked for', async () => {
  const page = await open(browser, 'demo', { at: '2027-03-09T23:59:30' });
  assert.deepEqual(await shownDays(page), ['2027-03-09']);
  await page.clock.fastForward(90000);
  await page.waitForFunction(() => document.querySelector('.day.here').id === 'd2027-03-10');
  const asked = await open(browser, 'demo', { at: '2027-03-09T23:59:30', view: '2027-03-20' });
  await asked.clock.fastForward(90000);
  assert.deepEqual(await shownDays(asked), ['2027-03-20']);
});

test('before and after the plan its first and its last day are shown', async () => {
  const first = await open(browser, 'demo', { at: '2027-01-05T10:00:00' });
  assert.deepEqual(await shownDays(first), [await first.$eval('.day', (d) => d.id.slice(1))]);
  const last = await open(browser, 'demo', { at: '2027-05-05T10:00:00' });
  assert.deepEqual(await shownDays(last), [demo.until]);
});

test('sessions, days and labels say what result.json says', async () => {
  const page = await open(browser, 'demo');
  await layOut(page);
  const text = await page.locator('main').evaluate((main) => main.textContent);
  for (const session of demo.sessions) for (const task of session.tasks) assert.ok(text.includes(task.what), task.what);
  for (const reminder of demo.reminders) {
    const day = await page.locator(`#d${reminder.date}`).evaluate((d) => d.textContent);
    assert.ok(day.includes(reminder.what), reminder.what);
  }
  for (const meal of demo.meals) {
    const day = await page.locator(`#d${meal.date}`).evaluate((d) => d.textContent);
    for (const dish of meal.dishes) assert.ok(day.includes(dish.name), dish.name);
  }
  assert.ok((await page.locator('footer').textContent()).includes(demo.caution));
});

test('every making has a sheet with its amounts and every step that is scheduled', async () => {
  const { dishes, texts } = await pageData(await open(browser, 'demo'));
  assert.deepEqual(dishes.map((d) => [d.n, d.d]), demo.makings.map((m) => [m.recipe, m.date]));
  for (const cook of demo.cooking) {
    const said = dishes[cook.making].s.map(([at, what]) => `${at} ${texts[what]}`);
    for (const step of cook.steps) assert.ok(said.includes(`${step.start} ${step.what}`), `${dishes[cook.making].n}: ${step.what}`);
  }
  for (const use of demo.uses.filter((u) => u.making !== undefined && u.making !== null))
    assert.ok(dishes[use.making].t.length > 0, dishes[use.making].n);
});

test('amounts are those of this making: so many times what the recipe says', async () => {
  const { dishes, texts } = await pageData(await open(browser, 'demo'));
  const id = demo.makings.findIndex((m) => m.recipe === 'Smoky lentil soup');
  assert.ok(Math.abs(demo.makings[id].times - 4 / 3) < 0.001);
  const taken = Object.fromEntries(dishes[id].t.map(([amount, food]) => [texts[food], texts[amount]]));
  // By hand, 1 1/3 times the recipe: 1 1/2 cups of lentils are 2, 6 cups of stock 8, 3 carrots 4.
  assert.equal(taken['brown lentils'], '2 cups');
  assert.equal(taken['Vegetable stock'], '8 cups');
  assert.equal(taken.carrots, '4');
  assert.equal(taken['smoked paprika'], '1 1/4 to 2 3/4 tsp');
  assert.equal(taken['diced tomatoes'], '1 1/2 cans (14.5 oz)');
});

test('what a dish leaves over for nothing else says on its sheet and its day until when it is good', async () => {
  const page = await open(browser, 'demo', { view: 'session1' });
  assert.match(await page.locator('#session1').innerText(), /Shredded chicken for something else, good until Thu 11 Mar, or until Mon 5 Jul in the freezer/);
  await go(page, '2027-03-07');
  assert.match(await page.locator('.day.here .take').innerText(), /Put away 1 chicken carcass from Roast chicken, for use in something else: good until Thu 11 Mar/);
});

test('a dish opens from its day, its steps are ticked and stay so', async () => {
  const page = await open(browser, 'demo', { at: '2027-03-07T17:30:00' });
  await page.getByRole('link', { name: 'Roast chicken' }).first().click();
  await page.waitForFunction(() => document.documentElement.dataset.view === 'dish');
  assert.equal(await page.locator('#dishes h3').innerText(), 'Roast chicken');
  assert.match(await page.locator('#dishes').innerText(), /165 F in the middle/);
  assert.match(await page.locator('#dishes .take').innerText(), /1¼\s+lemons/); // 1 lemon, 1 1/4 times
  assert.match(await page.locator('#dishes').innerText(), /for all four.*Tue 9 Mar for Maren, Tilda and Otis/s);
  const size = await page.locator('#dishes .steps label').first().evaluate((e) => parseFloat(getComputedStyle(e).fontSize));
  assert.ok(size >= 22, `${size} px`);
  await page.locator('#dishes .steps input').first().check();
  await page.locator('#dishes .take input').nth(1).check();
  await page.reload();
  assert.ok(await page.locator('#dishes .steps input').first().isChecked());
  assert.ok(await page.locator('#dishes .take input').nth(1).isChecked());
  assert.equal(await page.locator('#dishes input:checked').count(), 2);
  assert.deepEqual(page.errors, []);
});

test('a timer counts on in other parts and after the page was closed, rings, and is stopped', async () => {
  const page = await open(browser, 'demo', { at: '2027-03-02T17:40:00' });
  const data = await pageData(page);
  const id = data.dishes.findIndex((d) => d.n === 'Smoky lentil soup');
  await go(page, `dish${id}`);
  await page.getByRole('button', { name: /Start 35 min/ }).click();
  assert.match(await page.locator('.timers .rest').innerText(), /^3[45]:\d\d$/);
  await go(page, 'menu');
  await page.clock.fastForward(10 * 60000);
  assert.match(await page.locator('.timers .rest').innerText(), /^2[45]:\d\d$/);
  await page.reload();
  assert.ok(await page.locator('.timers').isVisible());
  await page.clock.fastForward(26 * 60000);
  await page.locator('.timers .over').waitFor();
  assert.match(await page.title(), /Time is up/);
  assert.match(await page.locator('#said').textContent(), /Time is up: Smoky lentil soup/);
  await page.locator('.timers').getByRole('button', { name: /Stop/ }).click();
  assert.equal(await page.locator('.timers').isVisible(), false);
  assert.doesNotMatch(await page.title(), /Time is up/);
  assert.deepEqual(page.errors, []);
});

test('the screen is asked to stay on while one cooks, and let go afterwards', async () => {
  const context = await newContext(browser);
  await context.addInitScript(() => {
    window.locks = [];
    Object.defineProperty(navigator, 'wakeLock', { value: { request: async (kind) => { window.locks.push('+' + kind); return { release: async () => window.locks.push('-'), addEventListener() {} }; } } });
  });
  const page = await open(browser, 'demo', { context });
  await go(page, 'session0');
  await page.waitForFunction(() => window.locks.length === 1);
  await go(page, 'menu');
  await page.waitForFunction(() => window.locks.length === 2);
  assert.deepEqual(await page.evaluate(() => window.locks), ['+screen', '-']);
});

test('a session shows its tasks in the order of the clock, cooks side by side on a wide screen', async () => {
  const page = await open(browser, 'demo', { view: 'session0', viewport: { width: 1280, height: 900 } });
  const session = demo.sessions[0];
  const tasks = await page.$$eval('#session0 .task', (all) => all.map((e) => {
    const box = e.getBoundingClientRect();
    return { at: Number(e.dataset.at), top: box.top, bottom: box.bottom, left: box.left, text: e.querySelector('bdi').textContent };
  }));
  assert.deepEqual(tasks.map((t) => t.text), session.tasks.map((t) => t.what));
  assert.deepEqual(tasks.map((t) => t.at), session.tasks.map((t) => session.from + t.start));
  // Each cook has a column, and in it no task covers another.
  const columns = new Map();
  tasks.forEach((task, i) => {
    const cook = session.tasks[i].cook;
    columns.set(cook, [...(columns.get(cook) ?? []), task]);
  });
  for (const column of columns.values()) {
    assert.equal(new Set(column.map((t) => Math.round(t.left))).size, 1);
    for (let i = 1; i < column.length; i++) assert.ok(column[i].top >= column[i - 1].bottom - 1, column[i].text);
  }
  assert.equal(new Set([...columns.values()].map((c) => Math.round(c[0].left))).size, columns.size);
});

test('parts are found where they were left', async () => {
  const page = await open(browser, 'demo', { at: weekday, view: 'menu' });
  await page.evaluate(() => scrollTo(0, 900));
  await page.waitForTimeout(100);
  await page.getByRole('link', { name: 'Cook', exact: true }).click();
  await page.waitForFunction(() => document.documentElement.dataset.view === 'cook');
  await page.getByRole('link', { name: 'Menu', exact: true }).click();
  await page.waitForFunction(() => document.documentElement.dataset.view === 'menu');
  await page.waitForTimeout(100);
  assert.ok(Math.abs((await page.evaluate(() => scrollY)) - 900) < 2);
});

test('each of two cooks can have their own tasks alone, by name', async () => {
  const page = await open(browser, 'demo', { view: 'session0' });
  const shown = () => page.$$eval('#session0 .task', (all) => all.map((e, i) => (e.checkVisibility() ? i : -1)).filter((i) => i >= 0));
  const tasks = demo.sessions[0].tasks;
  await page.locator('#session0').getByRole('button', { name: 'Joost', exact: true }).click();
  assert.deepEqual(await shown(), tasks.map((t, i) => (t.cook === 0 ? -1 : i)).filter((i) => i >= 0));
  await page.locator('#session0').getByRole('button', { name: 'All', exact: true }).click();
  assert.equal((await shown()).length, tasks.length);
});
