// Labels: so many across and down on a sheet.

const arrangeLabels = () => {
  const form = $('form.grid');
  const labels = all('.label');
  const paper = form.paper.value === 'letter' ? 'letter' : 'A4';
  const between = (value, input) =>
    Math.min(Number(input.max), Math.max(Number(input.min), Math.round(value) || Number(input.defaultValue)));
  const cols = between(Number(form.cols.value), form.cols);
  const rows = between(Number(form.rows.value), form.rows);
  const [width, height] = paper === 'A4' ? [210, 297] : [215.9, 279.4];
  $('#paper').textContent = `@page labels { size: ${paper}; margin: 0 }`;
  const sheets = [];
  for (let i = 0; i < labels.length; i += cols * rows) {
    const sheet = make('div', '', 'paper');
    const cell = (height - 20) / rows;
    sheet.style.cssText = `--w:${width}mm;--h:${height}mm;--cols:${cols};--rows:${rows};--cell:${cell}mm;--across:${(width - 14) / cols}mm`;
    sheet.append(...labels.slice(i, i + cols * rows));
    sheets.push(sheet);
  }
  $('.labels').replaceChildren(...sheets);
  $('#sheets').textContent = `${sheets.length} ${sheets.length === 1 ? 'sheet' : 'sheets'} of ${cols * rows}`;
  state.paper = { paper, cols, rows };
};
const furnishLabels = () => {
  document.head.append(Object.assign(make('style'), { id: 'paper' }));
  const form = $('form.grid');
  if (state.paper.paper) {
    form.paper.value = state.paper.paper;
    form.cols.value = state.paper.cols;
    form.rows.value = state.paper.rows;
  }
  form.addEventListener('change', () => {
    arrangeLabels();
    keep();
  });
  form.addEventListener('submit', (event) => event.preventDefault());
  arrangeLabels();
};
