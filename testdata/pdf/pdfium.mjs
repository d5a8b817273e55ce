// Draws pages with PDFium. Jobs come as JSON on the standard input, pages counted from 1, pictures go as PGM, gray:
// [{"pdf": "in.pdf", "page": 1, "perInch": 300, "pgm": "out.pgm"}, …]
import { readFileSync, writeFileSync } from "node:fs";
import { PDFiumLibrary } from "@hyzyla/pdfium";

const library = await PDFiumLibrary.init();
for (const job of JSON.parse(readFileSync(0, "utf8"))) {
  const file = await library.loadDocument(readFileSync(job.pdf));
  const { data, width, height } = await file.getPage(job.page - 1).render({ scale: job.perInch / 72, render: "bitmap" });
  const gray = Buffer.alloc(width * height);
  for (let i = 0; i < gray.length; i++) gray[i] = (data[4 * i] + data[4 * i + 1] + data[4 * i + 2]) / 3;
  writeFileSync(job.pgm, Buffer.concat([Buffer.from(`P5 ${width} ${height} 255\n`), gray]));
  file.destroy();
}
library.destroy();
