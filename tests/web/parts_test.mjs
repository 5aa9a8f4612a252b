// The parts of the script that need no browser.
import assert from 'node:assert/strict';
import { test } from 'node:test';

const script = '../../compiler/emit/page/script/';
const { cleaned, later, lineKey, merge } = await import(script + '10-ticks.mjs');
const { decode, encode, handOver, packText, takeOver, unpackText } = await import(script + '20-code.mjs');
const { centsOf, moneyIn, numberOf, till } = await import(script + '30-till.mjs');
const { receiptOf, scalar } = await import(script + '40-receipt.mjs');

// A generator of the same numbers each time (Lehmer 1951; Park and Miller 1988).
let thrown = 20270306;
const dice = (sides) => (thrown = (thrown * 48271) % 2147483647) % sides;

const stops = [
  { date: '2027-03-01', slug: 'far', keys: Array.from({ length: 40 }, (_, i) => lineKey(`food ${i}`, 'far', '2027-03-01')) },
  { date: '2027-03-06', slug: 'near', keys: Array.from({ length: 22 }, (_, i) => lineKey(`food ${i}`, 'near', '2027-03-06')) },
  { date: '2027-03-06', slug: 'green', keys: Array.from({ length: 12 }, (_, i) => lineKey(`leaf ${i}`, 'green', '2027-03-06')) },
];
const begun = Date.UTC(2027, 2, 6, 10) / 60000;
const someTicks = () => {
  const ticks = {};
  for (const stop of stops) for (const key of stop.keys) {
    if (dice(3)) ticks[key] = { t: begun + dice(4000) - 2000, f: dice(4) ? 1 : 0, m: dice(5) ? 0 : dice(3) };
  }
  return ticks;
};
const sorted = (ticks) => Object.fromEntries(Object.entries(ticks).sort(([a], [b]) => (a < b ? -1 : 1)));

test('a code says what it was made of, whatever that is', () => {
  for (let i = 0; i < 300; i++) {
    const ticks = someTicks();
    const { ticks: again, strange } = decode(stops, encode(stops, ticks, '2027-03-06'));
    assert.deepEqual(sorted(again), sorted(ticks));
    assert.equal(strange, 0);
  }
});

test('a code of a trip under way has some 40 letters, one of trips gone by a few', () => {
  const ticks = {};
  let t = begun;
  for (const stop of stops.slice(1)) for (const key of stop.keys.slice(0, 18)) ticks[key] = { t: (t += dice(2)), f: 1, m: 0 };
  const code = encode(stops, ticks, '2027-03-06');
  assert.ok(code.length <= 45, `${code.length} letters`);
  assert.match(code, /^[A-Za-z0-9_-]+$/);
  for (const stop of stops) for (const key of stop.keys) ticks[key] = { t: t++, f: 1, m: 0 };
  assert.ok(encode(stops, ticks, '2027-03-20').length <= 20);
});

test('a stop gone by that was found whole comes back whole, and no later than it was', () => {
  const ticks = Object.fromEntries(stops[0].keys.map((key, i) => [key, { t: begun + i, f: 1, m: 0 }]));
  const { ticks: again } = decode(stops, encode(stops, ticks, '2027-03-06'));
  for (const key of stops[0].keys) assert.ok(again[key].f === 1 && again[key].t <= ticks[key].t);
});

test('a stop whose lines are others is passed over, the rest is read', () => {
  const ticks = someTicks();
  const code = encode(stops, ticks, '2027-03-06');
  const anew = [stops[0], { ...stops[1], keys: stops[1].keys.slice(1) }, stops[2]];
  const { ticks: again, strange } = decode(anew, code);
  assert.equal(strange, 1);
  const expected = Object.fromEntries(Object.entries(ticks).filter(([key]) => !stops[1].keys.includes(key)));
  assert.deepEqual(sorted(again), sorted(expected));
});

test('a code that is cut off or no code is an error, not a wrong tick', () => {
  assert.throws(() => decode(stops, encode(stops, someTicks(), '2027-03-06').slice(0, 12)));
  assert.throws(() => decode(stops, '§§§§§§§§'));
});

test('what was bought otherwise is handed over with the ticks', () => {
  const ticks = { [stops[1].keys[3]]: { t: begun, f: 1, m: 0, q: 2.5, c: 499, x: '1 lb shallots', n: 'Größe M' }, [stops[1].keys[4]]: { t: begun, f: 1, m: 0 } };
  assert.deepEqual(sorted(takeOver(stops, handOver(stops, ticks, '2027-03-06')).ticks), sorted(ticks));
  assert.equal(unpackText(packText('żółw 🛒 "a"')), 'żółw 🛒 "a"');
});

test('merging goes by the last change of each line, and both phones come to the same', () => {
  const a = { x: { t: 10, f: 1, m: 0 }, y: { t: 10, f: 1, m: 0 } };
  const b = { x: { t: 12, f: 0, m: 1 }, z: { t: 3, f: 1, m: 0 } };
  assert.deepEqual(merge(a, b), { x: b.x, y: a.y, z: b.z });
  for (let i = 0; i < 200; i++) {
    const [one, two, three] = [someTicks(), someTicks(), someTicks()];
    assert.deepEqual(sorted(merge(one, two)), sorted(merge(two, one)));
    assert.deepEqual(sorted(merge(one, one)), sorted(one));
    assert.deepEqual(sorted(merge(merge(one, two), three)), sorted(merge(one, merge(two, three))));
  }
});

test('what a link does not carry is kept while both say the same', () => {
  const mine = { t: 10, f: 1, m: 0, q: 3, b: { n: '3' } };
  assert.equal(later(mine, { t: 11, f: 1, m: 0 }).q, 3);
  assert.equal(later(mine, { t: 11, f: 0, m: 0 }).q, undefined);
});

test('what is kept is taken only in the form of a record', () => {
  assert.deepEqual(cleaned(null), {});
  assert.deepEqual(cleaned([1]), {});
  assert.deepEqual(cleaned({ a: 3, b: { t: 'x' }, c: { t: 5, f: true, m: -1, q: 2, evil: 1 } }), { c: { t: 5, f: 1, m: 0, q: 2 } });
});

test('a till rounds tax by line, gives its reduction from its sum on and spends no more credit than is there', () => {
  const stop = { tax: { 2: 62500 }, credit: 500, over: 2000, off: 300 };
  assert.deepEqual(till(stop, [{ cost: 333, d: 2 }, { cost: 100, d: 1 }, { cost: null, d: 1 }]), { goods: 433, tax: 21, off: 0, credit: 454, due: 0 });
  assert.equal(till(stop, [{ cost: 2000, d: 1 }]).due, 2000 - 300 - 500);
});

test('money and numbers are read as people type them', () => {
  assert.equal(moneyIn({ sign: '€', after: true, spaced: true, point: ',', digits: 2 })(-1250), '-12,50\u00a0€');
  for (const [text, cents] of [['2.99', 299], ['2,9', 290], ['$ 3', 300], ['12', 1200], ['x', null], ['1.999', null], ['', null]]) assert.equal(centsOf(text, 2), cents, text);
  for (const [text, number] of [['2', 2], ['1,5', 1.5], ['1 1/2', 1.5], ['3/4', 0.75], ['a few', null], ['1/0', null]]) assert.equal(numberOf(text), number, text);
});

test('a receipt has the form that the house reads', () => {
  const bought = [
    { f: 'ground beef', t: '# lb ground beef', q: 6, cost: 2499, z: '4.5 lb' },
    { f: 'diced tomatoes', t: '# (14.5 oz) cans diced tomatoes', q: 2, cost: 198 },
    { f: 'lime', t: '# limes', q: 12, cost: null, n: 'large ones' },
    { f: 'onions', t: '# lb onion', q: 3, cost: 299, x: '1 lb shallots' },
  ];
  assert.equal(receiptOf({ shop: 'fairfield-market', date: '2027-03-06', bought, missing: ['parsley'], total: 14320, digits: 2 }), `shop: fairfield-market
date: 2027-03-06
lines:
  - 6 lb ground beef, 24.99, freeze 4.5 lb
  - 2 (14.5 oz) cans diced tomatoes, 1.98
  - 12 limes # large ones
  - {bought: 1 lb shallots, paid: 2.99, instead of: onions}
missing:
  - parsley
total: 143.20
`);
});

test('texts that YAML would take for something else are quoted', () => {
  for (const text of ['no', '12', '1.5', '- x', 'a: b', 'x #y', '{a}', '"q"', '@x', '', '1e5', '~']) assert.equal(scalar(text), JSON.stringify(text), text);
  assert.equal(scalar('a, b', true), '"a, b"');
  assert.equal(scalar('6 lb beef, 2.99'), '6 lb beef, 2.99');
  assert.equal(scalar('a\nb'), 'a b');
});
