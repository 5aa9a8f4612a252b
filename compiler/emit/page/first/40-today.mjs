// The day on which the page opens: what is known of it without what is kept.

const days = all('#days .day').map((day) => day.id.slice(1));
const trips = all('#shop .trip').map((trip) => trip.dataset.date);

// The day to open on: the one that is asked for, else today, or the nearest day of the plan.
const nearestDay = (asked = today()) => days.find((day) => day >= asked) ?? days.at(-1) ?? asked;
const dayAsked = () => /^#d?(\d{4}-\d\d-\d\d)(~|$)/.exec(location.hash)?.[1];

// Below the stops of a day of shopping there is nobody yet who reads what else there is to do.
const layDay = (date, whole = true) => {
  for (const day of all('#days .day')) {
    const here = day.id === 'd' + date;
    day.classList.toggle('here', here);
    if (here && (whole || !trips.includes(date))) unfold(day);
  }
  for (const trip of all('#shop .trip')) trip.classList.toggle('here', trip.dataset.date === date);
  root.classList.toggle('trip-day', trips.includes(date));
  const at = days.indexOf(date);
  const way = (to, label, sign) => {
    const link = make('a', sign, 'way');
    if (to) link.href = '#' + to;
    else link.setAttribute('aria-disabled', 'true');
    link.setAttribute('aria-label', label);
    return link;
  };
  const now = today();
  const when = date === now ? '; today' : now > days.at(-1) ? '; the plan is over' : now < days[0] ? '; the plan begins later' : '';
  const head = $('#dayhead');
  head.replaceChildren(dayTitle('h2', date, when), way(days[at - 1], 'The day before', '‹'), way(days[at + 1], 'The day after', '›'));
  if (date !== now && days.includes(now)) {
    const back = make('a', 'Today', 'way today');
    back.href = '#today';
    head.append(back);
  }
};

// The part where one is, in the bar of parts.
const placeOfNav = { session: 'cook', dish: 'cook', labels: 'more', figures: 'more' };
const markPart = (part) => {
  for (const link of all('nav a')) {
    if (link.hash === '#' + (placeOfNav[part] ?? part)) link.setAttribute('aria-current', 'page');
    else link.removeAttribute('aria-current');
  }
};
