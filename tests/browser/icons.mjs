// Draws style/icon.svg as the pictures that the page has: `node tests/browser/icons.mjs` writes style/icon-512.png, which systems
// want of a page that is installed (its ground goes to the edge and the drawing keeps to the middle, since they cut round
// shapes out of it), and style/icon-64.png for the browser's tab. Not the drawing itself: a browser makes a document of one, on
// the thread that lays out the first answer. A few colors and no more: both are shown smaller than they are, which makes their
// edges smooth, and every first visit carries them.
import { readFile, writeFile } from "node:fs/promises";
import { crc32, deflateSync } from "node:zlib";
import { openContext, stop } from "./harness.mjs";

const STYLE = new URL("../../style/", import.meta.url);
const GROUND = [0x24, 0x34, 0x3f];
const LINE = [0xf4, 0xef, 0xe4];

const chunk = (name, data) => {
  const whole = Buffer.concat([Buffer.from(name), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(whole));
  return Buffer.concat([length, whole, sum]);
};

/** A PNG, squared, of so many bits a pixel; each pixel is the place of its color in the palette, the first of which may be clear. */
function png(size, bits, palette, clear, pixels) {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  // Colors from a palette.
  head.set([bits, 3, 0, 0, 0], 8);
  const row = (size * bits) / 8 + 1;
  const packed = Buffer.alloc(row * size);
  pixels.forEach((color, at) => {
    const across = (at % size) * bits;
    packed[Math.floor(at / size) * row + 1 + (across >> 3)] |= color << (8 - bits - (across & 7));
  });
  return Buffer.concat([
    Buffer.from("\x89PNG\r\n\x1a\n", "latin1"),
    chunk("IHDR", head),
    chunk("PLTE", Buffer.from(palette.flat())),
    ...(clear ? [chunk("tRNS", Buffer.from([0]))] : []),
    chunk("IDAT", deflateSync(packed, { level: 9, memLevel: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

const icon = await readFile(new URL("icon.svg", STYLE), "utf8");
const toTheEdge = icon.replace(/ rx="\d+"/, "").replace(/<g /, '<g transform="translate(3.2 3.2) scale(.8)"><g ').replace("</svg>", "</g></svg>");
const page = await (await openContext()).newPage();

/** Red and opacity of each pixel of a drawing. */
const drawn = (svg, size) => page.evaluate(async ([svg, size]) => {
  const image = new Image(size, size);
  image.src = `data:image/svg+xml,${encodeURIComponent(svg.replace("<svg ", `<svg width="${size}" height="${size}" `))}`;
  await image.decode();
  const canvas = new OffscreenCanvas(size, size);
  const pen = canvas.getContext("2d");
  pen.drawImage(image, 0, 0, size, size);
  const { data } = pen.getImageData(0, 0, size, size);
  return Array.from({ length: size * size }, (_, at) => [data[4 * at], data[4 * at + 3]]);
}, [svg, size]);

const isLine = (red) => red > (GROUND[0] + LINE[0]) / 2;
const write = async (name, file) => {
  await writeFile(new URL(name, STYLE), file);
  console.log(`${name}: ${file.length} bytes`);
};
const large = await drawn(toTheEdge, 512);
await write("icon-512.png", png(512, 1, [GROUND, LINE], false, large.map(([red]) => (isLine(red) ? 1 : 0))));
const small = await drawn(icon, 64);
await write("icon-64.png", png(64, 2, [GROUND, GROUND, LINE], true, small.map(([red, opacity]) => (opacity < 128 ? 0 : isLine(red) ? 2 : 1))));
await page.context().close();
await stop();
