// What is seen at once stands before anything else is read: the day, and where to shop. The rest of the
// script begins once that is painted, and so does the style of what is not seen at first.

const dress = () => {
  const fold = $('#style-of-the-rest');
  if (fold) fold.outerHTML = fold.textContent;
};

$('nav a').hash = 'today'; // without the script it leads to all days
if (root.dataset.view === 'today') layDay(nearestDay(dayAsked()), false);
else dress();
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
