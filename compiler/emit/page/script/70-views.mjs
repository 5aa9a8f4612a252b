// One part of the page at a time, named by the address, so that back and forward work and paper gets
// what is on the screen. Each part is found where it was left.

const left = new Map(); // by view, how far it was scrolled
let view = '';
let shownDay = ''; // of the days part
let follows = true; // the clock: it is today that is shown

const showDay = (date) => {
  shownDay = date;
  layDay(date);
  const past = lines.filter((line) => line.now && stops[line.now.s].date < date && stops[line.now.s].date >= dayAfter(date, -7) && !recordOf(line).f);
  if (past.length && date === today() && trips.some((trip) => trip < date && lines.some((line) => line.stop.date === trip && recordOf(line).f))) {
    const link = make('a', `${past.length} ${past.length === 1 ? 'thing is' : 'things are'} not ticked from earlier trips`);
    link.href = '#shop';
    $('#dayhead').append(make('p', '', 'earlier', link));
  }
};

// Of the stops of a day, the first that has something to find is open.
const openFirst = (date) => {
  const here = stops.map((stop, s) => ({ stop, s })).filter(({ stop }) => stop.date === date);
  const next = here.find(({ s }) => sums(s).left > 0);
  for (const { s } of here) {
    const stop = $(`#stop${s}`);
    if (stop.open !== (s === next?.s)) stop.open = s === next?.s;
  }
  if (next) furnish($(`#stop${next.s}`));
};

// Of all trips: what is in the cart, what is planned, and what the budget is.
const showMonth = () => {
  const of = stops.map((_, s) => sums(s));
  const add = (key) => of.reduce((sum, one) => sum + one[key], 0);
  const place = $('#shop .month-sum') ?? make('p', '', 'month-sum');
  setText(place, `${money(add('cart'))} of ${money(add('all'))} bought in all${data.budget === null ? '' : `; the budget is ${money(data.budget)}`}.`);
  $('#shop > h2').after(place);
};

// What an address means: the part, and what is meant within it.
const meaning = (hash) => {
  const [words, code] = hash.replace(/^#/, '').split('~');
  const date = /^d?(\d{4}-\d\d-\d\d)$/.exec(words)?.[1];
  if (date) return { part: 'today', date, code };
  const thing = /^(stop|dish|session|trip)(\d+)$/.exec(words);
  if (thing && document.getElementById(words)?.matches('.stop, .trip')) return { part: 'shop', id: words, code };
  if (thing?.[1] === 'session' && document.getElementById(words)) return { part: 'session', id: words, code };
  if (thing?.[1] === 'dish' && kitchen().dishes[Number(thing[2])]) return { part: 'dish', id: Number(thing[2]), code };
  if (['shop', 'menu', 'cook', 'more', 'labels', 'figures'].includes(words)) return { part: words, code };
  return { part: 'today', date: null, code };
};

const show = () => {
  const { part, id, date, code } = meaning(location.hash);
  if (code !== undefined) receive(code);
  else if (view) mirrorSoon();
  const key = part + (id ?? date ?? '');
  if (view && view !== key) left.set(view, scrollY);
  const fresh = view !== key;
  view = key;
  root.dataset.view = part;
  markPart(part);
  closePanel();
  let target = null;
  if (part === 'today') {
    follows = date === null;
    showDay(nearestDay(date ?? undefined));
    if (fresh) openFirst(shownDay);
  }
  if (part === 'shop' && id) {
    target = document.getElementById(id);
    if (target.matches('.stop')) target.open = true;
  } else if (part === 'shop' && fresh && !left.has(key)) {
    const next = trips.find((trip) => trip >= today());
    for (const stop of all('.stop[open]')) stop.open = false;
    target = next && next !== trips[0] ? $(`.trip[data-date="${next}"]`) : null;
  }
  if (part === 'shop') showMonth();
  if (part === 'dish') showDish(id);
  if (part === 'session') {
    all('.session').forEach((one) => one.classList.toggle('here', one.id === id));
    unfold(document.getElementById(id));
  }
  if (['menu', 'labels', 'figures'].includes(part)) unfold(document.getElementById(part));
  if (part === 'cook') showIndex();
  if (part === 'more') showMore();
  stayAwake(part === 'dish' || part === 'session');
  renderPurse();
  if (target) target.scrollIntoView();
  else if (fresh) scrollTo(0, left.get(key) ?? 0);
};

// At midnight the page turns; so it does when a phone wakes up on another day.
const turn = () => {
  if (follows && meaning(location.hash).part === 'today' && shownDay !== nearestDay()) {
    view = '';
    show();
  }
};
