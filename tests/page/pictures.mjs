// The pictures of the README: the page and the map as the demo's invented house shows them, by day. Made by hand after the
// look changed: tests/page/run pictures.
import { spawn } from "node:child_process";
import { join } from "node:path";
import { ROOT, does, name, tab, target } from "./served.mjs";

/** `legwork page --demo`, until `end`. */
const demo = async () => {
  const legwork = spawn(join(target, "debug/legwork"), ["page", "--demo", "--no-browser"], { stdio: ["pipe", "pipe", "inherit"] });
  const address = await new Promise((known, not) => {
    let said = "";
    legwork.stdout.on("data", (piece) => {
      said += piece;
      const found = said.match(/http:\S+/);
      if (found) known(found[0]);
    });
    legwork.on("exit", (code) => not(new Error(`the command ended with ${code}`)));
  });
  return { address, end: () => new Promise((done) => { legwork.on("exit", done); legwork.kill("SIGINT"); }) };
};

const press = (page, key) => does(page, () => page.locator(`button[name=press][value^='${key}']:visible`).first().click());

/** Takes them; `folder` is where they go. */
export const pictures = async (folder) => {
  const served = await demo();
  const page = await tab(served.address, { viewport: { width: 760, height: 800 }, colorScheme: "light" });
  if ((await name(page)) === "surveys") await press(page, "open:");
  while ((await name(page)) !== "overview") await press(page, "overview");
  await press(page, "forecast");
  await page.screenshot({ path: join(ROOT, folder, "page.png") });
  await press(page, "map");
  await page.setViewportSize({ width: 1280, height: 800 });
  const bottom = await page.evaluate(() => document.querySelector(".figure").getBoundingClientRect().bottom);
  // As far down as the map goes, and the dock.
  await page.setViewportSize({ width: 1280, height: Math.ceil(bottom) + 100 });
  await page.screenshot({ path: join(ROOT, folder, "map.png") });
  await page.context().close();
  await served.end();
};
