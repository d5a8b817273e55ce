// The state of the page as its address says it, behind the #: the view, what it is compared with, the report, and the place.
// Who opens such an address sees the same, in a window of any size.

import { views, viewName } from './views.js';
import { kinds, untried } from './audition.js';

const named = Object.fromEntries(Object.keys(views).map((view) => [viewName(view), view]));

// unlinked is what an address that says nothing stands for.
export const unlinked = () => ({ view: 'colour', secondView: 'value', seamsIn: ['colour'], compare: '', split: 50, tab: -1, place: null, colorway: null, secondColorway: null, size: null, audition: untried() });

// tabName is how a report is called in an address.
const tabName = (tab) => tab.textContent.trim().toLowerCase().replaceAll(' ', '-');

// encode writes a state: a place is { u, v, zoom }, null for the whole quilt, and the tab -1 where no report is open.
export function encode({ view, secondView, seamsIn, compare, split, tab, place, colorway, secondColorway, size, audition }, tabs) {
  const parts = [], plain = unlinked(), short = (v) => String(Math.round(v * 1000) / 1000);
  const say = (key, value) => parts.push(`${key}=${value}`);
  if (view !== plain.view) say('view', viewName(view));
  if (colorway !== null) say('colorway', encodeURIComponent(colorway));
  if (size !== null) say('size', encodeURIComponent(size));
  if (String(seamsIn) !== String(plain.seamsIn)) say('seams', seamsIn.map(viewName).join(','));
  if (compare) say('compare', compare);
  if (compare) say('with', viewName(secondView));
  if (compare && secondColorway !== null) say('with-colorway', encodeURIComponent(secondColorway));
  if (compare === 'slide' && split !== plain.split) say('split', short(split));
  if (tab >= 0 && tabs[tab]) say('report', encodeURIComponent(tabName(tabs[tab])));
  if (audition?.place) sayAudition(audition, say);
  if (place) say('at', `${short(place.u)},${short(place.v)}`);
  if (place) say('zoom', short(place.zoom));
  return parts.join('&');
}

function sayAudition({ place, among, picked, best, large }, say) {
  say('audition', encodeURIComponent(place));
  if (among !== 'fabrics') say('among', among);
  for (const text of picked ?? []) say('of', encodeURIComponent(text));
  if (best) say('order', 'best');
  if (large !== null) say('large', encodeURIComponent(large));
}

function auditionOf(said) {
  const state = untried();
  state.place = said.get('audition') ?? '';
  if (Object.hasOwn(kinds, said.get('among'))) state.among = said.get('among');
  if (said.has('of')) state.picked = said.getAll('of');
  state.best = said.get('order') === 'best';
  state.large = said.get('large');
  return state;
}

// decode reads what encode wrote; what it does not know stands as if it were not there.
export function decode(text, tabs) {
  const state = unlinked(), said = new URLSearchParams(text);
  const viewOf = (name) => Object.hasOwn(named, name) ? named[name] : undefined;
  state.view = viewOf(said.get('view')) ?? state.view;
  state.secondView = viewOf(said.get('with')) ?? state.secondView;
  if (said.has('seams')) state.seamsIn = said.get('seams').split(',').map(viewOf).filter(Boolean);
  if (['beside', 'slide'].includes(said.get('compare'))) state.compare = said.get('compare');
  state.colorway = said.get('colorway'); // null where there is none
  state.size = said.get('size');
  state.secondColorway = said.get('with-colorway');
  state.audition = auditionOf(said);
  const split = parseFloat(said.get('split'));
  if (split >= 0 && split <= 100) state.split = split;
  if (said.has('report')) state.tab = [...tabs].findIndex((tab) => tabName(tab) === said.get('report'));
  const [u, v] = (said.get('at') ?? '').split(',').map(parseFloat), zoom = parseFloat(said.get('zoom'));
  if ([u, v, zoom].every(Number.isFinite) && zoom > 0) state.place = { u, v, zoom };
  return state;
}

// History writes states into the address. Another view, comparison or report is a step that the browser goes back over; a
// move of the picture is none.
export class History {
  // onChange gets the text of an address that the browser went to.
  constructor(onChange) {
    this.step = null;
    addEventListener('popstate', () => { this.step = null; onChange(this.text); });
  }

  get text() { return location.hash.replace(/^#/, ''); }

  write(text) {
    const said = new URLSearchParams(text), step = ['view', 'colorway', 'size', 'compare', 'with', 'with-colorway', 'report', 'audition'].map((key) => said.get(key)).join();
    if (text !== this.text) {
      const address = location.pathname + location.search + (text && `#${text}`);
      if (this.step === null || step === this.step) history.replaceState(null, '', address);
      else history.pushState(null, '', address);
    }
    this.step = step;
  }
}
