// What holds for the whole page: no network, its size on every screen, access, speed, hostile names.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { address, axeSource, go, launch, layOut, newContext, open, openAll, phone, place, ready, result, tripDay, weekday } from './browser.mjs';

let browser;
before(async () => (browser = await launch()));
after(() => browser.close());

const views = ['today', '2027-03-09', 'shop', 'menu', 'cook', 'dish3', 'session0', 'more', 'labels', 'figures'];
const viewsOf = { demo: views, hostile: views.filter((v) => v !== '2027-03-09' && v !== 'dish3').concat('dish0') };
const wide = (page) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

test('the page asks the network for nothing', async () => {
  const asked = [];
  const page = await (await newContext(browser)).newPage();
  page.on('request', (request) => asked.push(request.url()));
  for (const view of views) await page.goto(address('demo', view));
  assert.deepEqual([...new Set(asked.map((url) => url.split('#')[0]))], [address('demo').split('#')[0]]);
});

for (const house of ['demo', 'hostile']) {
  test(`nothing of the ${house} house is wider than the screen, at any width and with large text`, async () => {
    for (const [what, options, text] of [
      ['320', { viewport: { width: 320, height: 640 } }],
      ['390', { viewport: phone }],
      ['768', { viewport: { width: 768, height: 1024 } }],
      ['1280', { viewport: { width: 1280, height: 900 } }],
      ['1280 at 200 %', { viewport: { width: 640, height: 400 }, deviceScaleFactor: 2 }],
      ['390 with text at 200 %', { viewport: phone }, '200%'],
    ]) {
      const page = await open(browser, house, options);
      if (text) await page.addStyleTag({ content: `html { font-size: ${text} }` });
      const price = page.locator('.stop[open] .price').first();
      if (await price.count()) await price.click(); // what a bar covers cannot be clicked
      for (const view of viewsOf[house]) {
        await go(page, view);
        assert.ok((await wide(page)) <= 0, `${view} at ${what} is ${await wide(page)} px too wide`);
      }
      assert.deepEqual(page.errors, []);
      await page.context().close();
    }
  });
}

test('the name of a day and of a shop is not broken within a word in letters of twice the size', async () => {
  for (const width of [320, 390]) {
    const page = await open(browser, 'demo', { viewport: { width, height: 844 } });
    await page.addStyleTag({ content: 'html { font-size: 200% }' });
    const broken = await page.$$eval('#dayhead h2 > span, .stop:not([open]) h4 bdi', (all) => all.filter((e) => e.checkVisibility()).flatMap((e) => {
      const text = e.firstChild;
      const range = document.createRange();
      return [...text.textContent.matchAll(/\S+/g)].filter(({ 0: word, index }) => {
        range.setStart(text, index);
        range.setEnd(text, index + word.length);
        return range.getClientRects().length > 1;
      }).map(([word]) => word);
    }));
    assert.deepEqual(broken, [], `${width} px`);
  }
});

test('what a finger taps is 44 px or more', async () => {
  const page = await open(browser, 'demo');
  await page.locator('.stop[open] .price').first().click();
  for (const view of views) {
    await go(page, view);
    const small = await page.$$eval('nav a, button, summary, select, input:not([type=checkbox]), .walk label, .day-list a, .way, .month h3 a', (all) =>
      all.filter((e) => e.checkVisibility()).map((e) => [e.outerHTML.slice(0, 80), e.getBoundingClientRect()])
        .filter(([, r]) => r.height < 44 || r.width < 44).map(([html, r]) => `${html}: ${r.width} x ${r.height}`));
    assert.deepEqual(small, [], view);
  }
});

for (const colorScheme of ['light', 'dark']) {
  test(`axe finds nothing serious in the ${colorScheme} page`, async () => {
    const page = await open(browser, 'demo', { colorScheme });
    await page.addScriptTag({ content: axeSource });
    // The dark page differs from the light one in its colours only.
    const rules = colorScheme === 'dark' ? { runOnly: ['color-contrast', 'link-in-text-block'] } : {};
    const look = async (what) => {
      const found = await page.evaluate((only) => axe.run(document, { resultTypes: ['violations'], ...only }), rules);
      assert.equal(found.testEngine.name, 'axe-core');
      const serious = found.violations.filter((v) => v.impact === 'serious' || v.impact === 'critical');
      assert.deepEqual(serious.map((v) => `${v.id}: ${v.nodes[0].html} ${v.nodes[0].failureSummary}`), [], what);
      for (const v of found.violations) console.log(`axe, ${what}, ${v.impact}: ${v.id}, ${v.nodes.length} times`);
    };
    const boxes = await page.locator('.stop[open] label > input').all();
    await boxes[0].check();
    await page.locator('.stop[open] .price').nth(2).click();
    await look('a trip');
    await page.locator('.save').first().click();
    await look('a receipt');
    await page.getByRole('button', { name: 'Close' }).click();
    for (const view of views) {
      await go(page, view);
      if (view === 'dish3') {
        const timer = page.locator('#dishes .timer').first();
        if (await timer.count()) await timer.click();
      }
      if (view === 'more') await page.getByRole('button', { name: 'Show as a QR code' }).click();
      await look(view);
    }
  });
}

test('one part is shown at a time, by its address, and without the script all can be read', async () => {
  const page = await open(browser, 'demo', { at: weekday, view: 'cook' });
  const shown = (p) => p.$$eval('main > section', (all) => all.filter((s) => s.checkVisibility()).map((s) => s.id));
  assert.deepEqual(await shown(page), ['cook']);
  await page.getByRole('link', { name: 'Menu', exact: true }).click();
  await page.waitForFunction(() => document.documentElement.dataset.view === 'menu');
  assert.deepEqual(await shown(page), ['menu']);
  assert.equal(await page.locator('nav [aria-current=page]').innerText(), 'Menu');
  await page.goBack();
  assert.deepEqual(await shown(page), ['cook']);
  const plain = await open(browser, 'demo', { javaScriptEnabled: false });
  assert.equal((await shown(plain)).length, 7);
  assert.equal(await plain.locator('#shop li[id]:visible').count(), result('demo').purchases.length);
  assert.match(await plain.locator('body noscript').first().innerText(), /ticks are not kept/);
});

test('the header and the bars stand before any script, which a slow phone takes long to begin with', async () => {
  const source = readFileSync(`${place}/demo/month.html`, 'utf8');
  assert.ok(source.indexOf('</nav>') > 0 && source.indexOf('</nav>') < source.indexOf('<script'));
  for (const viewport of [phone, { width: 1280, height: 900 }]) {
    const plain = await open(browser, 'demo', { javaScriptEnabled: false, viewport });
    assert.equal(await plain.locator('nav').evaluate((nav) => getComputedStyle(nav).position), 'static');
  }
});

test('where the script cannot run to its end, the page is as it is without one', async () => {
  const context = await newContext(browser, { viewport: phone });
  await context.addInitScript(() => delete window.ResizeObserver); // as in a browser that is too old
  const page = await context.newPage();
  await page.goto(address('demo'));
  await page.locator('#figures').waitFor();
  assert.equal(await page.locator('main > section:visible').count(), 7);
  assert.equal(await page.locator('#shop li[id]').count(), result('demo').purchases.length);
  assert.match(await page.locator('.warn').first().innerText(), /ticks are not kept/);
});

// A page whose script waits for a first screen that is never painted.
const held = async (view, at) => {
  const page = await (await newContext(browser, { viewport: phone })).newPage();
  await page.clock.install({ time: new Date(Date.parse(at) - 3600000) });
  await page.clock.pauseAt(new Date(at));
  await page.addInitScript(() => (globalThis.requestAnimationFrame = () => 0));
  await page.goto(address('demo', view));
  return page;
};

test('the day and its stops, or its work and meals, are there before the script is', async () => {
  const trip = await held('', tripDay);
  const stops = result('demo').visits.filter((visit) => visit.date === tripDay.slice(0, 10));
  assert.equal(await trip.locator('#dayhead h2').innerText(), '6\nSaturday\nMarch; today');
  assert.deepEqual(await trip.locator('.stop h4:visible').allInnerTexts(), stops.map((visit) => visit.shop));
  assert.equal(await trip.locator('nav [aria-current=page]').innerText(), 'Today');
  const day = await held('', weekday);
  assert.match(await day.locator('.day.here .eat').innerText(), /dinner Pork chops/);
  for (const page of [trip, day]) assert.equal(await page.evaluate(() => document.documentElement.dataset.ready), undefined);
  // A page in the background is never painted, and one may be printed at once.
  await trip.clock.runFor(2000);
  await ready(trip);
  await day.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await ready(day);
});

test('a part that is asked for by its address is in its style from the beginning', async () => {
  const page = await held('cook', weekday);
  assert.equal(await page.locator('.session:visible').count(), 0);
  assert.equal(await page.evaluate(() => document.documentElement.dataset.ready), undefined);
});

test('only what one looks at is laid out, and the page is in ASCII', async () => {
  const page = await open(browser, 'demo', { at: weekday });
  const whole = result('demo').purchases.length;
  assert.equal(await page.locator('.day:has(h3)').count(), 1);
  assert.equal(await page.locator('#shop li[id]').count(), 0);
  assert.equal(await page.locator('.label, .month, .task, figure').count(), 0);
  await go(page, 'shop');
  await page.locator('.stop > summary').first().click();
  await page.locator('#shop li[id]').first().waitFor();
  assert.ok((await page.locator('#shop li[id]').count()) < whole);
  // But for the mark at its beginning.
  const bytes = readFileSync(`${place}/hostile/month.html`);
  assert.deepEqual([...bytes.subarray(0, 3)], [0xef, 0xbb, 0xbf]);
  assert.doesNotMatch(bytes.subarray(3).toString('latin1'), /[^\x00-\x7f]/);
  assert.deepEqual(page.errors, []);
});

test('names that look like markup, formulas and the ends of things are text everywhere', async () => {
  const page = await open(browser, 'hostile');
  const house = result('hostile');
  for (const view of viewsOf.hostile) await go(page, view);
  for (let id = 0; id < house.makings.length; id++) {
    await go(page, `dish${id}`);
    await page.waitForFunction((n) => document.querySelector('#dishes h3').textContent === n, house.makings[id].recipe);
  }
  await go(page, 'shop');
  await page.locator('.stop > summary').first().click();
  for (const price of await page.locator('.stop[open] .price:visible').all()) await price.click();
  for (const miss of await page.locator('.miss:visible').all()) await miss.click();
  assert.equal(await page.evaluate(() => window.hit), undefined);
  assert.deepEqual(page.errors, []);
  assert.equal(await page.title(), `${house.plan}: list, menu and schedule`);
  assert.equal(await page.locator('h1').textContent(), house.plan);
  await layOut(page);
  const shown = async (id) => page.locator('#' + id).evaluate((e) => e.textContent);
  const list = await shown('shop');
  for (const p of house.purchases) assert.ok(list.includes(p.food), p.food);
  for (const v of house.visits) assert.ok(list.includes(v.shop) && (await shown('days')).includes(v.shop) && (await shown('figures')).includes(v.shop), v.shop);
  for (const meal of house.meals)
    for (const dish of meal.dishes)
      for (const id of ['menu', 'days', 'figures']) assert.ok((await shown(id)).includes(dish.name), `${dish.name} in ${id}`);
  for (const task of house.sessions.flatMap((s) => s.tasks)) {
    assert.ok((await shown('cook')).includes(task.what), task.what);
    assert.ok((await shown('cook')).includes(task.appliance), task.appliance);
  }
  for (const making of house.makings) assert.ok((await shown('labels')).includes(making.recipe), making.recipe);
  // No element that this program does not write.
  const alien = await page.$$eval('main :not(#days + script, #days + script + script)', (all) => [...new Set(all.map((e) => e.localName))].filter((n) => ['img', 'script', 'u', 'iframe'].includes(n)));
  assert.deepEqual(alien, []);
  const source = readFileSync(`${place}/hostile/month.html`, 'utf8');
  assert.equal(source.match(/<script/g).length, 6);
  // A name from right to left stands in a frame of its own.
  assert.ok((await page.locator('bdi', { hasText: 'ירוק' }).count()) > 0);
});
