// A layout in an address: as small as it can be made (RFC 1951), in letters that an address may have (RFC 4648, section 5). It stands
// behind the #, which browsers send to nobody.

const most = 4 * 2 ** 20; // bytes, as layouts may have

const through = (bytes, stream) => new Response(bytes).body.pipeThrough(stream);

export async function pack(bytes) {
  const small = new Uint8Array(await new Response(through(bytes, new CompressionStream('deflate-raw'))).arrayBuffer());
  let text = '';
  for (let i = 0; i < small.length; i += 4096) text += String.fromCharCode(...small.subarray(i, i + 4096));
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

// unpack gives the bytes, or throws where it is no such text, or one of too much.
export async function unpack(text) {
  const small = Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (c) => c.charCodeAt(0));
  const reader = through(small, new DecompressionStream('deflate-raw')).getReader(), parts = [];
  let size = 0;
  for (let part; !(part = await reader.read()).done; parts.push(part.value)) {
    if ((size += part.value.length) > most) throw new RangeError('too large');
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}
