// Cooking: a dish as it is made this time, sessions, what is done ticked, the screen kept on.
import { mark } from './20-code.mjs';

const doneKey = (box) => box.dataset.key ?? keyOfBox(box);
const keyOfBox = (box) => {
  const day = box.closest('.day')?.id ?? box.closest('.session')?.dataset.date ?? '';
  const row = box.closest('li');
  return `${day}|${$('bdi', row)?.textContent ?? ''}|${$('time', row)?.textContent ?? ''}|${mark($('span', row).textContent)}`;
};
const setDone = (box) => {
  box.closest('li').classList.toggle('done', box.checked);
};
const watchDone = () => {
  whenUnfolded.push((around) => {
    if (!around.matches('.day, .session') || !Object.keys(state.done).length) return;
    for (const box of all('input[type=checkbox]', around)) {
      box.checked = Boolean(state.done[doneKey(box)]);
      setDone(box);
    }
  });
  document.addEventListener('change', (event) => {
    const box = event.target;
    if (!box.matches?.('.day input[type=checkbox], .session input[type=checkbox], #dishes input[type=checkbox]')) return;
    if (box.checked) state.done[doneKey(box)] = 1;
    else delete state.done[doneKey(box)];
    setDone(box);
    keep();
  });
};

const text = (place) => kitchen().texts[place] ?? '';
const sentence = (words) => words.replace(/^[; ]+/, '').replace(/^./, (first) => first.toUpperCase());
const dayWords = (date) => {
  const { day, weekday, month } = wordsOf(date);
  return `${weekday.slice(0, 3)} ${day} ${month.slice(0, 3)}`;
};
// "2½ tbsp": shorter, and to be read from further away.
const fractions = { '1/2': '½', '1/3': '⅓', '2/3': '⅔', '1/4': '¼', '3/4': '¾', '1/8': '⅛' };
const short = (amount) => amount.replace(/(\d+ )?\b(\d\/\d)\b/g, (whole, units, part) => (fractions[part] ? `${(units ?? '').trim()}${fractions[part]}` : whole));

const checkable = (key, ...content) => {
  const box = make('input');
  box.type = 'checkbox';
  box.dataset.key = key;
  box.checked = Boolean(state.done[key]);
  const row = make('li', '', box.checked ? 'done' : '', make('label', '', '', box, ...content));
  return row;
};

const showDish = (id) => {
  const dish = kitchen().dishes[id];
  const place = $('#dishes');
  const key = `dish|${dish.n}|${dish.d}`;
  const taken = dish.t.map(([amount, food, how, where, from, step], i) => ({ amount: short(text(amount)), food: text(food), how: text(how), where, from: text(from), step, i }));
  const about = make('p', '', 'about', [text(dish.m), text(dish.e), dish.x === undefined && dish.r !== undefined ? `ready at ${clock(dish.r)}` : ''].filter(Boolean).join('; '));
  const back = make('a', dish.x === undefined ? dayWords(dish.d) : `Session on ${dayWords(dish.d)}`, 'back-to');
  back.href = dish.x === undefined ? '#' + dish.d : `#session${dish.x}`;
  const head = make('header', '', '', back, make('h3', '', '', make('bdi', dish.n)), about);
  const heat = text(dish.h);
  if (heat) head.append(make('p', '', 'heat', placeMark('H'), ' ', make('b', heat)));
  const list = make('ul', '', 'take');
  for (const one of taken) {
    const what = make('span', '', '', make('bdi', one.food));
    if (one.how) what.append(', ' + one.how);
    if (one.from) what.append(make('small', one.from));
    list.append(checkable(`${key}|t${one.i}|${one.food}`, make('b', one.amount), what, one.where ? placeMark(one.where) : ''));
  }
  const steps = make('ol', '', 'steps');
  dish.s.forEach(([at, what, hands, then, on], i) => {
    const said = make('span', '', '', text(what));
    const used = taken.filter((one) => one.step === i && one.amount);
    if (used.length) said.append(make('small', used.map((one) => `${one.amount} ${one.food}`).join(' · '), 'with'));
    const times = [hands ? `${hands} min of work` : '', then ? `${hands ? 'then ' : ''}${then} min alone` : ''].filter(Boolean).join(', ');
    const small = make('small', [times, text(on)].filter(Boolean).join('; '), 'takes');
    if (/\d/.test(text(on))) small.append(' ', placeMark('H'));
    said.append(small);
    const row = checkable(`${key}|s${i}`, make('time', at < 0 ? '' : clock(at)), said);
    if (then) row.append(timerButton(`${dish.n}: ${text(what)}`, then, `#dish${id}`));
    steps.append(row);
  });
  const sheet = make('article', '', 'sheet', head, make('h4', 'Take'), list);
  if (dish.s.length) sheet.append(make('h4', 'Do'), steps);
  const after = [sentence(text(dish.b)), dish.l ? sentence(dish.l) : ''].filter(Boolean);
  if (after.length) sheet.append(make('h4', 'Afterwards'), ...after.map((words) => make('p', words + '.')));
  place.replaceChildren(sheet);
};

// Of a session with several cooks each can have their own tasks alone, on a phone of their own; what
// starts by itself stays with everybody.
const furnishSession = (session) => {
  $('.made', session)?.removeAttribute('open');
  for (const row of all('.task', session)) {
    const then = Number(row.dataset.then);
    if (then >= 3) row.append(timerButton($('bdi', row).textContent, then, `#${session.id}`));
  }
  const cooks = all('.axis:not(.more) .cook-name:not(.itself)', session).map((name) => name.textContent);
  if (cooks.length < 2) return;
  const choose = (chosen) => {
    buttons.forEach((one, i) => one.setAttribute('aria-pressed', String(i === chosen)));
    for (const row of all('.task:not(.alone)', session))
      row.classList.toggle('of-others', chosen > 0 && Number(row.style.getPropertyValue('--c')) !== chosen + 1);
  };
  const buttons = ['All', ...cooks].map((name, i) => button(name, () => choose(i)));
  choose(0);
  $('.axis', session).before(make('p', '', 'buttons who-cooks', ...buttons));
};

// What is cooked, by day; what is past folds away.
const showIndex = () => {
  const byDay = new Map();
  const on = (date) => byDay.get(date) ?? byDay.set(date, []).get(date);
  for (const session of all('.session')) {
    const link = make('a', 'Prep session');
    link.href = '#' + session.id;
    on(session.dataset.date).push(make('li', '', '', link, make('small', $('h3 small', session).textContent.split('; ').at(-1))));
  }
  const { dishes } = kitchen();
  const ids = dishes.map((_, id) => id).sort((a, b) => (dishes[a].r ?? 0) - (dishes[b].r ?? 0));
  for (const id of ids) {
    const dish = dishes[id];
    const link = make('a', '', '', make('bdi', dish.n));
    link.href = `#dish${id}`;
    on(dish.d).push(make('li', '', '', link, make('small', dish.x === undefined ? `ready at ${clock(dish.r)}` : 'in the session')));
  }
  const now = today();
  const day = (date) =>
    make('section', '', date === now ? 'day-list now' : 'day-list', dayTitle('h3', date), make('ul', '', '', ...byDay.get(date)));
  const dates = [...byDay.keys()].sort();
  const past = dates.filter((date) => date < now);
  const place = $('#dishes');
  place.replaceChildren(...dates.filter((date) => date >= now).map(day));
  if (past.length) {
    const fold = make('details', '', 'past', make('summary', past.length === dates.length ? 'All days are past' : 'Past days'), ...past.map(day));
    fold.open = past.length === dates.length;
    place.append(fold);
  }
};

// The screen stays on while one cooks from it, where the browser allows it.
let awake = null;
let wanted = false;
const stayAwake = async (want) => {
  wanted = want;
  if (!want) {
    awake?.release().catch(() => {});
    awake = null;
    return;
  }
  if (awake || document.hidden) return;
  try {
    awake = (await navigator.wakeLock?.request('screen')) ?? null;
    awake?.addEventListener('release', () => (awake = null));
    if (!wanted) stayAwake(false);
  } catch {
    awake = null; // refused, as with an empty battery
  }
};
