// Colors as lightness, chroma and hue: CIELAB under D65 (CIE 15:2004) with the white of sRGB (IEC 61966-2-1), as the program
// has them. Lightness is the value of a fabric.

// XYZ of linear sRGB, each divided by the white's (CSS Color 4, section 18).
const toXYZ = [
  [506752 / 1228815, 87881 / 245763, 12673 / 70218],
  [87098 / 409605, 175762 / 245763, 12673 / 175545],
  [7918 / 409605, 87881 / 737289, 1001167 / 1053270],
].map((row) => { const white = row[0] + row[1] + row[2]; return [row[0] / white, row[1] / white, row[2] / white, white]; });
const white = toXYZ.map((row) => row[3]);
const fromXYZ = [
  [12831 / 3959, -329 / 214, -1974 / 3959],
  [-851781 / 878810, 1648619 / 878810, 36519 / 878810],
  [705 / 12673, -2585 / 12673, 705 / 667],
];

const epsilon = 216 / 24389, kappa = 24389 / 27;
const bend = (t) => t > epsilon ? Math.cbrt(t) : (kappa * t + 16) / 116;
const unbend = (f) => f ** 3 > epsilon ? f ** 3 : (116 * f - 16) / kappa;
const decode = (v) => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
const encode = (v) => v <= 0.0031308 ? v * 12.92 : 1.055 * v ** (1 / 2.4) - 0.055;
const slack = 3e-5; // how far linear light may leave 0 to 1 and still be inside

// bytes are the three channels of a color as #rrggbb, 0 to 255.
export const bytes = (hex) => [1, 3, 5].map((i) => parseInt(hex.slice(i, i + 2), 16));

// lchOf is a color as #rrggbb: its lightness, 0 to 100, its chroma, and its hue in degrees, 0 or more and below 360.
export function lchOf(hex) {
  const linear = bytes(hex).map((v) => decode(v / 255));
  const [x, y, z] = toXYZ.map((row) => bend(row[0] * linear[0] + row[1] * linear[1] + row[2] * linear[2]));
  const a = 500 * (x - y), b = 200 * (y - z);
  return { l: 116 * y - 16, c: Math.hypot(a, b), h: (Math.atan2(b, a) * 180 / Math.PI + 360) % 360 };
}

function linearOf(l, c, h) {
  const y = (l + 16) / 116, x = y + c * Math.cos(h * Math.PI / 180) / 500, z = y - c * Math.sin(h * Math.PI / 180) / 200;
  const xyz = [x, y, z].map((f, i) => unbend(f) * white[i]);
  return fromXYZ.map((row) => row[0] * xyz[0] + row[1] * xyz[1] + row[2] * xyz[2]);
}

const isThere = (l, c, h) => linearOf(l, c, h).every((v) => v >= -slack && v <= 1 + slack);

// reach is the greatest chroma that sRGB has at a lightness and a hue.
export function reach(l, h) {
  let inside = 0, outside = 140;
  while (outside - inside > 0.05) {
    const c = (inside + outside) / 2;
    if (isThere(l, c, h)) inside = c;
    else outside = c;
  }
  return inside;
}

// rgbAt is the color of a lightness, a chroma and a hue as three channels, 0 to 255. It must be within reach.
export function rgbAt(l, c, h) {
  return linearOf(l, c, h).map((v) => Math.round(Math.min(1, Math.max(0, encode(v))) * 255));
}

const hexOf = (rgb) => `#${rgb.map((v) => v.toString(16).padStart(2, '0')).join('')}`;

// hexAt is the color of a lightness and a hue, of a chroma as far as sRGB reaches.
export function hexAt(l, c, h) { return hexOf(rgbAt(l, isThere(l, c, h) ? c : Math.min(c, reach(l, h)), h)); }

// grayOf is the gray of the same lightness.
export function grayOf(hex) { return hexOf(rgbAt(lchOf(hex).l, 0, 0)); }
