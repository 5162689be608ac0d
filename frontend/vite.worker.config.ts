import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { defineConfig } from "vite";

const BUILT = new URL("dist", import.meta.url).pathname;
const HASHED_NAME = /-[\w-]{8}\.\w+$/;
const NOT_FOR_PHONES = /(^|\/)(sw\.js|budget\.json|\.vite\/.*)$|\.map$/;

interface Precached {
  url: string;
  revision: string | null;
}

/** Every file of the built app as the worker asks for it: under /static/, the page itself at /. */
function precached(): Precached[] {
  return readdirSync(BUILT, { recursive: true, withFileTypes: true })
    .filter((found) => found.isFile())
    .map((found) => relative(BUILT, join(found.parentPath, found.name)))
    .filter((name) => !NOT_FOR_PHONES.test(name))
    .sort()
    .map((name) => ({
      url: name === "index.html" ? "/" : `/static/${name}`,
      revision: HASHED_NAME.test(name) ? null : digest(name),
    }));
}

function digest(name: string): string {
  return createHash("sha256")
    .update(readFileSync(join(BUILT, name)))
    .digest("hex")
    .slice(0, 16);
}

export default defineConfig(({ command }) => ({
  publicDir: false,
  define: {
    "self.__WB_MANIFEST": JSON.stringify(command === "build" ? precached() : []),
    "process.env.NODE_ENV": '"production"',
  },
  build: {
    target: ["chrome114", "firefox115", "safari16.4"],
    emptyOutDir: false,
    lib: {
      entry: "src/worker/sw.ts",
      formats: ["iife"],
      name: "kitchenlog",
      fileName: () => "sw.js",
    },
  },
}));
