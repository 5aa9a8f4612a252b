// What was really bought, as a file of the house.

// A plain scalar where YAML 1.2 takes it as one; else in double quotes, whose escapes are JSON's.
export function scalar(text, inFlow = false) {
  const line = text.replace(/[\u0000-\u001f\u007f\u2028\u2029]+/g, ' ').trim();
  const plain =
    line !== '' &&
    !/^[-?:,[\]{}#&*!|>'"%@`~=]/.test(line) &&
    !/: |:$| #/.test(line) &&
    !(inFlow && /[,[\]{}]/.test(line)) &&
    !/^(true|false|yes|no|on|off|null|[-+.\d][\d_.,:e+-]*)$/i.test(line);
  return plain ? line : JSON.stringify(line);
}

const spoken = (number) => String(Math.round(number * 1000) / 1000);
const amountIn = (digits) => (cents) => (cents / 10 ** digits).toFixed(digits);

// `bought` have a template `t` with a # for the number `q`, `cost`, what to freeze `z`, or `x`: what
// was bought instead of `f`; and a note.
export function receiptOf({ shop, date, bought, missing, total, digits }) {
  const amount = amountIn(digits);
  const out = [`shop: ${scalar(shop)}`, `date: ${date}`, bought.length ? 'lines:' : 'lines: []'];
  for (const one of bought) {
    const note = one.n ? ` # ${one.n.replace(/\s+/g, ' ').trim()}` : '';
    if (one.x) {
      const paid = one.cost === null ? '' : `, paid: ${amount(one.cost)}`;
      out.push(`  - {bought: ${scalar(one.x, true)}${paid}, instead of: ${scalar(one.f, true)}}${note}`);
    } else {
      const parts = [one.t.replace('#', () => spoken(one.q))];
      if (one.cost !== null) parts.push(amount(one.cost));
      if (one.z) parts.push(`freeze ${one.z}`);
      out.push(`  - ${scalar(parts.join(', '))}${note}`);
    }
  }
  if (missing.length) out.push('missing:', ...missing.map((food) => `  - ${scalar(food)}`));
  if (total !== null) out.push(`total: ${amount(total)}`);
  return out.join('\n') + '\n';
}
