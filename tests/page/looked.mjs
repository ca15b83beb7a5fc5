// What is asked of every screen: no violation that axe-core finds, nothing cut off, nothing over anything else.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** The violations that axe-core finds, a line each. */
export const violations = async (page) => {
  // Added past the page's own policy, which lets no script in.
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(AXE);
  const found = await page.evaluate(async () => {
    const result = await window.axe.run(document, { resultTypes: ["violations"] });
    return result.violations.map((one) => `${one.id} (${one.impact}): ${one.nodes.slice(0, 3).map((node) => node.target.join(" ") + " " + (node.any[0]?.message || node.all[0]?.message || node.none[0]?.message || "")).join(" | ")}`);
  });
  return found;
};

/** What is cut off or lies over something else, a line each. */
export const clipped = (page) => page.evaluate(() => {
  const found = [];
  const root = document.documentElement;
  if (root.scrollWidth > innerWidth + 1) found.push(`the page is ${root.scrollWidth} wide in a window of ${innerWidth}`);
  const box = (node) => node.getBoundingClientRect();
  const seen = (node) => { const { width, height } = box(node); return width > 0 && height > 0 && getComputedStyle(node).visibility !== "hidden"; };
  const say = (node) => `${node.tagName.toLowerCase()}.${[...node.classList].join(".")} “${node.textContent.trim().slice(0, 30)}”`;
  const wordy = [...document.querySelectorAll(".press, .row, .opt, .fig, .ph, .unit, h1, h2, p, small, b, summary, .rw, .bsays, input, textarea")];
  for (const node of wordy) {
    if (!seen(node) || node.closest(".hide, .pane")) continue;
    if (node.scrollWidth > node.clientWidth + 1 && getComputedStyle(node).display !== "inline" && !node.matches("input, textarea")) {
      found.push(`cut off: ${say(node)} ${node.scrollWidth} in ${node.clientWidth}`);
    }
    const { left, right } = box(node);
    if (left < -1 || right > innerWidth + 1) found.push(`outside the window: ${say(node)} ${Math.round(left)} to ${Math.round(right)}`);
  }
  const blocks = [...document.querySelectorAll("main > *, .dock .press, .dock .opt")].filter(seen).filter((node) => !node.closest("details:not([open]) > :not(summary)"));
  for (let one = 0; one < blocks.length; one += 1) {
    for (let other = one + 1; other < blocks.length; other += 1) {
      const [a, b] = [blocks[one], blocks[other]];
      if (a.contains(b) || b.contains(a) || a.closest(".dock") !== b.closest(".dock")) continue;
      const [x, y] = [box(a), box(b)];
      const wide = Math.min(x.right, y.right) - Math.max(x.left, y.left);
      const high = Math.min(x.bottom, y.bottom) - Math.max(x.top, y.top);
      if (wide > 1 && high > 1) found.push(`one over the other: ${say(a)} and ${say(b)}`);
    }
  }
  // Lettering of a drawing lies within it, and not over other lettering.
  for (const drawing of document.querySelectorAll("svg.drawing")) {
    if (!seen(drawing)) continue;
    const frame = box(drawing);
    const texts = [...drawing.querySelectorAll("text")].map((text) => [text, box(text)]);
    for (const [text, { left, right }] of texts) {
      if (left < frame.left - 1 || right > frame.right + 1) found.push(`outside its drawing: ${say(text)}`);
    }
    texts.forEach(([text, one], at) => {
      for (const [other, two] of texts.slice(at + 1)) {
        const wide = Math.min(one.right, two.right) - Math.max(one.left, two.left);
        // Lines stand close: the boxes of two lines share the room of a letter's foot.
        const high = Math.min(one.bottom, two.bottom) - Math.max(one.top, two.top);
        if (wide > 2 && high > Math.min(one.height, two.height) * 0.4) found.push(`lettering over lettering: ${say(text)} and ${say(other)}`);
      }
    });
  }
  // What can be touched is large enough (WCAG 2.2, 2.5.8 asks for 24; ours is 44 and more but for links in text).
  for (const node of document.querySelectorAll("button, .opt, summary, .unit span")) {
    if (seen(node) && !node.closest(".hide") && box(node).height < 44) found.push(`too low to touch: ${say(node)} ${box(node).height}`);
  }
  return found;
});

/** In what light, size and width every screen is looked at. */
export const LOOKS = [
  { name: "light", set: async () => {} },
  { name: "dark", set: (page) => page.emulateMedia({ colorScheme: "dark" }) },
  { name: "200 %", set: (page) => page.evaluate(() => { document.documentElement.style.fontSize = "200%"; }) },
  { name: "320 px", set: (page) => page.setViewportSize({ width: 320, height: 640 }) },
  { name: "wide", set: (page) => page.setViewportSize({ width: 1280, height: 800 }) },
];

/** As it was. */
export const plain = async (page) => {
  await page.emulateMedia({ colorScheme: "light" });
  await page.evaluate(() => { document.documentElement.style.fontSize = ""; });
  await page.setViewportSize({ width: 390, height: 844 });
};
