// The second phone: a link, a square code, or a few letters carry the ticks to it, and both agree line
// by line on what was changed last.
import { handOver, takeOver } from './20-code.mjs';

const linkWithTicks = () => `${location.href.split('#')[0]}#today~${handOver(stops, state.ticks, today())}`;

let received = '';
const receive = (code) => {
  if (code === received || code === '') return;
  received = code;
  try {
    const { ticks, strange } = takeOver(stops, code);
    const news = takeIn(ticks);
    if (news) {
      renderAll();
      tellOf(`${news} ${news === 1 ? 'line' : 'lines'} updated from the link.`);
    }
    if (strange && !Object.keys(state.ticks).length) tellOf('Some ticks in the link belong to a different version of the list and were left out.');
    return news;
  } catch {
    tellOf('The ticks in this address cannot be read; those on this phone stay as they are.');
  }
  return null;
};
const tellOf = (words) => {
  say(words);
  const old = $('.told');
  old?.remove();
  const note = make('p', words + ' ', 'told');
  note.append(button('OK', () => note.remove(), '', 'OK; close this message'));
  $('main').prepend(note);
};

// The library comes with the page as text, and becomes a script when a square is asked for.
const squareOf = (words) => {
  if (!globalThis.qrcode) document.head.append(make('script', $('#qr').textContent));
  const code = globalThis.qrcode(0, 'L');
  code.addData(words);
  code.make();
  const size = code.getModuleCount();
  let path = '';
  for (let y = 0; y < size; y++) for (let x = 0; x < size; x++) if (code.isDark(y, x)) path += `M${x + 4} ${y + 4}h1v1h-1z`;
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  svg.setAttribute('viewBox', `0 0 ${size + 8} ${size + 8}`);
  svg.setAttribute('class', 'square');
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', 'The link as a QR code');
  const white = document.createElementNS(svg.namespaceURI, 'rect');
  white.setAttribute('width', '100%');
  white.setAttribute('height', '100%');
  white.setAttribute('fill', '#fff');
  const dark = document.createElementNS(svg.namespaceURI, 'path');
  dark.setAttribute('d', path);
  dark.setAttribute('fill', '#000');
  svg.append(white, dark);
  return svg;
};

const showMore = () => {
  let hand = $('#more .hand');
  if (!hand) {
    hand = make('section', '', 'hand');
    $('#more h2').after(hand);
  }
  const link = linkWithTicks();
  const square = make('div', '', 'square-place');
  const buttons = make('p', '', 'buttons', button('Copy the link', () => copy(link), 'strong'));
  if (navigator.share) buttons.append(button('Share', () => navigator.share({ title: data.plan, url: link }).catch(() => {})));
  buttons.append(button('Show as a QR code', () => square.replaceChildren(square.firstChild ? '' : squareOf(link))));
  buttons.append(button('Copy only the ticks', () => copy(link.split('~')[1])));
  const paste = field('A link or ticks from another phone', '', (value, input) => {
    const code = value.split('~').at(-1).trim();
    received = '';
    if (code && receive(code) !== null) {
      input.value = '';
      if (!$('.told')) tellOf('Nothing new: both phones already agree.');
    }
  });
  hand.replaceChildren(
    make('h3', 'Shop on two phones'),
    make('p', 'Open this month’s page on each phone. The link carries what is ticked; the latest change to each line counts. A page opened from a file has no address that another phone can open; in that case, paste the ticks below.'),
    buttons, square, paste);
  let other = $('#more .other');
  if (!other) {
    other = make('section', '', 'other');
    $('#more').append(other);
    other.append(
      make('h3', 'Start again'),
      make('p', '', '', button('Clear all ticks', () => {
        if (confirm('Clear all ticks and put back everything marked "Not here"?')) {
          // Taken off, not forgotten: the other phone takes them off as well.
          for (const [key, r] of Object.entries(state.ticks)) state.ticks[key] = { t: Math.max(minuteNow(), r.t + 1), f: 0, m: 0 };
          state.done = {};
          undone.length = 0;
          keep();
          mirrorNow();
          renderAll();
          for (const box of all('.day input, .session input')) {
            box.checked = false;
            setDone(box);
          }
        }
      }, 'clear')));
  }
};
