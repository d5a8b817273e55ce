// Saving a file that the program makes when it is asked for.

let busy = false; // one at a time

// save fetches a row's file and hands it to the browser under its name; tell says how it goes.
export async function save({ save: address, as }, tell) {
  if (busy) return;
  busy = true;
  tell('making it …');
  try {
    const answer = await fetch(address);
    if (answer.ok) {
      hand(await answer.blob(), as);
      tell(`saved as ${as}`);
    } else {
      tell((await answer.text()).trim());
    }
  } catch {
    tell('The preview does not answer.');
  }
  busy = false;
}

function hand(blob, as) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = as;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
