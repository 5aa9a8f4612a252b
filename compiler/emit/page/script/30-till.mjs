// What a till asks for, in the smallest unit of the currency.

// `items` have a cost (null: no price known) and a department. Tax is rounded by line, a reduction
// needs its sum, and a store credit is spent where and when the plan says, as far as it goes.
export function till(stop, items) {
  let goods = 0;
  let tax = 0;
  for (const { cost, d } of items) {
    if (cost === null || cost === undefined) continue;
    goods += cost;
    tax += Math.floor((cost * (stop.tax[d] ?? 0) + 500000) / 1000000);
  }
  const off = stop.over !== undefined && goods + tax >= stop.over ? stop.off : 0;
  const credit = Math.min(goods + tax - off, stop.credit);
  return { goods, tax, off, credit, due: goods + tax - off - credit };
}

// As the house writes money: the amount alone, and with the sign of the currency.
export const figureIn = ({ point, digits }) => (cents) => (cents / 10 ** digits).toFixed(digits).replace('.', point);
export const moneyIn = (currency) => (cents) => {
  const { sign, after, spaced } = currency;
  const parts = [sign, figureIn(currency)(Math.abs(cents))];
  return (cents < 0 ? '-' : '') + (after ? parts.reverse() : parts).join(spaced ? '\u00a0' : '');
};

// "2.99", "2,99", "$ 3": an amount that somebody types; null when it is none.
export function centsOf(text, digits) {
  const found = /^\D*(\d+)(?:[.,](\d*))?\D*$/.exec(text.trim());
  if (!found || (found[2] ?? '').length > digits) return null;
  return Number(found[1]) * 10 ** digits + Number((found[2] ?? '').padEnd(digits, '0') || 0);
}

// "2", "1.5", "1,5", "1/2", "1 1/2": a number that somebody types; null when it is none.
export function numberOf(text) {
  const found = /^(?:(\d+(?:[.,]\d+)?)|(?:(\d+) )?(\d+)\/([1-9]\d*))$/.exec(text.trim());
  if (!found) return null;
  if (found[1] !== undefined) return Number(found[1].replace(',', '.'));
  return Number(found[2] ?? 0) + Number(found[3]) / Number(found[4]);
}
