// The words beside the picture: patch, fabrics, faults, title.

export const byId = (id) => document.getElementById(id);

export function make(name, text, attributes = {}) {
  const e = document.createElement(name);
  if (text !== undefined) e.textContent = text;
  for (const [key, value] of Object.entries(attributes)) e.setAttribute(key, value);
  return e;
}

export function swatch(colour) {
  const e = make('span', undefined, { class: 'swatch', 'aria-hidden': 'true' });
  e.style.setProperty('--cloth', colour);
  return e;
}

// showPatch tells what a patch is; null clears it.
export function showPatch(known, pinned) {
  const box = byId('patch');
  box.classList.toggle('pinned', pinned);
  if (!known) {
    box.replaceChildren(make('p', 'Point at a patch to see what it is. A click holds it.', { class: 'hint' }));
    return;
  }
  const list = make('dl');
  const row = (term, ...what) => {
    const d = make('dd');
    d.append(...what);
    list.append(make('dt', term), d);
  };
  const title = make('h2', known.shape);
  if (pinned) title.append(make('span', 'held', { class: 'held' }));
  for (const f of known.fabrics) {
    row(known.fabrics.length > 1 ? 'strip' : 'fabric', swatch(f.colour), f.name + (f.print ? `, ${f.print}` : ''));
  }
  row('value', known.fabrics.map((f) => f.value.toFixed(0)).join(', '));
  row('role', known.role);
  row('finished', known.finished);
  row('cut', known.cut);
  if (known.block) row('block', known.block);
  row('place', known.place);
  row('layout', known.row && known.row !== known.line ? `line ${known.line}, grid row in line ${known.row}` : `line ${known.line}`);
  box.replaceChildren(title, list);
}

// spoken is the same in one sentence.
export function spoken(known) {
  const fabrics = known.fabrics.map((f) => `${f.name}, value ${f.value.toFixed(0)}`).join('; ');
  return `${known.shape}, ${fabrics}, ${known.role}, ${known.place}, finished ${known.finished}, line ${known.line}`;
}

// showFabrics lists the fabrics by value; alone is told of the one that is singled out.
export function showFabrics(fabrics, chosen, alone) {
  const order = fabrics.map((f, i) => ({ ...f, i })).filter((f) => f.share > 0).sort((a, b) => b.value - a.value || a.i - b.i);
  const rows = order.map((f) => {
    const item = make('li'), button = make('button', undefined, { 'aria-pressed': String(f.i === chosen), title: `line ${f.line}: show where it is` });
    const name = make('span', undefined, { class: 'name' });
    name.append(make('b', f.name));
    if (f.print) name.append(make('i', f.print));
    const share = make('span', `${f.share.toFixed(1)} %`, { class: 'share' });
    const bar = make('span', undefined, { class: 'bar', 'aria-hidden': 'true' });
    bar.style.width = `${f.share}%`;
    button.append(swatch(f.colour), name, make('span', f.value.toFixed(0), { class: 'value', title: 'value' }), share, bar);
    button.addEventListener('click', () => alone(f.i));
    item.append(button);
    return item;
  });
  byId('fabrics').replaceChildren(...rows);
}

// showFaults shows faults and problems over the picture, as the terminal does.
export function showFaults(m, folded) {
  const list = m.faults.map((f) => faultBox(f));
  if (m.more) list.push(make('p', `and ${m.more} more`));
  if (m.problem) list.unshift(make('pre', m.inside ? `Something broke inside eighthturn. Please report it with the layout.\n${m.problem}` : sentence(m.problem)));
  const box = byId('faults');
  box.hidden = list.length === 0;
  box.classList.toggle('stops', m.errors > 0 || m.problem !== '');
  const title = byId('faults-title');
  title.setAttribute('aria-expanded', String(!folded));
  const since = m.picture && m.picture !== m.revision && (m.errors || m.problem) ? '. The picture is from before' : '';
  title.textContent = heading(m) + since;
  byId('faults-list').hidden = folded;
  byId('faults-list').replaceChildren(...list);
}

function sentence(text) { return text.charAt(0).toUpperCase() + text.slice(1) + '.'; }

export function heading(m) {
  const some = (n, word) => n === 0 ? '' : n === 1 ? `1 ${word}` : `${n} ${word}s`;
  if (m.inside) return 'Internal fault';
  if (m.problem) return 'No layout';
  return [some(m.errors, 'error'), some(m.warnings, 'warning')].filter(Boolean).join(', ');
}

// faultBox marks the lines of one fault: what is wrong, the source, the carets with the hint.
function faultBox(f) {
  const pre = make('pre', undefined, { class: f.severity });
  f.text.trimEnd().split('\n').forEach((line, i) => {
    if (i > 0) pre.append('\n');
    const kind = /^ *\d+ \| /.test(line) ? 'source' : /^ *\| /.test(line) ? 'carets' : 'says';
    pre.append(make('span', line, { class: kind }));
  });
  return pre;
}

// showTitle tells other windows how things stand.
export function showTitle(m, sheet, line) {
  const name = sheet?.title ? `${sheet.title} · ${m.file}` : m.file;
  const stops = m.errors > 0 || m.problem !== '';
  const before = line !== 'open' ? '… ' : stops ? `✕ ${heading(m)} · ` : '';
  document.title = before + name;
  byId('title').textContent = sheet?.title || m.file;
  byId('facts').textContent = sheet ? [sheet.size, sheet.blocks, `${sheet.patches} patches`, sheet.title ? m.file : ''].filter(Boolean).join(' · ') : '';
  const icon = line !== 'open' ? '/mark-away.svg' : stops ? '/mark-fault.svg' : '/mark.svg';
  if (byId('icon').getAttribute('href') !== icon) byId('icon').setAttribute('href', icon);
}

const states = {
  open: '', lost: 'The preview does not answer. The picture may be old; trying again.',
  refused: 'The preview asks for its key. Open the address that the terminal shows now.',
};

export function showLine(line) {
  const text = states[line] ?? line;
  if (byId('link').textContent !== text) byId('link').textContent = text;
}

const keys = [
  ['c v l', 'colour, value, line'], ['u a', 'squint, seams that vanish'], ['p d t', 'as protan, deutan, tritan eyes see it'],
  ['shift with these', 'the view on the right'], ['s', 'seams'], ['b', 'both views, side by side'],
  ['r', 'reports; there ↑ ↓ go from row to row, ← → from tab to tab'],
  ['+ −', 'nearer, farther, at the pointer'], ['w 0', 'whole quilt'], ['arrows', 'from patch to patch'],
  ['shift with arrows', 'move the quilt'], ['Enter', 'hold the patch, or the row'], ['Esc', 'let go'], ['n', 'flash what the last save changed'],
  ['f', 'fold the faults away'], ['k', 'these keys'],
];

export function showKeys(on) {
  const box = byId('keys');
  box.hidden = !on;
  if (!on) return;
  const list = make('dl');
  for (const [key, what] of keys) list.append(make('dt', key), make('dd', what));
  box.replaceChildren(list);
}
