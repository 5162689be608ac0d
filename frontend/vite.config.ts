import { readFileSync } from "node:fs";
import { defineConfig } from "vitest/config";
import { chunkOf } from "./build/chunks.ts";

const packageFile: unknown = JSON.parse(
  readFileSync(new URL("package.json", import.meta.url), "utf8"),
);

/** The version written into every entry as `app_version`. */
function appVersion(): string {
  if (typeof packageFile === "object" && packageFile !== null && "version" in packageFile) {
    return String(packageFile.version);
  }
  throw new Error("package.json names no version");
}

export default defineConfig({
  base: "/static/",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  define: { __APP_VERSION__: JSON.stringify(appVersion()) },
  build: {
    target: ["chrome114", "firefox115", "safari16.4"],
    manifest: "budget.json",
    // All files are kept ready by the worker: lists of what to load ahead would only add to them.
    modulePreload: false,
    cssCodeSplit: false,
    // An inlined picture would be a data: address, which the content policy refuses.
    assetsInlineLimit: 0,
    rolldownOptions: {
      input: "index.html",
      output: {
        codeSplitting: { includeDependenciesRecursively: false, groups: [{ name: chunkOf }] },
      },
    },
  },
  test: {
    environment: "node",
    include: ["src/**/*.test.{ts,tsx}"],
    pool: "threads",
  },
});
