// How pages talk to the program: here to the server that sent them. Pages that have the program in a worker beside them come with another
// module of this name, which gives the same.

import { download } from './dom.js';

// place tells the layouts apart that a browser shows of one host.
export const place = location.pathname;

// shared says whether all pages of a layout hear one stream of events.
export const shared = true;

// silence is what is said where no answer comes.
export const silence = 'The preview does not answer.';

// ask asks for an address of the page's own, as fetch does.
export const ask = (address, options) => fetch(address, options);

// listen is the stream of events at an address.
export const listen = (address) => new EventSource(address);

// pageOf is where the page is that has an address of the program.
export const pageOf = (address) => address;

// go turns the browser to the page that has an address of the program.
export function go(address) { location.href = address; }

// showPicture shows the picture at an address.
export function showPicture(image, address) { image.src = address; }

// fill shows the page at an address in a frame.
export function fill(frame, address) { frame.src = address; }

// hand hands a file to the browser under its name, and gives how that is said.
export async function hand(blob, name) { return download(blob, name); }

// share is the address that shows others what the page shows, and what else is to be said of it.
export const share = async () => ({ address: location.href, warning: '' });

// kept says whether what was written will be there the next time.
export const kept = () => true;
