// What is behind a line: why it is there, and what to do when a shop has a surprise.
import { centsOf, numberOf } from './30-till.mjs';
import { receiptOf } from './40-receipt.mjs';

const closePanel = () => {
  for (const open of all('li.open')) {
    open.classList.remove('open');
    $('.price', open)?.setAttribute('aria-expanded', 'false');
    $('.panel', open)?.remove();
  }
};
const openPanel = (line, row, price) => {
  const was = row.classList.contains('open');
  closePanel();
  if (was) return;
  row.classList.add('open');
  price.setAttribute('aria-expanded', 'true');
  line.panel = make('div', '', 'panel');
  row.append(line.panel);
  fillPanel(line);
};

const number = (value) => String(Math.round(value * 1000) / 1000).replace('.', data.point);
const fillPanel = (line) => {
  const { panel } = line;
  const record = recordOf(line);
  const food = foodOf(line);
  const focused = panel.contains(document.activeElement) ? document.activeElement.dataset.what : null;
  const home = panel.closest('li') === line.row;
  const now = place(line);
  const refuse = (input) => {
    input.setAttribute('aria-invalid', 'true');
    say('That is not a number');
  };
  const set = (key, words, convert) => (text, input) => {
    const value = text === '' ? undefined : convert(text);
    if (value === null) return refuse(input);
    change(line, (r) => {
      if (value === undefined) delete r[key];
      else {
        r[key] = value;
        r.f = 1; // who says what was bought has bought it
      }
    }, `${food}: ${words}`);
  };
  panel.replaceChildren();
  if (home && now?.own || !home) {
    // How many packs, or how much where the shop weighs it out; "24 oz" where the packs are others.
    const unit = now.t.split(' ')[1];
    const each = now.own ? line.u : undefined;
    const amount = (text) => {
      const [, figures, word] = /^(.*?)\s*([^\d\s/]*)$/.exec(text);
      const found = numberOf(figures);
      if (found === null || found <= 0 || (word && word !== unit)) return null;
      return each !== undefined && !word ? found * each : found;
    };
    const shown = record.q === undefined ? '' : each !== undefined ? number(record.q / each) : number(record.q);
    panel.append(
      field(each === undefined ? `How much (${unit})` : 'How many', shown, set('q', 'another amount', amount), { placeholder: number(each === undefined ? now.q : now.q / each) }),
      field('Paid in all', record.c === undefined ? '' : figure(record.c), set('c', 'another price', (text) => centsOf(text, data.currency.digits)), { placeholder: now.c === null ? '' : figure(costNow({ ...line, k: '' }, now) ?? now.c), inputMode: 'decimal' }),
      field('Something else instead', record.x ?? '', set('x', 'another thing', (text) => text), { placeholder: '1 lb shallots' }),
      field('Note', record.n ?? '', (text) => change(line, (r) => (text ? (r.n = text) : delete r.n), `${food}: a note`)));
    panel.append(button('Not here', () => miss(line), 'miss', `${food}: not here`));
  }
  if (home && record.m) panel.append(button('Put back', () => unmiss(line), 'back', `${food}: put back`));
  all('input', panel).forEach((input, i) => (input.dataset.what = i));
  if (focused !== null && focused !== undefined) $(`[data-what="${focused}"]`, panel)?.focus();
};

const focusOn = (line) => line.row && $('.price', line.row).focus();

// Not here: on to the next stop that has it. Put back, it is what it was before.
const miss = (line) => {
  closePanel();
  change(line, (r) => {
    r.m += 1;
    if (r.f && r.m === 1) r.w = 1;
    r.f = 0;
    for (const key of ['q', 'c', 'x']) delete r[key];
  }, `${foodOf(line)} not here`);
  focusOn(line);
  say(line.now ? `${foodOf(line)} is now on the list of ${where(line.now.s)}` : `No other shop has ${foodOf(line)} in time`);
};
const unmiss = (line) => {
  closePanel();
  change(line, (r) => {
    r.m -= 1;
    r.f = r.m === 0 && r.w ? 1 : 0;
    if (r.m === 0) delete r.w;
  }, `${foodOf(line)} put back`);
  focusOn(line);
  say(`${foodOf(line)} is back on the list of ${where(line.now.s)}`);
};

// The receipt of a stop: as a file, and to be seen and copied where no file can be saved.
const receiptText = (s, total) => {
  const here = linesAt(s).filter((line) => recordOf(line).f);
  const bought = here.map((line) => {
    const r = recordOf(line);
    const old = r.b && r.q === undefined && r.b.own === line.now.own && r.b.n !== line.now.n && r.b.t ? r.b : null;
    const at = old ?? line.now;
    return { f: line.f, t: at.t, q: r.q ?? at.q, cost: costNow(line, line.now), x: r.x, n: r.n, z: r.q === undefined && !r.x && !old && line.now.own ? line.z : undefined };
  });
  for (const [, r] of strangersAt(s)) bought.push({ f: r.b.f, t: r.b.t ?? `# ${r.b.f}`, q: r.q ?? r.b.q ?? 1, cost: r.c ?? r.b.c ?? null, x: r.x, n: r.n });
  const missing = lines.filter((line) => missedAt(line).includes(s)).map((line) => line.f);
  return receiptOf({ shop: stops[s].slug, date: stops[s].date, bought, missing, total, digits: data.currency.digits });
};
const showReceipt = (s) => {
  const dialog = make('dialog', '', 'receipt');
  dialog.setAttribute('aria-label', `Receipt from ${where(s)}`);
  let total = sums(s).cart;
  const text = make('pre', receiptText(s, total));
  text.tabIndex = 0;
  const file = `${stops[s].date}-${stops[s].slug}.yaml`;
  const paid = field('Paid at the till', figure(total), (value, input) => {
    const cents = centsOf(value, data.currency.digits);
    if (cents === null) return input.setAttribute('aria-invalid', 'true');
    total = cents;
    setText(text, receiptText(s, total));
  }, { inputMode: 'decimal' });
  const save = button('Save the file', () => {
    const link = make('a');
    link.href = URL.createObjectURL(new Blob([text.textContent], { type: 'application/yaml' }));
    link.download = file;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  }, 'strong');
  dialog.append(
    make('h3', `Receipt: ${stops[s].shop}`),
    make('p', `Save it in plans/receipts/ as ${file}.`),
    paid, text,
    make('p', '', 'buttons', save, button('Copy', () => copy(text.textContent)), button('Close', () => dialog.close())));
  dialog.addEventListener('close', () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
};
const copy = async (text) => {
  try {
    await navigator.clipboard.writeText(text);
    say('Copied');
    return true;
  } catch {
    // Not allowed here, as in a file on some phones: the old way.
    const area = make('textarea', text);
    (document.querySelector('dialog[open]') ?? document.body).append(area);
    area.select();
    const done = document.execCommand('copy');
    area.remove();
    say(done ? 'Copied' : 'This browser cannot copy; select the text and copy it yourself');
    return done;
  }
};
