// Draws pictures with resvg. Jobs come as JSON on the standard input:
// [{"svg": "in.svg", "png": "out.png", "zoom": 1.5, "background": "#ff00ff"}, …]
import { readFileSync, writeFileSync } from "node:fs";
import { Resvg } from "@resvg/resvg-js";

for (const job of JSON.parse(readFileSync(0, "utf8"))) {
  const picture = new Resvg(readFileSync(job.svg), {
    fitTo: { mode: "zoom", value: job.zoom },
    background: job.background,
    font: { loadSystemFonts: false },
  });
  writeFileSync(job.png, picture.render().asPng());
}
