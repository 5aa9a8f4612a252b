// Paper: how many sheets, and what a reader of the PDF (poppler's pdftotext) finds on them.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { launch, namesOnList, open, place, print, result, sheets } from './browser.mjs';

let browser;
const demo = result('demo');
before(async () => (browser = await launch()));
after(() => browser.close());

const size = (pdf) => pdf.toString('latin1').match(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/).slice(1).map((n) => Math.round(Number(n)));
// Of each label, as labels.md has them, its name.
const labels = readFileSync(`${place}/demo/labels.md`, 'utf8').split('\n').slice(4).filter(Boolean).map((row) => row.split(' | ')[0].replace(/^\| /, ''));
// The words of a PDF, sheet by sheet, each with single spaces.
const wordsOf = (pdf, layout = []) => {
  writeFileSync(`${place}/sheet.pdf`, pdf);
  return execFileSync('pdftotext', [...layout, `${place}/sheet.pdf`, '-'], { encoding: 'utf8' })
    .split('\f').map((text) => text.replace(/\s+/g, ' ')).slice(0, -1);
};

// The sizes of letters on a PDF, in points, as pdftohtml tells them (whole ones, rounded down).
const lettersOf = (pdf) => {
  writeFileSync(`${place}/letters.pdf`, pdf);
  const xml = execFileSync('pdftohtml', ['-xml', '-i', '-stdout', '-zoom', '1', `${place}/letters.pdf`], { encoding: 'utf8' });
  return [...xml.matchAll(/<fontspec id="\d+" size="(\d+)"/g)].map((one) => Number(one[1]));
};

test('nothing on paper is in letters of less than 9 pt', async () => {
  for (const view of ['shop', 'menu', 'cook', 'session0', 'dish3', 'figures', '2027-03-09', '2027-03-06']) {
    const sizes = lettersOf(await print(await open(browser, 'demo', { view })));
    assert.ok(sizes.length > 0 && Math.min(...sizes) >= 9, `${view}: ${sizes}`);
  }
});

test('a trip is a sheet, with every line, its price and room for the pencil', async () => {
  const page = await open(browser, 'demo', { view: 'shop' });
  const pdf = await print(page);
  const days = [...new Set(demo.visits.map((v) => v.date))];
  console.log(`the list prints on ${sheets(pdf)} sheets, ${days.length} of them a trip's`);
  assert.ok(sheets(pdf) <= days.length + 1, `${sheets(pdf)} sheets`);
  const texts = wordsOf(pdf);
  days.forEach((date, i) => {
    for (const visit of demo.visits.filter((v) => v.date === date)) assert.ok(texts[i].includes(visit.shop), `${visit.shop} on sheet ${i + 1}`);
  });
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  const hidden = await page.$$eval('#shop li[id]', (rows) => rows.filter((row) => !row.checkVisibility() || row.getBoundingClientRect().height < 5).map((row) => row.id));
  assert.deepEqual(hidden, []);
  // 4 mm are 15.1 px of CSS.
  const boxes = await page.$$eval('#shop li[id] label > input', (all) => [...new Set(all.map((e) => Math.round(e.getBoundingClientRect().width * 10) / 10))]);
  assert.ok(boxes.every((width) => Math.abs(width - 15.1) < 0.2), boxes.join());
  const names = namesOnList('demo');
  const all = texts.join(' ').replace(/ Z /g, ' ');
  for (const name of names) assert.ok(name.split(' ').every((word) => all.includes(word)), name);
  assert.equal(await page.locator('nav').isVisible(), false);
});

test('what is ticked is on the paper all the same', async () => {
  const page = await open(browser, 'demo');
  await page.locator('.stop[open] label').first().click();
  await page.locator('.stop[open] li.done').first().waitFor({ state: 'hidden' });
  const food = await page.locator('.stop[open] li.done bdi').first().textContent();
  const [first] = wordsOf(await print(page));
  assert.ok(first.includes(food) && first.includes('Saturday'), first.slice(0, 200));
});

test('the menu is one sheet across', async () => {
  const pdf = await print(await open(browser, 'demo', { view: 'menu' }));
  assert.equal(sheets(pdf), 1);
  assert.deepEqual(size(pdf), [843, 596]);
  const [text] = wordsOf(pdf);
  for (const meal of demo.meals) for (const dish of meal.dishes) for (const word of dish.name.split(' ')) assert.ok(text.includes(word), dish.name);
});

test('a session is a sheet across, the largest of them two, the month of them no more than six', async () => {
  const pdf = await print(await open(browser, 'demo', { view: 'cook' }));
  console.log(`prep prints on ${sheets(pdf)} sheets for ${demo.sessions.length} sessions`);
  assert.ok(sheets(pdf) <= 6, `${sheets(pdf)} sheets`);
  assert.deepEqual(size(pdf), [843, 596]);
  const texts = wordsOf(pdf);
  // A sheet that goes on from another one says the day and from when, and has the cooks' names again.
  const goesOn = (text) => /\w+ \d+ \w+, from \d\d:\d\d/.test(text);
  const bySession = [];
  for (const text of texts) {
    if (goesOn(text)) bySession[bySession.length - 1] += ' ' + text;
    else bySession.push(text);
    assert.match(text, /Maren|Joost/);
  }
  assert.equal(bySession.length, demo.sessions.length);
  demo.sessions.forEach((session, i) => {
    assert.equal(/By itself/.test(bySession[i]), session.tasks.some((task) => task.cook === null), `by itself in session ${i + 1}`);
    for (const task of session.tasks) for (const word of task.what.split(/[ -]/)) assert.ok(bySession[i].includes(word), `${task.what} of session ${i + 1}: ${word}`);
    for (const task of session.tasks.filter((t) => t.kind === 'weigh')) assert.ok(bySession[i].includes('Weigh out first'), task.what);
  });
  const one = await print(await open(browser, 'demo', { view: 'session1' }));
  assert.equal(sheets(one), 1);
});

test('the names of appliances stand whole on one line each above their bars', async () => {
  const page = await open(browser, 'demo', { view: 'session0' });
  await page.emulateMedia({ media: 'print' });
  const names = await page.$$eval('#session0 .bar-name', (all) => all.map((e) => [e.textContent, e.getBoundingClientRect()]).map(([name, r]) => ({ name, width: r.width, height: r.height })));
  assert.ok(names.some(({ name }) => name === 'food processor'));
  // 9 pt are 12 px, and an upright letter takes more than a third of that.
  for (const { name, width, height } of names) assert.ok(width < 18 && height > name.length * 4, `${name}: ${width} x ${height}`);
});

for (const [paper, cols, rows, box] of [['A4', 3, 8, [595, 842]], ['letter', 3, 10, [612, 792]], ['letter', 2, 5, [612, 792]], ['A4', 4, 12, [595, 842]]]) {
  test(`labels ${cols} across and ${rows} down on ${paper} have every name whole, with its date`, async () => {
    const page = await open(browser, 'demo', { view: 'labels' });
    await page.locator('select[name=paper]').selectOption(paper);
    await page.locator('input[name=cols]').fill(String(cols));
    await page.locator('input[name=rows]').fill(String(rows));
    await page.locator('input[name=rows]').press('Tab');
    await page.reload();
    const count = labels.length;
    assert.ok(count > 100);
    const pdf = await print(page);
    assert.equal(sheets(pdf), Math.ceil(count / (cols * rows)));
    assert.deepEqual(size(pdf), box);
    // Names, amounts and dates are not cut: nothing of them lies outside its label.
    await page.emulateMedia({ media: 'print' });
    const cut = await page.$$eval('.label', (all) => all.flatMap((label) => {
      const frame = label.getBoundingClientRect();
      return [label.querySelector('b'), label.querySelector('.dates'), label.children[1]].filter((part) => {
        const range = document.createRange();
        range.selectNodeContents(part);
        const text = range.getBoundingClientRect();
        return text.height < 5 || text.bottom > frame.bottom + 0.5 || text.right > frame.right + 0.5;
      }).map((part) => part.textContent);
    }));
    assert.deepEqual(cut, []);
    // And a reader of the PDF finds each name as often as it has labels.
    const text = wordsOf(pdf, ['-raw']).join(' ');
    for (const name of new Set(labels)) {
      const wanted = labels.filter((label) => label === name).length;
      const found = text.split(name).length - 1;
      assert.ok(found >= wanted, `${name}: ${found} of ${wanted}`);
    }
  });
}
