// Outlines: convex, clockwise on screen, as x, y, x, y ….

// closed is an outline as path data.
export function closed(points, x, y) {
  let d = '';
  for (let i = 0; i < points.length; i += 2) d += `${d ? 'L' : 'M'}${x + points[i]} ${y + points[i + 1]}`;
  return d + 'Z';
}

// middle is the mean of an outline's corners.
export function middle(points) {
  let x = 0, y = 0;
  for (let i = 0; i < points.length; i += 2) { x += points[i]; y += points[i + 1]; }
  const n = points.length / 2;
  return [Math.round(x / n), Math.round(y / n)];
}

// roomiest is a place well inside a convex outline and its distance to the nearest side.
export function roomiest(p) {
  let x = 0, y = 0;
  for (let i = 0; i < p.length; i += 2) { x += p[i] / (p.length / 2); y += p[i + 1] / (p.length / 2); }
  let best = nearest(p, x, y);
  for (let by = best.room; by > best.room / 64; by *= 0.7) {
    const next = nearest(p, best.x + best.nx * by, best.y + best.ny * by);
    if (next.room > best.room) best = next;
  }
  return best;
}

function nearest(p, x, y) {
  let found = { x, y, room: Infinity, nx: 0, ny: 0 };
  for (let i = 0; i < p.length; i += 2) {
    const j = (i + 2) % p.length, dx = p[j] - p[i], dy = p[j + 1] - p[i + 1], length = Math.hypot(dx, dy);
    const away = (dx * (y - p[i + 1]) - dy * (x - p[i])) / length;
    if (away < found.room) found = { x, y, room: away, nx: -dy / length, ny: dx / length };
  }
  return found;
}
