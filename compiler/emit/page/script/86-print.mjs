// On paper every stop of what is shown stands open; afterwards the screen is as it was.

let printing = false;
let closed = [];
const watchPrint = () => {
  addEventListener('beforeprint', () => {
    printing = true;
    closed = all('details:not([open])').filter((one) => one.matches('.stop, .made, .past'));
    closed.forEach((one) => (one.open = true));
  });
  addEventListener('afterprint', () => {
    closed.forEach((one) => (one.open = false));
    printing = false;
  });
};
