"""What the databases of a phone hold, read past the app."""

from __future__ import annotations

import json
from typing import Any

from playwright.sync_api import Page

_EACH_DATABASE = """async ([begin, read]) => {
  const asked = (request) => new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const whole = {
    async rows(db) {
      const stores = {};
      for (const store of db.objectStoreNames) {
        stores[store] = await asked(db.transaction(store).objectStore(store).getAll());
      }
      return stores;
    },
    async standing(db) {
      if (!db.objectStoreNames.contains("outbox")) return null;
      const isWhole = await asked(db.transaction("meta").objectStore("meta").get("is_whole"));
      const waiting = await asked(db.transaction("outbox").objectStore("outbox").count());
      return [isWhole === true, waiting];
    },
  };
  const stored = {};
  for (const { name } of await indexedDB.databases()) {
    if (!name.startsWith(begin)) continue;
    const db = await asked(indexedDB.open(name));
    stored[name] = await whole[read](db);
    db.close();
  }
  return JSON.stringify(stored);
}"""


def each_database(page: Page, how: str) -> dict[str, Any]:
    """By name of database: its `rows` by store, or its `standing`, whole or not and waiting.

    As text: Playwright's own way of handing values over takes seconds for thousands of rows.
    """
    return dict(json.loads(page.evaluate(_EACH_DATABASE, ["kitchenlog-", how])))
