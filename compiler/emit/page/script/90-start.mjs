// Everything begins here: first what is seen, then what can wait.
import { merge } from './10-ticks.mjs';

watchShop();
renderAll();
document.querySelector('#purse').before(bar);
root.classList.toggle('shown', state.shown);
for (const stop of all('.stop')) stop.open = false;
addEventListener('hashchange', show);
watchDone();
whenUnfolded.push((around) => {
  if (around.matches('.session')) furnishSession(around);
  if (around.id === 'labels') furnishLabels();
});
show();
watchPrint();
showTimers();
addEventListener('storage', (event) => {
  if (event.key !== data.key) return;
  const other = read();
  state = { ...other, ticks: merge(state.ticks, other.ticks) };
  renderAll();
  showTimers();
});
setInterval(turn, 20000);
addEventListener('pagehide', keepNow);
document.addEventListener('visibilitychange', () => {
  if (document.hidden) return keepNow();
  turn();
  if (wanted) stayAwake(true);
});
if (!storage) {
  $('main').prepend(make('p', 'This browser stores nothing for this page. The ticks are only in its address: keep the page open, or bookmark it.', 'warn'));
}
navigator.storage?.persist?.();

// The bars stay on the screen when they leave two thirds of it to the list. Usually they are as high
// as the style says, and nothing changes once they are measured.
const bars = [$('nav'), $('#purse'), bar];
let measured = '';
const fit = () => {
  const heights = bars.map((one) => one.offsetHeight);
  const taken = heights.reduce((sum, one) => sum + one, 0);
  const roomy = taken * 3 < innerHeight;
  const now = [roomy, ...heights].join();
  if (now === measured) return;
  measured = now;
  root.classList.toggle('roomy', roomy);
  for (const one of [root, document.body]) one.style.setProperty('--bars', `${taken}px`);
  $('#foot').style.setProperty('--nav', `${heights[0]}px`);
};
const watch = new ResizeObserver(fit);
bars.forEach((one) => watch.observe(one));
addEventListener('resize', fit);
root.dataset.ready = String(Math.round(performance.now()));
