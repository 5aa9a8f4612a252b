// How soon a slow phone paints the page, beside an empty page in the same run, and how long a tick of a line takes:
// `node page.mjs MONTH.HTML DATE [RUNS]`; DATE is a day of shopping. Both take turns at 6 times CPU throttling, and
// medians are compared, so that what else the machine does falls on both.
//
// The browser is spoken to through a pipe, with nothing in between: a tool for tests listens to the network and has
// a world of scripts of its own in each page, which at 6 times costs a page of this size some 70 ms.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const [file, date, runs = '9'] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), 'page-'));
const empty = join(folder, 'empty.html');
writeFileSync(empty, '<!doctype html><meta charset=utf-8><meta name=viewport content="width=device-width"><p>Empty');

// Messages of the Chrome DevTools Protocol, each ended by a zero.
const sandbox = process.getuid() === 0 ? ['--no-sandbox'] : [];
const browser = spawn(process.env.WEB_BROWSER ?? 'chromium-headless-shell',
  [...sandbox, '--headless', '--remote-debugging-pipe', `--user-data-dir=${join(folder, 'profile')}`, 'about:blank'],
  { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] });
const answers = new Map();
let heard = '';
browser.stdio[4].on('data', (data) => {
  const messages = (heard + data).split('\0');
  heard = messages.pop();
  for (const message of messages.map((one) => JSON.parse(one))) answers.get(message.id)?.(message);
});
const ask = (method, params = {}, sessionId = undefined) => new Promise((done, failed) => {
  const id = answers.size + 1;
  answers.set(id, ({ result, error }) => (error ? failed(new Error(`${method}: ${error.message}`)) : done(result)));
  browser.stdio[3].write(JSON.stringify({ id, method, params, sessionId }) + '\0');
});
const rest = (ms) => new Promise((done) => setTimeout(done, ms));

const look = async (address, act) => {
  const { browserContextId } = await ask('Target.createBrowserContext');
  const { targetId } = await ask('Target.createTarget', { url: 'about:blank', browserContextId });
  const { sessionId } = await ask('Target.attachToTarget', { targetId, flatten: true });
  await ask('Emulation.setDeviceMetricsOverride', { width: 390, height: 844, deviceScaleFactor: 1, mobile: false }, sessionId);
  await ask('Emulation.setCPUThrottlingRate', { rate: 6 }, sessionId);
  await ask('Page.navigate', { url: address }, sessionId);
  await rest(2500); // nobody asks it anything until it is done
  const { result, exceptionDetails } = await ask('Runtime.evaluate', { expression: `(${act})()`, awaitPromise: true, returnByValue: true }, sessionId);
  if (exceptionDetails) throw new Error(exceptionDetails.exception.description);
  await ask('Target.closeTarget', { targetId });
  await ask('Target.disposeBrowserContext', { browserContextId });
  return result.value;
};
// The two functions run in the page.
const painted = () => ({ paint: performance.getEntriesByName('first-contentful-paint')[0].startTime });
// The list is there, and a tick takes so long until it is laid out anew.
const shopped = async () => {
  const ticks = [];
  for (const box of [...document.querySelectorAll('.stop[open] li > label > input')].slice(0, 12)) {
    await new Promise((done) => setTimeout(done, 100));
    const begun = performance.now();
    box.click();
    document.body.getBoundingClientRect();
    ticks.push(performance.now() - begun);
  }
  const paint = performance.getEntriesByName('first-contentful-paint')[0].startTime;
  return { paint, ready: Number(document.documentElement.dataset.ready), ticks };
};

const of = { empty: [], month: [] };
for (let run = 0; run < Number(runs); run++) {
  of.empty.push(await look(`file://${empty}`, painted));
  of.month.push(await look(`file://${resolve(file)}#${date}`, shopped));
}
const ended = new Promise((done) => browser.once('exit', done));
browser.kill();
await ended;
rmSync(folder, { recursive: true });

const median = (numbers) => [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];
const blank = median(of.empty.map((one) => one.paint));
const paint = median(of.month.map((one) => one.paint));
const ready = median(of.month.map((one) => one.ready));
const ticks = of.month.flatMap((one) => one.ticks);
const first = median(of.month.map((one) => one.ticks[0]));
console.log(`empty page: first contentful paint ${Math.round(blank)} ms`);
console.log(`month: first contentful paint ${Math.round(paint)} ms (${(paint / blank).toFixed(2)} times), list there ${Math.round(ready)} ms (${(ready / blank).toFixed(2)} times)`);
console.log(`a tick: ${median(ticks).toFixed(1)} ms in the middle, the first ${first.toFixed(1)} ms; ${ticks.filter((one) => one > 16).length} of ${ticks.length} over 16 ms, at most ${Math.max(...ticks).toFixed(1)} ms`);
