// Outlines: convex, clockwise on screen, as x, y, x, y ….

// pathData is an outline as SVG path data.
export function pathData(points, x, y) {
  let d = '';
  for (let i = 0; i < points.length; i += 2) d += `${d ? 'L' : 'M'}${x + points[i]} ${y + points[i + 1]}`;
  return d + 'Z';
}

// centroid is the mean of an outline's corners.
export function centroid(points) {
  let x = 0, y = 0;
  for (let i = 0; i < points.length; i += 2) { x += points[i]; y += points[i + 1]; }
  const n = points.length / 2;
  return [Math.round(x / n), Math.round(y / n)];
}

// inscribedCircle is a large circle within a convex outline, by steps away from the nearest side.
export function inscribedCircle(p) {
  let x = 0, y = 0;
  for (let i = 0; i < p.length; i += 2) { x += p[i] / (p.length / 2); y += p[i + 1] / (p.length / 2); }
  let best = nearestSide(p, x, y);
  for (let by = best.radius; by > best.radius / 64; by *= 0.7) {
    const next = nearestSide(p, best.x + best.nx * by, best.y + best.ny * by);
    if (next.radius > best.radius) best = next;
  }
  return best;
}

// nearestSide is a place with its distance to the nearest side and the way from that.
function nearestSide(p, x, y) {
  let found = { x, y, radius: Infinity, nx: 0, ny: 0 };
  for (let i = 0; i < p.length; i += 2) {
    const j = (i + 2) % p.length, dx = p[j] - p[i], dy = p[j + 1] - p[i + 1], length = Math.hypot(dx, dy);
    const distance = (dx * (y - p[i + 1]) - dy * (x - p[i])) / length;
    if (distance < found.radius) found = { x, y, radius: distance, nx: -dy / length, ny: dx / length };
  }
  return found;
}
