// Days in words.

const isoDate = (date) =>
  `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, '0')}-${String(date.getDate()).padStart(2, '0')}`;
// A day's words. The browser has them as well, and takes a tenth of a second to load its table.
const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
const wordsOf = (date) => {
  const when = new Date(date + 'T12:00');
  return { day: when.getDate(), weekday: weekdays[when.getDay()], month: months[when.getMonth()] };
};
// The number of a day hangs before its words.
const dayTitle = (tag, date, more = '') => {
  const { day, weekday, month } = wordsOf(date);
  return make(tag, '', '', make('b', String(day), 'num'), ' ', make('span', weekday, '', ' ', make('small', month + more)));
};
// The day that it is, by the clock of whoever looks.
const today = () => isoDate(new Date());
