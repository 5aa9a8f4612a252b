// What the rest of the script stands on. Text goes into the page as text, never as markup.
import { cleaned } from './10-ticks.mjs';

const data = JSON.parse(document.getElementById('data').textContent);
const { stops, lines } = data;
const button = (label, act, className = '', full = '') => {
  const b = make('button', label, className);
  b.type = 'button';
  if (full) b.setAttribute('aria-label', full);
  b.addEventListener('click', act);
  return b;
};
const field = (label, value, act, attributes = {}) => {
  const input = make('input');
  Object.assign(input, { value, autocomplete: 'off', ...attributes });
  input.addEventListener('change', () => act(input.value.trim(), input));
  const whole = make('label', '', 'field', make('span', label), input);
  whole.input = input;
  return whole;
};
const say = (text) => {
  $('#said').textContent = text;
};
const places = { P: 'pantry', F: 'fridge', Z: 'freezer', H: 'heat' };
const placeMark = (letter) => {
  const mark = make('i', '', `at ${letter}`);
  mark.title = places[letter];
  const seen = make('span', letter);
  seen.setAttribute('aria-hidden', 'true');
  mark.append(seen, make('span', places[letter], 'vh'));
  return mark;
};
const clock = (minutes) => {
  const m = minutes % 1440;
  return `${String(Math.floor(m / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`;
};
const dayAfter = (date, days = 1) => new Date(Date.parse(date) + days * 86400000).toISOString().slice(0, 10);
const minuteNow = () => Math.floor(Date.now() / 60000);

// What is kept: `ticks` by line, `done` by what is done in the kitchen, `paper` of the labels, `timers`
// that run, and whether what is found is `shown`.
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
const table = (value) => (value && typeof value === 'object' && !Array.isArray(value) ? value : {});
const read = () => {
  let kept = null;
  try {
    kept = JSON.parse(storage?.getItem(data.key) ?? 'null');
  } catch {
    // not ours, or cut off: begin anew
  }
  return {
    ticks: cleaned(kept?.ticks),
    done: table(kept?.done),
    paper: table(kept?.paper),
    timers: Array.isArray(kept?.timers) ? kept.timers.filter((one) => Number.isFinite(one?.end)) : [],
    shown: Boolean(kept?.shown),
  };
};
let state = read();
let full = false;
// What a finger did is on the screen first, and written after that: the first write of all takes a
// phone some hundredths of a second. A page that is left writes at once.
let writing = 0;
const write = () => {
  clearTimeout(writing);
  writing = 0;
  try {
    storage?.setItem(data.key, JSON.stringify(state));
    full = false;
  } catch {
    if (!full) tellOf('This browser has no storage left for this page: the ticks are only in its address.');
    full = true;
  }
};
const keep = () => {
  writing ||= setTimeout(write, 50);
};
const keepNow = () => {
  if (writing) write();
};
