// What is printed, of each part: what of it lies folded.
const printed = { today: '.day.here, .trip.here', shop: '#shop', cook: '#cook', session: '.session.here' };
// On paper every stop of what is shown stands open; afterwards the screen is as it was.

let printing = false;
let closed = [];
const watchPrint = () => {
  addEventListener('beforeprint', () => {
    printing = true;
    settle();
    for (const part of printed[root.dataset.view] ? all(printed[root.dataset.view]) : []) unfold(part);
    closed = all('details:not([open])').filter((one) => one.matches('.stop, .made, .past'));
    closed.forEach((one) => (one.open = true));
  });
  addEventListener('afterprint', () => {
    closed.forEach((one) => (one.open = false));
    printing = false;
  });
};
