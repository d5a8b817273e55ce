// Saving a file that the program makes when it is asked for.

import { ask, hand, silence } from './transport.js';

let busy = false; // one at a time

// save fetches a row's file and hands it to the browser under its name; onStatus gets how it goes.
export async function save({ save: address, as: name }, onStatus) {
  if (busy) return;
  busy = true;
  onStatus('making the file …');
  try {
    const response = await ask(address);
    if (response.ok) {
      onStatus(await hand(await response.blob(), name));
    } else {
      onStatus((await response.text()).trim());
    }
  } catch {
    onStatus(silence);
  }
  busy = false;
}
