// Timers count on wherever one looks in the page, and when it is closed and opened again.

const timerButton = (label, minutes, href) =>
  button(`Start ${minutes} min`, () => startTimer(label, minutes, href), 'timer', `Start ${minutes} min for ${label}`);

let sound = null;
const startTimer = (label, minutes, href) => {
  // A sound may only be begun by a touch; this is one.
  try {
    sound ??= new AudioContext();
    sound.resume();
  } catch {
    sound = null;
  }
  state.timers.push({ label, end: Date.now() + minutes * 60000, href });
  keep();
  showTimers();
  say(`${minutes}-minute timer started`);
};

const beep = () => {
  navigator.vibrate?.([300, 150, 300]);
  if (!sound) return;
  for (const at of [0, 0.35, 0.7]) {
    const tone = sound.createOscillator();
    const volume = sound.createGain();
    tone.frequency.value = 880;
    volume.gain.setValueAtTime(0.4, sound.currentTime + at);
    volume.gain.exponentialRampToValueAtTime(0.001, sound.currentTime + at + 0.3);
    tone.connect(volume).connect(sound.destination);
    tone.start(sound.currentTime + at);
    tone.stop(sound.currentTime + at + 0.3);
  }
};

const bar = make('div', '', 'timers');
bar.setAttribute('role', 'region');
bar.setAttribute('aria-label', 'Timers');
let counting = 0;
const title = document.title;
const showTimers = () => {
  bar.hidden = state.timers.length === 0;
  bar.replaceChildren(...state.timers.map((timer, i) => {
    const link = make('a', timer.label);
    link.href = timer.href;
    const stop = button('Stop', () => {
      state.timers.splice(i, 1);
      keep();
      showTimers();
    }, '', `Stop the timer of ${timer.label}`);
    return make('p', '', '', make('b', '', 'rest'), link, stop);
  }), make('small', 'Rings only with this page open and the screen on.'));
  if (!counting && state.timers.length) counting = setInterval(countTimers, 1000);
  countTimers();
};
const countTimers = () => {
  if (!state.timers.length) {
    clearInterval(counting);
    counting = 0;
    document.title = title;
    return;
  }
  const now = Date.now();
  let over = 0;
  state.timers.forEach((timer, i) => {
    const seconds = Math.ceil((timer.end - now) / 1000);
    const row = bar.children[i];
    const rest = Math.abs(seconds);
    const h = Math.floor(rest / 3600);
    setText($('.rest', row), `${seconds < 0 ? '+' : ''}${h ? h + ':' : ''}${String(Math.floor(rest / 60) % 60).padStart(h ? 2 : 1, '0')}:${String(rest % 60).padStart(2, '0')}`);
    const rings = seconds <= 0;
    if (rings && !row.classList.contains('over')) say(`Time is up: ${timer.label}`);
    row.classList.toggle('over', rings);
    // Two minutes of ringing are enough; what is over stays to be seen.
    if (rings && seconds > -120 && seconds % 3 === 0) beep();
    over += rings ? 1 : 0;
  });
  document.title = over ? `Time is up! ${title}` : title;
};
