// Everything begins here: first what is seen, then what can wait.

$('nav a').hash = 'today'; // without the script it leads to all days
watchShop();
renderAll();
document.querySelector('#purse').before(bar);
root.classList.toggle('shown', state.shown);
for (const stop of all('.stop')) stop.open = false;
for (const made of all('.made')) made.open = false;
addEventListener('hashchange', show);
show();
watchPrint();
watchDone();
showTimers();
addEventListener('storage', (event) => {
  if (event.key !== data.key) return;
  state = read();
  renderAll();
  showTimers();
});
setInterval(turn, 20000);
document.addEventListener('visibilitychange', () => {
  if (document.hidden) return;
  turn();
  if (wanted) stayAwake(true);
});
for (const session of all('.session')) furnishSession(session);
if (!storage) {
  $('main').prepend(make('p', 'This browser keeps nothing for this page. The ticks are in its address only: keep the page open, or a bookmark of it.', 'warn'));
}
navigator.storage?.persist?.();

// The bars stay on the screen when they leave two thirds of it to the list.
const bars = [$('nav'), $('#purse'), bar];
const fit = () => {
  const taken = bars.reduce((sum, one) => sum + one.offsetHeight, 0);
  root.classList.toggle('roomy', taken * 3 < innerHeight);
  root.style.setProperty('--bars', `${taken}px`);
  root.style.setProperty('--nav', `${bars[0].offsetHeight}px`);
};
const watch = new ResizeObserver(fit);
bars.forEach((one) => watch.observe(one));
addEventListener('resize', fit);
watchLabels();
root.dataset.ready = String(Math.round(performance.now()));
