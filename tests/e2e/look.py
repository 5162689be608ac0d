"""Measures a drawn screen in the browser: axe, sizes of text and targets, what is cut off."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Page

from tests.servers import PROJECT

AXE = PROJECT / "frontend" / "node_modules" / "axe-core" / "axe.min.js"
TEXT_PX_LEAST = 14
TARGET_PX_LEAST = 48
QUIET_MS = 250
RESIZED_QUIET_MS = 100  # nothing is fetched or folded for another size, only drawn
QUIET_MS_MAX = 10_000

_UNTIL_QUIET = """([quiet, most]) => new Promise((resolve) => {
  const end = () => { clearTimeout(timer); clearTimeout(last); watch.disconnect(); resolve(); };
  let timer = setTimeout(end, quiet);
  const last = setTimeout(end, most);
  const watch = new MutationObserver(() => {
    clearTimeout(timer);
    timer = setTimeout(end, quiet);
  });
  const all = { subtree: true, childList: true, attributes: true, characterData: true };
  watch.observe(document, all);
})"""
_TWO_FRAMES = """() => new Promise((resolve) =>
  requestAnimationFrame(() => requestAnimationFrame(() => resolve())))"""
_SMALL_TEXT = """(least) => {
  const found = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const words = walk.currentNode.data.trim();
    const element = walk.currentNode.parentElement;
    if (words === "" || !element.checkVisibility({ visibilityProperty: true })) continue;
    if (element.closest(".unseen, .printed, style, script")) continue;
    const drawn = element.closest("svg") ? element.getScreenCTM?.() : null;
    const size = parseFloat(getComputedStyle(element).fontSize) * (drawn ? drawn.d : 1);
    if (size < least - 0.05) found.push(`${size.toFixed(1)} px: ${words}`);
  }
  return found;
}"""
_SMALL_TARGETS = """(least) => [...document.querySelectorAll(
  "a[href], button, input, select, textarea, summary, [role=button], [tabindex='0']",
)].filter((each) => each.checkVisibility({ visibilityProperty: true }))
  .map((each) => [each, each.getBoundingClientRect()])
  .filter(([, { width, height }]) => width < least - 0.05 || height < least - 0.05)
  .map(([each, { width, height }]) =>
    `${width.toFixed(0)} x ${height.toFixed(0)}: ${each.outerHTML.slice(0, 120)}`)"""
_CUT = """() => {
  const found = [];
  const wide = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > wide) {
    found.push(`the page is ${document.documentElement.scrollWidth} wide`);
  }
  // The boxes that hide what lies beyond them; in one that scrolls sideways nothing is lost.
  const clipsOf = (element) => {
    const clips = [];
    for (let at = element; at !== null; at = at.parentElement) {
      const how = getComputedStyle(at).overflowX;
      if (how === "auto" || how === "scroll") return null;
      if (how === "hidden" || how === "clip") clips.push(at.getBoundingClientRect());
    }
    return [...clips, { left: 0, right: wide }];
  };
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const words = walk.currentNode.data.trim();
    const element = walk.currentNode.parentElement;
    if (words === "" || !element.checkVisibility({ visibilityProperty: true })) continue;
    if (element.closest(".unseen, .printed, style, script, option")) continue;
    // A stream has one line for a name; the list beside the picture holds it in full.
    if (element.closest(".trace-steps")) continue;
    const clips = clipsOf(element);
    if (clips === null) continue;
    const range = document.createRange();
    range.selectNodeContents(walk.currentNode);
    const isCut = [...range.getClientRects()].some((each) =>
      clips.some(({ left, right }) => each.left < left - 1 || each.right > right + 1));
    if (isCut) found.push(`cut: ${words.slice(0, 60)} in ${element.outerHTML.slice(0, 100)}`);
  }
  return found;
}"""
# A code that fits into the line it stands in has no business on two.
_BROKEN_CODES = """() => {
  const head = document.querySelector(".head") ?? document.createElement("header");
  const found = [];
  const walk = document.createTreeWalker(head, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const { data, parentElement } = walk.currentNode;
    if (!parentElement.checkVisibility({ visibilityProperty: true })) continue;
    for (const { 0: code, index } of data.matchAll(/[A-Z0-9]+(-[A-Z0-9]+)+/g)) {
      const range = document.createRange();
      range.setStart(walk.currentNode, index);
      range.setEnd(walk.currentNode, index + code.length);
      const rows = [...range.getClientRects()];
      const wide = rows.reduce((sum, { width }) => sum + width, 0);
      const room = parentElement.closest(".head > *").getBoundingClientRect().width;
      if (rows.length > 1 && wide <= room) found.push(`broken: ${code}`);
    }
  }
  return found;
}"""
_AXE = """async (only) => {
  const { violations } = await axe.run(document, {
    resultTypes: ["violations"],
    ...(only === null ? {} : { runOnly: { type: "rule", values: only } }),
  });
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.html.slice(0, 160)} ${node.any.map((a) => a.message)}`));
}"""


def until_quiet(page: Page) -> None:
    """Wait until the screen has stopped changing."""
    page.evaluate(_UNTIL_QUIET, [QUIET_MS, QUIET_MS_MAX])


def until_drawn_anew(page: Page) -> None:
    """Wait until a screen that was quiet has been drawn for another size."""
    page.evaluate(_TWO_FRAMES)
    page.evaluate(_UNTIL_QUIET, [RESIZED_QUIET_MS, QUIET_MS_MAX])


def small_text(page: Page) -> list[str]:
    """Words drawn smaller than can be read at arm's length."""
    found: list[str] = page.evaluate(_SMALL_TEXT, TEXT_PX_LEAST)
    return found


def small_targets(page: Page) -> list[str]:
    """What can be pressed and is smaller than a wet thumb."""
    found: list[str] = page.evaluate(_SMALL_TARGETS, TARGET_PX_LEAST)
    return found


def cut_off(page: Page) -> list[str]:
    """What lies beyond the edge of the screen or is cut by its own box."""
    found: list[str] = page.evaluate(_CUT)
    return found


def broken_codes(page: Page) -> list[str]:
    """Codes of lots and batches in the head that stand on two lines without need."""
    found: list[str] = page.evaluate(_BROKEN_CODES)
    return found


def axe_finds(page: Page, *, only: list[str] | None = None) -> list[str]:
    """Every violation axe sees, with the element; `only` names single rules."""
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate(AXE.read_text())
    found: list[Any] = page.evaluate(_AXE, only)
    return [str(each) for each in found]
