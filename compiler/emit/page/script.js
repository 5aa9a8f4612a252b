// What a finger does on the page: ticks, sums, lines that are not there, the paper of the labels.
// Everything else stands in the page itself. Text goes in as text (textContent), never as markup.
(() => {
  'use strict';
  const data = JSON.parse(document.getElementById('data').textContent);
  const { stops, lines } = data;
  const $ = (selector, within = document) => within.querySelector(selector);
  const all = (selector, within = document) => [...within.querySelectorAll(selector)];
  const make = (tag, text = '', className = '') => {
    const element = document.createElement(tag);
    element.textContent = text;
    if (className) element.className = className;
    return element;
  };

  // State: `ticks` has for each line's key the number of packs that it was ticked with, `gone` the
  // stops at which it was not there, `paper` the sheet of the labels. Keys say what a line is, so
  // that the page of a plan that is compiled again finds them.
  const storage = (() => {
    try {
      const probe = data.key + '|probe';
      localStorage.setItem(probe, '1');
      localStorage.removeItem(probe);
      return localStorage;
    } catch {
      return null; // refused: the page works, but keeps nothing
    }
  })();
  const read = () => {
    let kept = null;
    try {
      kept = JSON.parse(storage?.getItem(data.key) ?? 'null');
    } catch {
      // not ours, or cut off: begin anew
    }
    const table = (value) => (value && typeof value === 'object' && !Array.isArray(value) ? value : {});
    return { ticks: table(kept?.ticks), gone: table(kept?.gone), paper: table(kept?.paper) };
  };
  let state = read();
  const keep = () => {
    try {
      storage?.setItem(data.key, JSON.stringify(state));
    } catch {
      // full: what is on the screen still holds
    }
  };

  // As the house writes money: the amount alone, and with the sign of the currency.
  const { sign, after, spaced, point, digits } = data.currency;
  const figure = (cents) => (cents / 10 ** digits).toFixed(digits).replace('.', point);
  const money = (cents) => {
    const parts = [sign, figure(Math.abs(cents))];
    return (cents < 0 ? '-' : '') + (after ? parts.reverse() : parts).join(spaced ? '\u00a0' : '');
  };

  // Where a line is bought now: at its own stop, or at the best later one of those where it has not
  // been missed as well; null when there is none.
  const place = (line) => {
    const missed = Array.isArray(state.gone[line.k]) ? state.gone[line.k] : [];
    let now = { stop: line.s, packs: line.p, cost: line.c, late: [], own: true };
    while (now && missed.includes(stops[now.stop].key)) {
      const next = line.o.find((offer) => offer[0] > now.stop && !missed.includes(stops[offer[0]].key));
      now = next
        ? { stop: next[0], packs: next[1], cost: next[2], count: next[3], late: next[4] ?? [], own: false }
        : null;
    }
    return now;
  };

  // What a till asks for some lines: goods, tax to the nearest cent a line, less store credit as
  // far as it goes.
  const paid = (chosen) => {
    const goods = stops.map(() => 0);
    const tax = stops.map(() => 0);
    for (const { now, d } of chosen) {
      if (now.cost === null) continue; // no price known
      goods[now.stop] += now.cost;
      tax[now.stop] += Math.floor((now.cost * (stops[now.stop].tax[d] ?? 0) + 500000) / 1000000);
    }
    const used = {};
    const by = stops.map((stop, s) => {
      const due = goods[s] + tax[s];
      const credit = Math.min(due, stop.credit - (used[stop.at] ?? 0));
      used[stop.at] = (used[stop.at] ?? 0) + credit;
      return due - credit;
    });
    return { by, sum: by.reduce((a, b) => a + b, 0) };
  };

  const say = (text) => {
    $('#said').textContent = text;
  };
  // Meals as the page's data names them: places in one table, the first few, then how many more.
  const meals = (list) =>
    list.map((m) => (m < 0 ? `and ${-m} more` : data.meals[m])).join('; ').replace('; and', ' and');
  const foodOf = (line) => $('bdi', line.row).textContent;
  const where = (s) => `${stops[s].shop}, ${stops[s].day}`;

  // "Not here" and its opposite stand where the finger is: the focus stays with the button.
  const miss = (line) => {
    const now = place(line);
    if (!now) return;
    state.gone[line.k] = [...(state.gone[line.k] ?? []), stops[now.stop].key];
    delete state.ticks[line.k];
    keep();
    render();
    line.button.focus();
    const then = place(line);
    say(then ? `${foodOf(line)} is now on the list of ${where(then.stop)}` : `Nobody else has ${foodOf(line)} in time`);
  };
  const unmiss = (line) => {
    state.gone[line.k] = state.gone[line.k].slice(0, -1);
    if (state.gone[line.k].length === 0) delete state.gone[line.k];
    delete state.ticks[line.k];
    keep();
    render();
    line.button.focus();
    say(`${foodOf(line)} is back on the list of ${where(place(line).stop)}`);
  };
  const tick = (line, on) => {
    if (on) state.ticks[line.k] = place(line).packs;
    else delete state.ticks[line.k];
    keep();
    render();
  };

  const button = (label, full, act) => {
    const b = make('button', label);
    b.type = 'button';
    b.setAttribute('aria-label', full);
    b.addEventListener('click', act);
    return b;
  };

  // The row of a line at the stop that it has gone to, in that shop's order of walking.
  const visitor = (line, now) => {
    const row = make('li', '', 'moved');
    const label = make('label');
    const box = make('input');
    box.type = 'checkbox';
    box.addEventListener('change', () => tick(line, box.checked));
    const what = make('span');
    what.append(make('b', now.count), ' ', $('bdi', line.row).cloneNode(true));
    what.append(make('small', `from ${where(line.s)}${now.late.length ? `; too late for ${meals(now.late)}` : ''}`));
    const cost = make('data', now.cost === null ? '' : figure(now.cost));
    cost.value = now.cost ?? 0;
    label.append(box, what, cost);
    row.append(label, button('not here', `${foodOf(line)}: not here`, () => miss(line)));
    line.visitor = row;
    const walk = $(`#stop${now.stop} .walk`);
    let list = $(`ul[data-d="${line.d}"]`, walk);
    if (!list) {
      const order = stops[now.stop].walk;
      const rank = (d) => (order.indexOf(d) < 0 ? order.length + d : order.indexOf(d));
      const after = all('ul', walk).find((ul) => rank(Number(ul.dataset.d)) > rank(line.d));
      const head = make('h5', data.departments[line.d]);
      list = make('ul', '', 'opened');
      list.dataset.d = line.d;
      walk.insertBefore(head, after ? after.previousElementSibling : null);
      walk.insertBefore(list, after ? head.nextElementSibling : null);
    }
    list.append(row);
    return row;
  };

  const forget = (line) => {
    const list = line.visitor?.parentElement;
    line.visitor?.remove();
    line.visitor = null;
    if (list?.matches('.opened:empty')) {
      list.previousElementSibling.remove();
      list.remove();
    }
  };

  const renderLine = (line) => {
    const now = place(line);
    const home = now?.own ?? false;
    forget(line);
    line.now = now;
    line.ticked = now !== null && state.ticks[line.k] === now.packs;
    const row = home || !now ? line.row : visitor(line, now);
    const box = $('input', row);
    box.checked = line.ticked;
    row.classList.toggle('done', line.ticked);
    if (!home) {
      $('input', line.row).checked = false;
      line.row.classList.remove('done');
    }
    $('input', line.row).disabled = !home;
    line.row.classList.toggle('gone', !home);
    line.button.textContent = home ? 'not here' : 'put back';
    line.button.setAttribute('aria-label', `${foodOf(line)}: ${home ? 'not here' : 'put back'}`);
    line.note.hidden = home && (state.ticks[line.k] === undefined || line.ticked);
    line.note.replaceChildren();
    if (home) {
      if (!line.note.hidden) line.note.append(`It was ticked when the list said ${state.ticks[line.k]}.`);
      return;
    }
    const on = make('b');
    if (now) {
      on.textContent = where(now.stop);
      line.note.append('Now at ', on, `: ${now.count}, ${now.cost === null ? 'no price known' : money(now.cost)}.`);
      if (now.late.length) line.note.append(` Too late for ${meals(now.late)}.`);
    } else {
      on.textContent = 'No later stop has it in time.';
      line.note.append(on);
    }
    if (line.w.length) line.note.append(` Waiting for it: ${meals(line.w)}.`);
  };

  const render = () => {
    for (const line of lines) renderLine(line);
    const held = lines.filter((line) => line.now);
    const planned = paid(held);
    const ticked = paid(held.filter((line) => line.ticked));
    const open = held.filter((line) => !line.ticked);
    stops.forEach((stop, s) => {
      const count = open.filter((line) => line.now.stop === s).length;
      $(`#stop${s} .left`).textContent = count
        ? `${count} to find, ${money(planned.by[s] - ticked.by[s])}`
        : 'all found';
      $(`#stop${s}`).classList.toggle('done', count === 0);
      const budget = data.trips[stop.trip];
      const trip = stops.reduce((sum, other, o) => sum + (other.trip === stop.trip ? ticked.by[o] : 0), 0);
      $(`#stop${s} .basket`).textContent =
        `In the basket ${money(ticked.by[s])} of ${money(planned.by[s])}` +
        (budget === null ? '' : `; this trip ${money(trip)} of ${money(budget)}`);
    });
    const lost = lines.length - held.length;
    const part = (strong, rest) => {
      const span = make('span');
      span.append(make('b', strong), rest, ' '); // told apart by who hears them, too
      return span;
    };
    const over = data.budget === null ? 0 : planned.sum - data.budget;
    $('#purse').replaceChildren(
      part(money(ticked.sum), ` of ${money(planned.sum)} in the basket`),
      part(`${open.length}`, ` to find, ${money(planned.sum - ticked.sum)}`),
      ...(data.budget === null
        ? []
        : [part(money(Math.abs(over)), over > 0 ? ' over the budget' : ` left of the budget of ${money(data.budget)}`)]),
      ...(lost ? [part(`${lost}`, ' not to be had')] : [])
    );
  };

  lines.forEach((line, l) => {
    line.row = $(`#l${l}`);
    line.visitor = null;
    $('input', line.row).addEventListener('change', (event) => tick(line, event.target.checked));
    line.button = button('', '', () => (place(line)?.own ? miss(line) : unmiss(line)));
    line.note = make('p', '', 'note');
    line.note.hidden = true;
    line.row.append(line.button, line.note);
  });

  // Of the list, the first trip that has something left to find is open; the others wait closed.
  const unfold = () => {
    const next = lines.filter((line) => line.now && !line.ticked).map((line) => stops[line.now.stop].trip);
    const trip = next.length ? Math.min(...next) : -1;
    stops.forEach((stop, s) => {
      $(`#stop${s}`).open = stop.trip === trip;
    });
  };
  // On paper every stop stands open; afterwards the screen is as it was.
  let closed = [];
  addEventListener('beforeprint', () => {
    closed = all('details.stop:not([open])');
    closed.forEach((stop) => (stop.open = true));
  });
  addEventListener('afterprint', () => closed.forEach((stop) => (stop.open = false)));
  addEventListener('storage', (event) => {
    if (event.key === data.key) {
      state = read();
      render();
    }
  });

  // One part of the page at a time, named by the address: back and forward work, and paper gets
  // what is on the screen.
  const show = () => {
    const target = document.getElementById(location.hash.slice(1));
    const section = target?.closest('main > section') ?? $('main > section');
    for (const one of all('main > section')) one.hidden = one !== section;
    for (const link of all('nav a')) {
      if (link.hash === '#' + section.id) link.setAttribute('aria-current', 'page');
      else link.removeAttribute('aria-current');
    }
    document.body.dataset.view = section.id;
    $('#purse').hidden = section.id !== 'list';
    if (target?.matches('details')) target.open = true;
    if (target && target !== section) target.scrollIntoView();
    else scrollTo(0, 0);
  };
  addEventListener('hashchange', show);

  // Labels: so many across and down on a sheet.
  const form = $('form.grid');
  const labels = all('.label');
  const between = (value, input) => Math.min(Number(input.max), Math.max(Number(input.min), Math.round(value) || Number(input.defaultValue)));
  const arrange = () => {
    const paper = form.paper.value === 'letter' ? 'letter' : 'A4';
    const cols = between(Number(form.cols.value), form.cols);
    const rows = between(Number(form.rows.value), form.rows);
    const [width, height] = paper === 'A4' ? [210, 297] : [215.9, 279.4];
    $('#paper').textContent = `@page labels { size: ${paper}; margin: 0 }`;
    const sheets = [];
    for (let i = 0; i < labels.length; i += cols * rows) {
      const sheet = make('div', '', 'paper');
      sheet.style.cssText = `--w:${width}mm;--h:${height}mm;--cols:${cols};--rows:${rows};--cell:${(height - 20) / rows}mm`;
      sheet.append(...labels.slice(i, i + cols * rows));
      sheets.push(sheet);
    }
    $('.labels').replaceChildren(...sheets);
    $('#sheets').textContent = `${sheets.length} ${sheets.length === 1 ? 'sheet' : 'sheets'} of ${cols * rows}`;
    state.paper = { paper, cols, rows };
  };
  document.head.append(Object.assign(make('style'), { id: 'paper' }));
  if (state.paper.paper) {
    form.paper.value = state.paper.paper;
    form.cols.value = state.paper.cols;
    form.rows.value = state.paper.rows;
  }
  form.addEventListener('change', () => {
    arrange();
    keep();
  });
  form.addEventListener('submit', (event) => event.preventDefault());

  // The day that it is, by the clock of whoever looks.
  const now = new Date();
  const today = document.getElementById(
    `d${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`);
  if (today) {
    today.setAttribute('aria-current', 'date');
    const link = make('a', 'Today', 'today');
    link.href = '#' + today.id;
    $('#days h2').append(' ', link);
  }

  // The bars stay on the screen when they leave two thirds of it to the list.
  const bars = [$('nav'), $('#purse')];
  const fit = () => {
    const taken = bars.reduce((sum, bar) => sum + bar.offsetHeight, 0);
    document.documentElement.classList.toggle('roomy', taken * 3 < innerHeight);
  };
  const watch = new ResizeObserver(fit);
  bars.forEach((bar) => watch.observe(bar));
  addEventListener('resize', fit);

  if (!storage) {
    $('#list h2').after(make('p', 'This browser keeps nothing for this page: ticks last until it is closed.', 'warn'));
  }
  const clear = button('Take off all ticks', 'Take off all ticks and bring back what was not there', () => {
    if (confirm('Take off all ticks and bring back what was not there?')) {
      state.ticks = {};
      state.gone = {};
      keep();
      render();
    }
  });
  clear.className = 'clear';
  $('#list').append(clear);
  render();
  unfold();
  arrange();
  show();
})();
