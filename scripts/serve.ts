import { createReadStream } from "node:fs";
import { realpath, stat } from "node:fs/promises";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { extname, join, sep } from "node:path";
import type { AddressInfo } from "node:net";

/** A server of the page's static files, for this machine only. */
export interface PageServer {
  /** `http://127.0.0.1:8640/` */
  readonly address: string;
  readonly close: () => Promise<void>;
}

const types: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".csv": "text/csv; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
};

const policy = [
  "default-src 'self'",
  "style-src 'self' 'unsafe-inline'", // the charts write styles
  "img-src 'self' data: blob:",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join("; ");

/**
 * Serves a folder on 127.0.0.1.
 *
 * @param wantedPort taken when it is free, otherwise any that is; what the browser keeps belongs to the port, so the same one
 * from start to start keeps the user's work. 0 = any.
 */
export async function servePage(folder: string, wantedPort = 0): Promise<PageServer> {
  const root = await realpath(folder);
  const server = createServer((request, response) => {
    answer(root, request, response).catch(() => {
      if (!response.headersSent) response.writeHead(500, plainHeaders);
      response.end("a fault of ours\n");
    });
  });
  await listen(server, wantedPort).catch((error: NodeJS.ErrnoException) => {
    if (wantedPort === 0 || (error.code !== "EADDRINUSE" && error.code !== "EACCES")) throw error;
    return listen(server, 0);
  });
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}/`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}

const commonHeaders = {
  "Content-Security-Policy": policy,
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
};
const plainHeaders = { ...commonHeaders, "Content-Type": "text/plain; charset=utf-8" };

async function answer(root: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  if (request.method !== "GET" && request.method !== "HEAD") {
    response.writeHead(405, { ...plainHeaders, Allow: "GET, HEAD" }).end("only GET\n");
    return;
  }
  const file = await fileFor(root, request.url ?? "/");
  if (file === null) {
    response.writeHead(404, plainHeaders).end("not here\n");
    return;
  }
  const hashed = file.path.startsWith(join(root, "assets") + sep);
  response.writeHead(200, {
    ...commonHeaders,
    "Content-Type": types[extname(file.path)] ?? "application/octet-stream",
    "Content-Length": file.size,
    // Files with a hash in their name never change; all others are asked for anew.
    "Cache-Control": hashed ? "public, max-age=31536000, immutable" : "no-cache",
  });
  if (request.method === "HEAD") response.end();
  else
    createReadStream(file.path)
      .on("error", () => response.destroy())
      .pipe(response);
}

/** The file that an address means; null for what is not there or lies outside the folder, by `..` or by a link. */
async function fileFor(root: string, url: string): Promise<{ path: string; size: number } | null> {
  try {
    const asked = decodeURIComponent(url.split(/[?#]/)[0] ?? "/");
    if (asked.includes("\0")) return null;
    const path = await realpath(join(root, asked.endsWith("/") ? `${asked}index.html` : asked));
    if (!path.startsWith(root + sep)) return null;
    const found = await stat(path);
    return found.isFile() ? { path, size: found.size } : null;
  } catch {
    return null;
  }
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", () => {
      server.off("error", reject);
      resolve();
    });
  });
}
