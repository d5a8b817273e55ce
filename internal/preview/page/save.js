// Saving a file that the program makes when it is asked for.

let busy = false; // one at a time

// save fetches a row's file and hands it to the browser under its name; onStatus gets how it goes.
export async function save({ save: address, as: name }, onStatus) {
  if (busy) return;
  busy = true;
  onStatus('making the file …');
  try {
    const response = await fetch(address);
    if (response.ok) {
      download(await response.blob(), name);
      onStatus(`saved as ${name}`);
    } else {
      onStatus((await response.text()).trim());
    }
  } catch {
    onStatus('The preview does not answer.');
  }
  busy = false;
}

function download(blob, name) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
