// A static host for the built page that, like many, gives it a folder of its own and nothing else.
import { createReadStream } from "node:fs";
import { readFile, readdir, stat } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { brotliCompressSync } from "node:zlib";

export const FOLDER = "/some/sub/path/";

const TYPES = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
};

/**
 * Serves `folder` on a free port: gives its `url`, the `asked` paths in their order, and `close`. For tests that change what
 * the host has: `folders` by their address, and `answer`, which may return `{ status, headers, body }` for a file's name.
 */
export async function serve(folder) {
  const asked = [];
  const host = { asked, folders: new Map([[FOLDER, folder]]), answer: () => undefined };
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url, "http://localhost").pathname);
    asked.push(path);
    const at = [...host.folders.keys()].filter((it) => path.startsWith(it)).toSorted((one, other) => other.length - one.length)[0];
    const name = at === undefined ? "" : normalize(path.slice(at.length) || "index.html");
    const file = join(host.folders.get(at) ?? "", name);
    const { status = 200, headers, body } = host.answer(name) ?? {};
    if (body !== undefined || status !== 200) {
      response.writeHead(status, { "content-type": TYPES[extname(name)] ?? "text/plain", ...headers }).end(body);
      return;
    }
    const found = name && !name.startsWith("..") && (await stat(file).catch(() => null))?.isFile();
    if (!found) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream", ...headers });
    createReadStream(file).pipe(response);
  });
  await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
  return Object.assign(host, {
    url: `http://127.0.0.1:${server.address().port}${FOLDER}`,
    close: () => new Promise((closed) => {
      server.close(closed);
      server.closeAllConnections();
    }),
  });
}

/** For `answer`: the files of `folder` as a careful host has them ready, compressed. */
export async function compressed(folder) {
  const all = new Map();
  for (const it of await readdir(folder, { withFileTypes: true })) {
    if (it.isFile()) all.set(it.name, brotliCompressSync(await readFile(join(folder, it.name))));
  }
  return (name) => all.has(name) ? { headers: { "content-encoding": "br" }, body: all.get(name) } : undefined;
}
