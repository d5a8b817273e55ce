// How things stand: faults over the picture, the title, the connection.

import { byId, make, say } from './dom.js';
import { copyText } from './copy.js';
import { silence } from './transport.js';
import { lineActions } from './line.js';

// isBlocking says whether a message has errors, so that its picture is not the newest text's.
export const isBlocking = (m) => m.errors > 0 || m.problem !== '';

// showFaults shows faults and problems as the terminal does: in the picture's corner, or in its place.
// Fix writes what the hint of a fault says to type, by the fault's number; null where the page may not write.
export function showFaults(m, folded, hasPicture, fix) {
  document.body.classList.toggle('no-picture', !hasPicture);
  document.body.classList.toggle('errors-only', !hasPicture && isBlocking(m));
  const list = m.faults.map((f, i) => faultBox(f, fix && (() => fix(i))));
  if (m.more) list.push(make('p', `and ${m.more} more`));
  if (m.problem) list.unshift(make('pre', m.inside ? `Something broke inside eighthturn. Please report it with the layout.\n${m.problem}` : sentence(m.problem)));
  const box = byId('faults');
  box.hidden = list.length === 0;
  box.classList.toggle('blocking', isBlocking(m));
  const title = byId('faults-title');
  title.setAttribute('aria-expanded', String(!folded));
  const since = m.picture && m.picture !== m.revision && (m.errors || m.problem) ? '. This is the last good picture' : '';
  say(title.firstElementChild, heading(m) + since);
  byId('faults-list').hidden = folded;
  byId('faults-list').replaceChildren(...list);
}

function sentence(text) { return text.charAt(0).toUpperCase() + text.slice(1) + '.'; }

function heading(m) {
  const count = (n, word) => n === 0 ? '' : n === 1 ? `1 ${word}` : `${n} ${word}s`;
  if (m.inside) return 'Internal error';
  if (m.problem) return 'No layout';
  return [count(m.errors, 'error'), count(m.warnings, 'warning')].filter(Boolean).join(', ');
}

// faultBox marks the lines of one fault: what is wrong, the source, the carets with the hint. Where the hint says what to type, a
// button does it, or copies the lines with it.
function faultBox(f, fix) {
  const pre = make('pre', undefined, { class: f.severity });
  pre.append(...f.text.trimEnd().split(/(?<=\n)/).flatMap(faultLine));
  const box = make('div', undefined, { class: 'fault' });
  const actions = lineActions(f.line, () => f.text.trimEnd(), 'Copy message', 'Message');
  if (f.fix) {
    const lines = f.fix.map((l) => l.text).join('\n');
    const button = make('button', fix ? 'Apply' : f.fix.length > 1 ? 'Copy new lines' : 'Copy new line', { title: lines, class: 'fix' });
    button.addEventListener('click', fix ?? (() => copyText(lines, f.fix.length > 1 ? 'Lines' : 'Line')));
    actions.prepend(button);
  }
  box.append(pre, actions);
  return box;
}

// faultLine is one line of a fault in its parts: what is wrong and the hint are sentences, the layout's line and the carets are not.
function faultLine(line) {
  const part = (text, name) => make('span', text, { class: name });
  if (/^ *\d+ \| /.test(line)) return [part(line, 'source')];
  const [, carets, hint] = /^( *\|[ ^]*)(.*\n?)$/.exec(line) ?? [];
  if (carets) return [part(carets, 'carets'), part(hint, 'hint')];
  const [, at, said] = /^(.*?:\d+:\d+: )(.*\n?)$/.exec(line) ?? [, '', line];
  const message = part('', 'message');
  message.append(part(at, 'at'), said);
  return [message];
}

// showTitle says in the window's title and icon how things stand. On the page itself the colorway stands beside the quilt's title.
export function showTitle(m, { quilt, title, plainTitle }, status) {
  const name = title ? `${title} · ${m.file}` : m.file;
  const blocking = isBlocking(m);
  const prefix = status !== 'open' ? '… ' : blocking ? `✕ ${heading(m)} · ` : '';
  document.title = prefix + name;
  say(byId('title'), plainTitle || m.file);
  const facts = quilt ? [quilt.size, quilt.blocks, `${quilt.patches} patches`, title ? m.file : ''].filter(Boolean) : [];
  if (byId('facts').title !== facts.join(' · ')) {
    byId('facts').title = facts.join(' · ');
    byId('facts').replaceChildren(...facts.flatMap((fact, i) => [i ? ' ' : '', make('span', i ? `· ${fact}` : fact)]));
  }
  const icon = status !== 'open' ? 'icon-disconnected.svg' : blocking ? 'icon-fault.svg' : 'icon.svg';
  if (byId('icon').getAttribute('href') !== icon) byId('icon').setAttribute('href', icon);
}

const statusTexts = {
  open: '', lost: `${silence} The picture may be out of date; trying again.`,
  refused: 'The preview asks for its key. Open the address that the terminal shows now.',
};

// showConnection says whether the program is heard; any other status is the text itself.
export function showConnection(status) {
  const text = statusTexts[status] ?? status;
  if (byId('connection').textContent !== text) byId('connection').textContent = text;
}
