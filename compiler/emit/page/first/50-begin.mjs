// What is seen at once stands before anything else is read: the day, and where to shop. The rest of the
// script begins once that is painted, and so does the style of what is not seen at first. The header and
// the bars are painted before any of it.

// So many pieces of the style that are still folded up, or all of them.
const dress = (pieces) => {
  for (const fold of all('noscript.style').slice(0, pieces)) fold.outerHTML = fold.textContent;
};
// The part that the address asks for.
const [, partAsked = 'today'] = /^#(shop|stop|trip|menu|cook|dish|session|more|labels|figures)/.exec(location.hash) ?? [];
root.classList.add('js');
root.dataset.view = /^(stop|trip)/.test(partAsked) ? 'shop' : partAsked;

$('nav a').hash = 'today'; // without the script it leads to all days
if (root.dataset.view === 'today') {
  dress(1);
  layDay(nearestDay(dayAsked()), false);
} else dress();
markPart(root.dataset.view);

let begun = false;
const begin = (event) => {
  if (begun) return;
  begun = true;
  dress();
  document.head.append(make('script', $('#script-of-the-rest').textContent));
  if (event) dispatchEvent(new Event(event.type)); // for those who listen only now
};
document.addEventListener('DOMContentLoaded', () => {
  requestAnimationFrame(() => setTimeout(begin));
  setTimeout(begin, 2000); // a page in the background is not painted
  addEventListener('beforeprint', begin);
});
