import { afterEach, describe, expect, test, vi } from "vitest";
import { fetchWire, REQUEST_MAX_MS } from "./world.ts";

afterEach(() => vi.unstubAllGlobals());

describe("a request", () => {
  const request = { method: "POST", path: "/api/v1/sync/push", device: "d1", body: "{}" } as const;

  test("names its device, sends this origin's cookies and asks no cache", async () => {
    const sent = vi.fn(async () => new Response("{}", { headers: { "Retry-After": "7" } }));
    vi.stubGlobal("fetch", sent);

    const answer = await fetchWire(request);

    expect(sent).toHaveBeenCalledWith(
      "/api/v1/sync/push",
      expect.objectContaining({
        method: "POST",
        headers: { "Kitchenlog-Device": "d1", "Content-Type": "application/json" },
        credentials: "same-origin",
        cache: "no-store",
      }),
    );
    expect(answer).toEqual({ status: 200, retry_after: "7", text: "{}" });
  });

  test("ends after half a minute", async () => {
    const asked = vi.spyOn(AbortSignal, "timeout");
    vi.stubGlobal(
      "fetch",
      vi.fn(async () => new Response("{}")),
    );

    await fetchWire(request);

    expect(REQUEST_MAX_MS).toBe(30_000);
    expect(asked).toHaveBeenCalledWith(REQUEST_MAX_MS);
    asked.mockRestore();
  });
});
