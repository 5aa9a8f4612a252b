// Ticks as a few letters that stand in an address: a link, or a square to photograph.
//
// By stop: 12 bits that say which stop with which lines it is, when it was begun, and either that all
// of it was found on a day gone by, or line by line whether it was touched, how, and how many minutes
// after the touched line before it. Numbers are Elias's gamma code (Elias 1975), letters those of
// RFC 4648 section 5. A stop whose lines are others on this phone is passed over.

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const epoch = Date.UTC(2024, 0, 1) / 60000; // minutes
const whole_time = 24; // bits: thirty years
const mark_bits = 12;

// Fowler, Noll and Vo's hash (FNV-1a, 32 bits), folded.
export function mark(text) {
  let hash = 2166136261;
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, 16777619) >>> 0;
  return ((hash >>> mark_bits) ^ hash) & ((1 << mark_bits) - 1);
}

class Bits {
  constructor(text = '') {
    this.text = text;
    this.at = 0;
    this.bits = [];
  }
  put(value, count) {
    for (let i = count - 1; i >= 0; i--) this.bits.push(Math.floor(value / 2 ** i) % 2);
  }
  // From 0 up.
  putGamma(value) {
    const width = Math.floor(Math.log2(value + 1));
    this.put(0, width);
    this.put(value + 1, width + 1);
  }
  putSigned(value) {
    this.putGamma(value < 0 ? -2 * value - 1 : 2 * value);
  }
  written() {
    let out = '';
    for (let i = 0; i < this.bits.length; i += 6) {
      let value = 0;
      for (let j = 0; j < 6; j++) value = value * 2 + (this.bits[i + j] ?? 0);
      out += letters[value];
    }
    return out;
  }
  get left() {
    return this.text.length * 6 - this.at;
  }
  take(count) {
    if (count > this.left) throw new RangeError('cut off');
    let value = 0;
    for (let i = 0; i < count; i++, this.at++) {
      const letter = letters.indexOf(this.text[Math.floor(this.at / 6)]);
      if (letter < 0) throw new RangeError('no such letter');
      value = value * 2 + ((letter >> (5 - (this.at % 6))) & 1);
    }
    return value;
  }
  takeGamma() {
    let width = 0;
    while (this.take(1) === 0) if (++width > 40) throw new RangeError('no number');
    return 2 ** width + this.take(width) - 1;
  }
  takeSigned() {
    const value = this.takeGamma();
    return value % 2 ? -(value + 1) / 2 : value / 2;
  }
}

const markOf = (stop) => mark([stop.date, stop.slug, ...stop.keys].join('\n'));

// `stops` have `date`, `slug` and the `keys` of their lines; `today` is a date.
export function encode(stops, ticks, today) {
  const out = new Bits();
  let before = null;
  for (const stop of stops) {
    const records = stop.keys.map((key) => ticks[key]);
    const touched = records.filter(Boolean);
    if (!touched.length) continue;
    const begun = Math.min(...touched.map((r) => r.t));
    out.put(markOf(stop), mark_bits);
    if (before === null) out.put(Math.max(0, begun - epoch), whole_time);
    else out.putSigned(begun - before);
    before = begun;
    const over = stop.date < today && records.every((r) => r?.f && !r.m);
    out.put(over ? 1 : 0, 1);
    if (over) continue;
    out.putGamma(stop.keys.length);
    let last = begun;
    for (const r of records) {
      out.put(r ? 1 : 0, 1);
      if (!r) continue;
      const plain = r.f && !r.m;
      out.put(plain ? 0 : 1, 1);
      if (!plain) {
        out.put(r.f, 1);
        out.putGamma(r.m);
      }
      out.putSigned(r.t - last);
      last = r.t;
    }
  }
  return out.written();
}

// What a code says of these stops, and how many stops it speaks of that are not among them.
export function decode(stops, code) {
  const bits = new Bits(code);
  const ticks = {};
  let strange = 0;
  let before = null;
  while (bits.left >= mark_bits + 2) {
    const id = bits.take(mark_bits);
    const begun = before === null ? epoch + bits.take(whole_time) : before + bits.takeSigned();
    before = begun;
    const stop = stops.find((one) => markOf(one) === id);
    if (!stop) strange += 1;
    if (bits.take(1)) {
      for (const key of stop?.keys ?? []) ticks[key] = { t: begun, f: 1, m: 0 };
      continue;
    }
    const count = bits.takeGamma();
    let last = begun;
    for (let i = 0; i < count; i++) {
      if (!bits.take(1)) continue;
      const record = { t: 0, f: 1, m: 0 };
      if (bits.take(1)) {
        record.f = bits.take(1);
        record.m = bits.takeGamma();
      }
      last += bits.takeSigned();
      record.t = last;
      if (stop && count === stop.keys.length) ticks[stop.keys[i]] = record;
    }
  }
  return { ticks, strange };
}

// Text in the letters of an address, and back.
export const packText = (text) =>
  btoa(String.fromCharCode(...new TextEncoder().encode(text))).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
export const unpackText = (packed) =>
  new TextDecoder().decode(Uint8Array.from(atob(packed.replace(/-/g, '+').replace(/_/g, '/')), (c) => c.charCodeAt(0)));

// The whole that is handed over: the ticks, and what was bought otherwise than the list says.
export function handOver(stops, ticks, today) {
  const others = [];
  stops.forEach((stop, s) =>
    stop.keys.forEach((key, k) => {
      const { q, c, x, n } = ticks[key] ?? {};
      const told = [q, c, x, n].map((value) => value ?? null);
      if (told.some((value) => value !== null)) others.push([markOf(stops[s]), k, ...told]);
    }));
  return encode(stops, ticks, today) + (others.length ? '.' + packText(JSON.stringify(others)) : '');
}

export function takeOver(stops, text) {
  const [code, packed] = text.split('.');
  const { ticks, strange } = decode(stops, code);
  for (const [id, k, ...told] of packed ? JSON.parse(unpackText(packed)) : []) {
    const record = ticks[stops.find((one) => markOf(one) === id)?.keys[k]];
    ['q', 'c', 'x', 'n'].forEach((name, i) => {
      if (record && told[i] !== null && told[i] !== undefined) record[name] = told[i];
    });
  }
  return { ticks, strange };
}
