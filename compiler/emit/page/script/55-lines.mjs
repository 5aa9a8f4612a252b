// Lines of the list: what they are now, and what changes them.
import { later, lineKey, merge } from './10-ticks.mjs';
import { encode } from './20-code.mjs';
import { figureIn, moneyIn, till } from './30-till.mjs';

const money = moneyIn(data.currency);
const figure = figureIn(data.currency);

lines.forEach((line) => {
  line.stop = stops[line.s];
  line.k = lineKey(line.f, line.stop.slug, line.stop.date, line.p);
});
stops.forEach((stop, s) => {
  stop.keys = lines.filter((line) => line.s === s).map((line) => line.k);
});
const recordOf = (line) => state.ticks[line.k] ?? { f: 0, m: 0 };

// Where a line is bought now: at its own stop, or at the best later one of those where it has not
// been missed as well; null when there is none. And the stops at which it was missed.
const trail = (line) => {
  const missed = [];
  let now = { s: line.s, n: line.n, t: line.t, q: line.q, c: line.c, late: [], own: true };
  for (let m = recordOf(line).m; now && m > 0; m--) {
    missed.push(now.s);
    const next = line.o.find(([s]) => s > now.s && !missed.includes(s));
    now = next ? { s: next[0], c: next[1], n: next[2], t: next[3], q: next[4], late: next[5] ?? [], own: false } : null;
  }
  return { now, missed };
};
const place = (line) => trail(line).now;
const missedAt = (line) => trail(line).missed;

// What it costs: as it was paid, else by the list, more or less as more or fewer were bought.
const costNow = (line, now = place(line)) => {
  const { c, q, f, b } = recordOf(line);
  if (c !== undefined) return c;
  if (f && q === undefined && b?.own && b.c !== undefined && b.q !== now?.q) return b.c;
  if (!now || now.c === null) return null;
  return q === undefined ? now.c : Math.round((now.c * q) / now.q);
};

// Bought, and no longer on the list that was made since.
const known = new Set(lines.map((line) => line.k));
const strangers = () => Object.entries(state.ticks).filter(([key, r]) => !known.has(key) && r.f && r.b);
const strangersAt = (s) => strangers().filter(([, r]) => r.b.date === stops[s].date && r.b.slug === stops[s].slug);

// What is on the list of a stop now.
const linesAt = (s) => lines.filter((line) => line.now?.s === s);
const itemsOf = (some) => some.map((line) => ({ cost: costNow(line, line.now), d: line.d }));
const sums = (s) => {
  const here = linesAt(s);
  const found = here.filter((line) => recordOf(line).f);
  const extra = strangersAt(s).map(([, r]) => ({ cost: r.c ?? r.b.c ?? null, d: r.b.d }));
  return {
    all: till(stops[s], [...itemsOf(here), ...extra]).due,
    cart: till(stops[s], [...itemsOf(found), ...extra]).due,
    left: here.length - found.length,
    found: found.length + extra.length,
  };
};

// Each change can be taken back, the last one first.
const undone = [];
const change = (line, edit, words) => {
  const before = state.ticks[line.k];
  const record = { f: 0, m: 0, ...before };
  edit(record);
  record.t = Math.max(minuteNow(), before ? before.t + 1 : 0); // never of the minute of what it changes
  const now = place(line);
  if (record.f) {
    record.b = {
      f: line.f, n: now?.n ?? line.n, q: now?.q, c: now?.c ?? undefined, d: line.d, t: now?.t,
      date: stops[now?.s ?? line.s].date, slug: stops[now?.s ?? line.s].slug, own: now?.own ?? true,
    };
    if (record.b.c === undefined) delete record.b.c;
  } else delete record.b;
  state.ticks[line.k] = record;
  undone.push({ line, before, words });
  if (undone.length > 50) undone.shift();
  changed(line, now?.s);
};
const undo = () => {
  const last = undone.pop();
  if (!last) return;
  const now = place(last.line);
  // Later than what it takes back, so that the other phone takes it back as well.
  const t = Math.max(minuteNow(), state.ticks[last.line.k].t + 1);
  state.ticks[last.line.k] = { f: 0, m: 0, ...last.before, t };
  changed(last.line, now?.s);
  say(`Undone: ${last.words}`);
};

// The address holds the ticks as well: what storage loses, a bookmark or a history still has.
let mirror = 0;
const mirrorNow = () => {
  mirror = 0;
  const code = encode(stops, state.ticks, today());
  const [view] = location.hash.slice(1).split('~');
  const hash = '#' + view + (code ? '~' + code : '');
  if (hash !== location.hash && !(hash === '#' && !location.hash)) history.replaceState(history.state, '', hash);
};
const mirrorSoon = () => {
  if (!mirror) mirror = setTimeout(mirrorNow, 400);
};
// How many lines another phone's ticks change here.
const takeIn = (ticks) => {
  const merged = merge(state.ticks, ticks);
  const news = Object.keys(merged).filter((key) => merged[key] !== state.ticks[key] && (merged[key].f !== (state.ticks[key]?.f ?? 0) || merged[key].m !== (state.ticks[key]?.m ?? 0)));
  for (const key of Object.keys(merged)) {
    const line = lines.find((one) => one.k === key);
    if (line && merged[key].f && !merged[key].b) merged[key].b = { f: line.f, n: line.n, q: line.q, c: line.c ?? undefined, d: line.d, t: line.t, date: line.stop.date, slug: line.stop.slug, own: !merged[key].m };
  }
  state.ticks = merged;
  write();
  return news.length;
};
