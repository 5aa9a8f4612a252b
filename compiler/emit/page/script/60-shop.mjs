// The stops: rows, sums, what is found folded away.

const foodOf = (line) => line.l ?? line.f;
const where = (s) => `${stops[s].shop}, ${stops[s].day}`;
// Meals as the page's data names them: places in one table, the first few, then how many more.
const meals = (list) =>
  list.map((m) => (m < 0 ? `and ${-m} more` : data.meals[m])).join('; ').replace('; and', ' and');

const walkOf = (s) => {
  const stop = document.getElementById(`stop${s}`);
  unfold(stop);
  return $('.walk', stop);
};
const sectionFor = (s, d) => {
  const walk = walkOf(s);
  const found = $(`section[data-d="${d}"]`, walk);
  if (found) return found;
  const order = stops[s].walk;
  const rank = (one) => (order.indexOf(one) < 0 ? order.length + one : order.indexOf(one));
  const after = all('section', walk).find((one) => rank(Number(one.dataset.d)) > rank(d));
  const section = make('section', '', 'opened', make('h5', data.departments[d]), make('ul'));
  section.dataset.d = d;
  walk.insertBefore(section, after ?? null);
  return section;
};
const forget = (row) => {
  const section = row.closest('section');
  row.remove();
  if (section?.matches('.opened') && !$('li', section)) section.remove();
};

// A row that the script makes: of a line that was moved here, or of what is no longer on the list.
const newRow = (count, food, cost, kind) => {
  const box = make('input');
  box.type = 'checkbox';
  const name = make('bdi', food);
  const label = make('label', '', '', box, make('b', count), ' ', make('span', '', '', name));
  const price = make('button', '', 'price', make('data', cost === null ? '' : figure(cost)));
  price.type = 'button';
  price.setAttribute('aria-label', `${food}: ${cost === null ? 'no price known' : figure(cost)}, more`);
  return make('li', '', kind, label, price);
};

const setText = (element, text) => {
  if (element.textContent !== text) element.textContent = text;
};
const noteOf = (row) => $('.now', row) ?? row.appendChild(make('p', '', 'now'));

// What differs from what the list says, in words.
const told = (line, now) => {
  const { f, q, c, x, n, b } = recordOf(line);
  const parts = [];
  if (x) parts.push(`bought instead: ${x}`);
  if (q !== undefined) parts.push(`bought ${now.t.replace('#', () => String(q).replace('.', data.point))}`);
  else if (f && b && b.own === now.own && b.n !== now.n) parts.push(`bought ${b.n}; the list now says ${now.n}`);
  if (c !== undefined) parts.push(`paid ${money(c)}`);
  if (n) parts.push(n);
  return parts.join('; ');
};

const renderLine = (line) => {
  const now = place(line);
  const { f } = recordOf(line);
  line.now = now;
  if (!line.row && !line.visitor && (!now || now.own)) return; // nothing of it is laid out
  const home = now?.own ?? false;
  if (line.visitor && (home || !now || line.visitor.closest('.stop').id !== `stop${now.s}`)) {
    forget(line.visitor);
    line.visitor = null;
  }
  if (now && !home && !line.visitor) {
    line.visitor = newRow(now.n, foodOf(line), now.c, 'moved');
    line.visitor.line = line;
    $('ul', sectionFor(now.s, line.d)).append(line.visitor);
    line.visitor.append(make('p', `from ${where(line.s)}${now.late.length ? `; too late for ${meals(now.late)}` : ''}`, 'now from'));
  }
  const { row } = line;
  if (row) {
    row.classList.toggle('gone', !home);
    const box = $('input', row);
    box.disabled = !home;
    box.checked = home && Boolean(f);
    row.classList.toggle('done', home && Boolean(f));
  }
  if (line.visitor) {
    $('input', line.visitor).checked = Boolean(f);
    line.visitor.classList.toggle('done', Boolean(f));
  }
  const shown = line.visitor ?? row;
  if (now) {
    const cost = costNow(line, now);
    setText($('data', shown), cost === null ? '···' : figure(cost));
  }
  let note = now ? told(line, now) : '';
  if (!now) note = `No later stop has it in time.${line.w.length ? ` Needed for: ${meals(line.w)}.` : ''}`;
  else if (!home) note = `Not here: now at ${where(now.s)}, ${now.n}${now.c === null ? '' : `, ${money(now.c)}`}.`;
  if (row && (note || $('.now', row))) setText(noteOf(row), note);
};
// Lines and stops as they are laid out.
const lay = (around) => {
  for (const row of all('li[id]', around)) {
    const line = lines[Number(row.id.slice(1))];
    line.row = row;
    renderLine(line);
  }
};

const renderStop = (s) => {
  const { all: planned, cart, left, found } = sums(s);
  const stop = $(`#stop${s}`);
  const priced = linesAt(s).some((line) => costNow(line, line.now) !== null);
  setText($('.left', stop), left ? `${left} to find${priced ? `, ${money(planned - cart)}` : ''}` : 'all found');
  stop.classList.toggle('done', left === 0);
  for (const section of all('.walk > section', stop)) {
    const done = !$('li:not(.done):not(.gone)', section);
    if (done !== section.classList.contains('all-done')) section.classList.toggle('all-done', done);
  }
  const fold = $('.fold', stop);
  if (fold) {
    fold.hidden = found === 0;
    fold.setAttribute('aria-pressed', String(state.shown));
    setText(fold, state.shown ? `Hide ${found} found` : `Show ${found} found${priced ? `, ${money(cart)}` : ''}`);
  }
};

// The stop that is open, as the bar at the lower edge tells it.
const openStop = () => {
  const part = root.dataset.view;
  if (part !== 'shop' && part !== 'today') return null;
  const stop = $(part === 'shop' ? '.stop[open]' : '.trip.here .stop[open]');
  return stop ? Number(stop.id.slice(4)) : null;
};
const renderPurse = () => {
  const s = openStop();
  const purse = $('#purse');
  purse.hidden = s === null;
  if (s === null) return;
  const { all: planned, cart, left } = sums(s);
  const budget = data.trips[stops[s].trip];
  const trip = budget === null ? 0 : stops.reduce((sum, other, o) => sum + (other.trip === stops[s].trip ? sums(o).cart : 0), 0);
  if (!purse.firstChild) {
    purse.append(make('p', '', '', make('b'), make('span')), button('Undo', undo, 'undo'));
  }
  setText($('b', purse), money(cart));
  setText($('span', purse), ` of ${money(planned)}, ${left} to find${budget === null ? '' : `; trip ${money(trip)} of ${money(budget)}`}`);
  const last = undone.at(-1);
  $('.undo', purse).hidden = !last;
  if (last) $('.undo', purse).setAttribute('aria-label', `Undo: ${last.words}`);
};

// What a finger did is on the screen first: the line. Sums of the stops that it left and came to, and the
// bar, follow once that is painted, all at once where several lines were changed before.
const unsettled = new Set(); // stops whose sums are still to follow
const settle = () => {
  if (!unsettled.size) return;
  unsettled.forEach(renderStop);
  unsettled.clear();
  renderPurse();
};
const changed = (line, before) => {
  keep();
  mirrorSoon();
  renderLine(line);
  if (!unsettled.size) requestAnimationFrame(() => setTimeout(settle));
  for (const s of [before, line.s, line.now?.s]) if (s !== undefined) unsettled.add(s);
  if (line.panel?.isConnected) fillPanel(line);
};

const renderStrangers = () => {
  for (const row of all('li.stranger')) forget(row);
  for (const [key, r] of strangers()) {
    const s = stops.findIndex((stop) => stop.date === r.b.date && stop.slug === r.b.slug);
    const row = newRow(r.b.n, r.b.f, r.c ?? r.b.c ?? null, 'stranger done');
    const box = $('input', row);
    box.checked = true;
    box.addEventListener('change', () => {
      state.ticks[key] = { ...r, f: 0, t: Math.max(minuteNow(), r.t + 1) };
      keep();
      renderAll();
    });
    row.append(make('p', 'Bought; no longer on the list.', 'now'));
    if (s >= 0) $('ul', sectionFor(s, r.b.d)).append(row);
    else besidesList().append(row);
  }
};
const besidesList = () => {
  const found = $('#shop .besides ul.elsewhere');
  if (found) return found;
  const list = make('ul', '', 'elsewhere');
  $('#shop .besides').prepend(make('h3', 'Bought at stops that are no longer planned'), make('div', '', 'walk', list));
  return list;
};

const renderAll = () => {
  for (const line of lines) line.now = place(line);
  for (const line of lines) renderLine(line);
  renderStrangers();
  stops.forEach((_, s) => renderStop(s));
  renderPurse();
};

const tick = (line, on, row) => {
  // What was just ticked stays for a moment, so that no other line slips under the finger.
  if (on) {
    row.classList.add('fresh');
    setTimeout(() => row.classList.remove('fresh'), 900);
  }
  change(line, (r) => (r.f = on ? 1 : 0), `${foodOf(line)} ${on ? 'found' : 'not found'}`);
};
const lineOf = (row) => row.line ?? (row.id ? lines[Number(row.id.slice(1))] : null);

const watchShop = () => {
  whenUnfolded.push((around) => {
    if (around.matches('.stop')) lay(around);
  });
  const shop = $('#shop');
  shop.addEventListener('change', (event) => {
    const row = event.target.closest('.stop li');
    const line = row && event.target.matches('label > input[type=checkbox]') && lineOf(row);
    if (line) tick(line, event.target.checked, row);
  });
  shop.addEventListener('click', (event) => {
    const price = event.target.closest('.price');
    const line = price && lineOf(price.closest('li'));
    if (line) openPanel(line, price.closest('li'), price);
  });
  // One stop is open at a time, so that the bar below speaks of it.
  shop.addEventListener('toggle', (event) => {
    if (!event.target.matches('.stop')) return;
    if (event.oldState !== undefined && event.oldState === event.newState) return;
    if (event.target.open && !printing) {
      furnish(event.target);
      for (const other of all('.stop[open]')) if (other !== event.target) other.open = false;
    }
    renderPurse();
  }, true);
};

// What stands above and below the list of a stop once it is opened.
const furnish = (stop) => {
  if ($('.tools', stop)) return;
  const s = Number(stop.id.slice(4));
  const walk = walkOf(s);
  const search = make('input');
  Object.assign(search, { type: 'search', placeholder: 'Search this stop', autocomplete: 'off' });
  search.setAttribute('aria-label', `Search the list of ${stops[s].shop}`);
  search.addEventListener('input', () => {
    const words = search.value.trim().toLowerCase();
    stop.classList.toggle('searching', words !== '');
    for (const row of all('li', walk)) row.classList.toggle('other', words !== '' && !row.textContent.toLowerCase().includes(words));
    for (const section of all('section', walk)) section.classList.toggle('none', !$('li:not(.other)', section));
  });
  walk.before(make('div', '', 'tools', search));
  const fold = button('', () => {
    state.shown = !state.shown;
    keep();
    document.documentElement.classList.toggle('shown', state.shown);
    stops.forEach((_, one) => renderStop(one));
  }, 'fold');
  walk.after(make('div', '', 'after', fold, button('Save as a receipt', () => showReceipt(s), 'save')));
  renderStop(s);
};
