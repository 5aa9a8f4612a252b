// What was done with the lines of the list, and how two phones agree on it.
//
// A record says of one line: `t` when it was last changed (minutes since 1970), `f` whether it is
// found, `m` at how many stops it was not there; and, where they differ from the list, `q` how many
// were bought, `c` what they cost in cents, `x` what was bought instead, `n` a note. `b` is what the
// line said when it was found, for a list that is made anew without it; `w` that it was found before
// it was said not to be there. Records are kept under what a
// line is: food, shop and date.

const details = ['q', 'c', 'x', 'n', 'b', 'w'];

export const lineKey = (food, shop, date, pack) => [food, shop, date, ...(pack ? [pack] : [])].join('|');

// Of two records of a line the later one; of two of one minute, found goes before not found, so that
// both phones decide alike. A link carries no more than `f`, `m` and `t`: what the other record knows
// besides is kept while both say the same.
export function later(one, other) {
  if (!one || !other) return one ?? other;
  const rank = (r) => [r.t, r.f, r.m, JSON.stringify(details.map((key) => r[key] ?? null))];
  const [a, b] = [rank(one), rank(other)];
  const i = a.findIndex((value, at) => value !== b[at]);
  if (i < 0) return one;
  const [last, first] = a[i] > b[i] ? [one, other] : [other, one];
  if (last.f !== first.f || last.m !== first.m) return last;
  return details.some((key) => key !== 'b' && last[key] !== undefined) ? { ...(first.b && { b: first.b }), ...last } : { ...first, ...last };
}

export function merge(mine, theirs) {
  const out = { ...mine };
  for (const [key, record] of Object.entries(theirs)) out[key] = later(out[key], record);
  return out;
}

// Only what has the form of a record is taken from storage.
export function cleaned(value) {
  const out = {};
  if (!value || typeof value !== 'object' || Array.isArray(value)) return out;
  for (const [key, r] of Object.entries(value)) {
    if (!r || typeof r !== 'object' || !Number.isFinite(r.t)) continue;
    out[key] = { t: r.t, f: r.f ? 1 : 0, m: Number.isInteger(r.m) && r.m > 0 ? r.m : 0 };
    for (const name of details) if (r[name] !== undefined && r[name] !== null) out[key][name] = r[name];
  }
  return out;
}
