// Draws style/icon.svg as the picture that systems want of a page that is installed: `node tests/browser/icons.mjs` writes
// style/icon-512.png. Its ground goes to the edge and the drawing keeps to the middle, since they cut round shapes out of it.
// Two colors and no more: it is shown smaller than it is, which makes its edges smooth, and every first visit carries it.
import { readFile, writeFile } from "node:fs/promises";
import { crc32, deflateSync } from "node:zlib";
import { openContext, stop } from "./harness.mjs";

const STYLE = new URL("../../style/", import.meta.url);
const GROUND = [0x24, 0x34, 0x3f];
const LINE = [0xf4, 0xef, 0xe4];
const SIZE = 512;

const chunk = (name, data) => {
  const whole = Buffer.concat([Buffer.from(name), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(whole));
  return Buffer.concat([length, whole, sum]);
};

/** A PNG, squared, of pixels that are `LINE` or else `GROUND`. */
function png(lines) {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(SIZE, 0);
  head.writeUInt32BE(SIZE, 4);
  // One bit a pixel, colors from a palette.
  head.set([1, 3, 0, 0, 0], 8);
  const row = SIZE / 8 + 1;
  const pixels = Buffer.alloc(row * SIZE);
  lines.forEach((is, at) => {
    const across = at % SIZE;
    if (is) pixels[Math.floor(at / SIZE) * row + 1 + (across >> 3)] |= 128 >> (across & 7);
  });
  return Buffer.concat([
    Buffer.from("\x89PNG\r\n\x1a\n", "latin1"),
    chunk("IHDR", head),
    chunk("PLTE", Buffer.from([...GROUND, ...LINE])),
    chunk("IDAT", deflateSync(pixels, { level: 9, memLevel: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

const icon = await readFile(new URL("icon.svg", STYLE), "utf8");
const drawn = icon.replace(/ rx="\d+"/, "").replace(/<g /, '<g transform="translate(3.2 3.2) scale(.8)"><g ').replace("</svg>", "</g></svg>");
const page = await (await openContext()).newPage();
const red = await page.evaluate(async ([svg, size]) => {
  const image = new Image(size, size);
  image.src = `data:image/svg+xml,${encodeURIComponent(svg.replace("<svg ", `<svg width="${size}" height="${size}" `))}`;
  await image.decode();
  const canvas = new OffscreenCanvas(size, size);
  const pen = canvas.getContext("2d");
  pen.drawImage(image, 0, 0, size, size);
  return [...pen.getImageData(0, 0, size, size).data].filter((_, at) => at % 4 === 0);
}, [drawn, SIZE]);
const file = png(red.map((it) => it > (GROUND[0] + LINE[0]) / 2));
await writeFile(new URL(`icon-${SIZE}.png`, STYLE), file);
console.log(`icon-${SIZE}.png: ${file.length} bytes`);
await page.context().close();
await stop();
