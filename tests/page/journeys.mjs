// The homeowner's way from nothing to what gets through, and the technician's from a burst of photos to a file: by keyboard
// alone, by touch, and without script.
import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { does, insist, name, serve, tab } from "./served.mjs";

/** Fingers that come down on the next screen within half a second have not read it: to the page that is a double tap. */
const read = (page) => page.waitForTimeout(550);

/** How hands do things. Each draws the screen anew. */
const HANDS = {
  keyboard: {
    options: {},
    press: async (page, selector) => {
      const at = page.locator(selector).first();
      // With the keys alone: on until it has the focus.
      for (let keys = 0; keys < 400; keys += 1) {
        if (await at.evaluate((it) => it === document.activeElement)) break;
        await page.keyboard.press("Tab");
      }
      insist(await at.evaluate((it) => it === document.activeElement), `${selector} cannot be reached by the keyboard on ${await name(page)}`);
      await does(page, () => page.keyboard.press("Enter"));
    },
    mark: async (page, selector) => {
      const at = page.locator(selector).first();
      await at.focus();
      await does(page, () => page.keyboard.press("Space"));
    },
    answer: async (page, number) => does(page, () => page.keyboard.press(String(number))),
  },
  touch: {
    options: { hasTouch: true, isMobile: true },
    press: async (page, selector) => { await read(page); await does(page, () => page.locator(selector).first().tap()); },
    mark: async (page, selector) => does(page, () => page.locator(selector).first().evaluate((it) => it.closest("label").click())),
    answer: async (page, number) => { await read(page); await does(page, () => page.locator(".choice .opt").nth(number - 1).tap()); },
  },
  "no script": {
    options: { javaScriptEnabled: false },
    press: async (page, selector) => { await page.locator(selector).first().click(); await settled(page); },
    mark: async (page, selector) => {
      const at = page.locator(selector).first();
      await at.evaluate((it) => it.scrollIntoView({ block: "center" }));
      await at.check({ force: true });
    },
    answer: async (page, number) => { await page.locator(".choice .opt").nth(number - 1).click(); await settled(page); },
  },
};

/** Without script the page looks again by itself while something goes on. */
const settled = async (page) => {
  for (let tries = 0; tries < 240; tries += 1) {
    await page.waitForLoadState();
    if (await page.locator("body:not([data-working])").count()) return;
    await page.waitForTimeout(500);
  }
};

/** What a homeowner answers; whatever is not here is answered with the first answer, and in the end with “later”. */
const WRITES = { "ask-rooms": "Office, Study", "ask-plan": "300", "ask-cable": "12", "ask-marks": "100", "ask-label": "2 WAY SPLITTER 5-1675 MHz 3.5 dB" };

const at = async (page, hands) => (hands === "no script" ? page.locator("body").getAttribute("data-name") : name(page));

/** Answers what a screen asks; whether that led on already. */
const fill = async (page, hands, screen) => {
  const { mark, answer } = HANDS[hands];
  if (await page.locator(".choice button.opt:not(:disabled)").count()) { await answer(page, 1); return true; }
  const open = page.locator(".choice:has(input:not([type=hidden]):not(:disabled)):not(:has(input:checked))");
  // By their ids: one that is answered is none of them any more.
  for (const id of await open.evaluateAll((all) => all.map((it) => CSS.escape(it.id)))) {
    await mark(page, `#${id} input:not([type=hidden]):not(:disabled)`);
  }
  for (const field of await page.locator("main input:not([type=radio],[type=checkbox],[type=hidden],[type=file]), main textarea").all()) {
    if (!(await field.inputValue())) await field.fill(WRITES[screen] || "12");
  }
  return false;
};

const homeowner = async (hands) => {
  const { options, press } = HANDS[hands];
  const served = await serve();
  const page = await tab(served.address, options);
  await press(page, "button[name=press][value=new]:not(.hide)");
  await page.locator("input[name='written name']").fill("Mill House");
  await press(page, "button[name=press][value=make]:not(.hide)");
  insist((await at(page, hands)) === "ask-whose", `the first question is ${await at(page, hands)}`);
  const asked = [];
  let answers = 0;
  for (; answers < 80; answers += 1) {
    const screen = await at(page, hands);
    if (screen === "enough") { await press(page, "button[name=press][value=next]"); continue; }
    if (!screen.startsWith("ask-")) break;
    asked.push(screen);
    if (screen === "ask-outputs") {
      // One output stands open, and the next one does once it is told.
      for (let more = 0; more < 8 && (await at(page, hands)) === screen; more += 1) {
        if (!(await fill(page, hands, screen))) await press(page, ".dock .press.main");
      }
      if ((await at(page, hands)) !== screen) continue;
    }
    const often = asked.filter((one) => one === screen).length > 2 || answers > 36;
    const later = page.locator("button[name=press][value=later]");
    if (often) { await press(page, "button[name=press][value=later]"); continue; }
    if (await fill(page, hands, screen)) continue;
    await press(page, ".dock .press.main");
    if ((await at(page, hands)) === screen && (await later.count())) await press(page, "button[name=press][value=later]");
  }
  const end = await at(page, hands);
  insist(end === "forecast", `${hands}: after ${answers} answers it is ${end}: ${asked.join(" ")}`);
  insist(new Set(asked).size > 12, `only ${[...new Set(asked)].join(" ")} were asked`);
  // On to the end by the way on alone.
  const way = [];
  for (let steps = 0; steps < 30 && (await at(page, hands)) !== "handover"; steps += 1) {
    way.push(await at(page, hands));
    if (["after", "still-fine"].includes(way.at(-1)) && (await fill(page, hands, way.at(-1)))) continue;
    if (!(await page.locator(".dock .press.main").count())) break;
    await press(page, ".dock .press.main");
  }
  insist((await at(page, hands)) === "handover", `${hands}: the way on ends at ${way.join(" ")} ${await at(page, hands)}`);
  await press(page, ".dock .press.main, button.press.main");
  const saved = await save(page);
  insist(readFileSync(saved, "utf8").startsWith("<!DOCTYPE html>"), "the report is no HTML");
  insist(page.faults.length === 0, `the page's script said: ${page.faults.join("\n")}`);
  await page.context().close();
  await served.end();
  return answers;
};

const save = async (page) => {
  const [download] = await Promise.all([page.waitForEvent("download"), page.locator("a[data-written]").first().click()]);
  return download.path();
};

const technician = async (hands) => {
  const { options, press } = HANDS[hands];
  const folder = mkdtempSync(join(tmpdir(), "legwork-pictures-"));
  const served = await serve("whole");
  const page = await tab(served.address, options);
  await press(page, "button[name=press][value^='open:']:has-text('Mill House')");
  await press(page, "button[name=press][value=free-burst]");
  const before = await page.locator(".phs .ph").count();
  // Two pictures of the page itself stand for photos.
  const pictures = [1, 2].map((number) => join(folder, `${number}.png`));
  for (const picture of pictures) await page.screenshot({ path: picture, clip: { x: 0, y: pictures.indexOf(picture) * 50, width: 300, height: 200 } });
  const input = page.locator(".drop input[type=file]");
  if (hands === "no script") {
    await input.setInputFiles(pictures);
    await press(page, ".drop button");
    await page.goto(new URL("/", served.address).href);
  } else {
    await does(page, () => input.setInputFiles(pictures));
  }
  await page.waitForTimeout(1500);
  if (hands === "no script") await page.goto(new URL("/", served.address).href);
  else await page.reload();
  const after = await page.locator(".phs .ph").count();
  insist(after === before + 2, `${hands}: ${after} photos after ${before} and two more`);
  if (hands === "keyboard") {
    // A piece cut out of a photo is a photo of its own.
    await page.locator(".ph a[data-photo]").first().click();
    await page.locator("dialog button").first().click();
    await page.keyboard.press("Shift+ArrowRight");
    await does(page, () => page.locator("dialog button").first().click());
    await page.waitForTimeout(1000);
    await page.reload();
    insist((await page.locator(".phs .ph").count()) === after + 1, "the piece that was cut out is no photo");
  }
  // What they show: two photos of one new amplifier.
  await press(page, ".dock .press.main");
  insist((await at(page, hands)) === "free-assign", `to say what they show: ${await at(page, hands)}`);
  await press(page, ".ph button >> nth=0");
  await press(page, ".ph button >> nth=1");
  insist((await page.locator(".ph [aria-pressed=true]").count()) === 2, "two photos are picked");
  await press(page, "button[name=press]:has-text('New: an amplifier')");
  await press(page, "button[name=press][value=overview]");
  await press(page, "button[name=press][value=pack]");
  await press(page, ".dock .press.main");
  const saved = await save(page);
  insist(readFileSync(saved).subarray(0, 2).toString() === "PK" && statSync(saved).size > 1000, "the packed file is no ZIP");
  insist(page.faults.length === 0, `the page's script said: ${page.faults.join("\n")}`);
  await page.context().close();
  await served.end();
  rmSync(folder, { recursive: true });
};

/** A double click, or a key that is held, answers one question and not the next one too, whenever its second press comes; nor
    is a press lost that comes while something typed is being kept. */
const twice = async () => {
  const served = await serve();
  const page = await tab(served.address);
  let deeds = 0, held = 0;
  await page.route("**/deed", async (route) => {
    deeds += 1;
    await new Promise((done) => { setTimeout(done, held); });
    await route.continue();
  });
  await does(page, () => page.locator("button[name=press][value=new]:not(.hide)").click());
  held = 400;
  const kept = page.waitForRequest("**/deed");
  await page.locator("input[name='written name']").fill("Mill House");
  await kept;
  await page.locator("button[name=press][value=make]:not(.hide)").click();
  await page.waitForFunction(() => document.body.dataset.name === "ask-whose");
  const later = page.locator(".dock button[name=press][value=later]");
  // Each way begins with questions enough before it.
  let surveys = 1;
  const anew = async () => {
    held = 0;
    for (const to of ["overview", "out", "new"]) await does(page, () => page.locator(`button[name=press][value=${to}]:not(.hide)`).first().click());
    const kept = page.waitForRequest("**/deed");
    surveys += 1;
    await page.locator("input[name='written name']").fill(`Mill House ${surveys}`);
    await kept;
    await page.locator("button[name=press][value=make]:not(.hide)").click();
    await page.waitForFunction(() => document.body.dataset.name === "ask-whose");
  };
  const middle = async () => { const { x, y, width, height } = await later.boundingBox(); return [x + width / 2, y + height / 2]; };
  const holds = (key, at) => async () => {
    held = 0;
    await at.focus();
    // Down again while it is down is what a held key sends.
    for (let times = 0; times < 4; times += 1) { await page.keyboard.down(key); await page.waitForTimeout(250); }
    await page.keyboard.up(key);
  };
  const ways = {
    "from a digit that is held": holds("1", page.locator("h1")),
    "from Enter that is held": holds("Enter", later),
    "while the first is under way": async () => { held = 400; await later.dblclick(); },
    "as fast as can be": async () => { held = 0; await later.dblclick(); },
    "on the screen that came": async () => {
      const [x, y] = await middle();
      await does(page, () => page.mouse.click(x, y));
      await page.mouse.down({ clickCount: 2 });
      await page.mouse.up({ clickCount: 2 });
    },
  };
  for (const [when, click] of Object.entries(ways)) {
    await anew();
    await later.scrollIntoViewIfNeeded();
    const before = await page.evaluate(() => document.body.dataset.place);
    deeds = 0;
    await click();
    await page.waitForFunction((before) => document.body.dataset.place !== before, before);
    // Long enough for what should not come.
    await page.waitForTimeout(held + 700);
    insist(deeds === 1, `one press, a second ${when}, did ${deeds} deeds`);
    insist(await later.count(), "the next screen is a question too, so that a second deed could have been done");
  }
  // Two clicks apart are two clicks.
  await anew();
  deeds = 0;
  for (let times = 0; times < 2; times += 1) await does(page, () => later.click());
  insist(deeds === 2, `two clicks apart did ${deeds} deeds`);
  await page.context().close();
  await served.end();
};

/** Photos that are dropped while another deed is under way are kept, whatever is pressed after them; where their place is gone
    by then, it is said. */
const dropped = async () => {
  const served = await serve("whole");
  const page = await tab(served.address);
  await does(page, () => page.locator("button[name=press][value^='open:']:has-text('Mill House')").click());
  await does(page, () => page.locator("button[name=press][value=free-burst]").click());
  await page.route("**/deed", async (route) => {
    await new Promise((done) => { setTimeout(done, 400); });
    await route.continue();
  });
  const photos = () => page.locator(".phs .ph").count();
  // `first`: what is pressed in the same moment, before it.
  const drop = (colour, first) => page.evaluate(async ([colour, first]) => {
    const canvas = document.createElement("canvas");
    const pen = canvas.getContext("2d");
    pen.fillStyle = colour;
    pen.fillRect(0, 0, 300, 150);
    const piece = await new Promise((known) => { canvas.toBlob(known, "image/png"); });
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([piece], "dropped.png", { type: "image/png" }));
    if (first) document.querySelector(first).click();
    document.querySelector(".drop").dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
  }, [colour, first]);
  const on = page.locator(".dock .press.main");
  const before = await photos();
  await does(page, async () => {
    for (const colour of ["#123456", "#654321"]) await drop(colour);
    await on.click();
    await page.waitForFunction(() => document.body.dataset.name === "free-assign");
  });
  await does(page, () => page.locator("#back").click());
  insist((await photos()) === before + 2, `of two dropped photos ${(await photos()) - before} were kept`);
  insist((await page.locator(".notices .problem").count()) === 0, "nothing was lost, and so nothing is said");
  await does(page, async () => {
    await drop("#abcdef", ".dock .press.main");
    await page.waitForFunction(() => document.body.dataset.name === "free-assign");
  });
  insist((await page.locator(".notices .problem").count()) === 1, "that a dropped photo did not count is said");
  insist(page.faults.length === 0, `the page's script said: ${page.faults.join("\n")}`);
  await page.context().close();
  await served.end();
};

/** A drawing is shown in the layout that fits its window, though after a deed only one is sent. */
const resized = async () => {
  const served = await serve("whole");
  const page = await tab(served.address);
  await does(page, () => page.locator("button[name=press][value^='open:']:has-text('Mill House')").click());
  for (const press of ["forecast", "map"]) await does(page, () => page.locator(`button[name=press][value=${press}]`).first().click());
  const map = page.locator("[data-drawing]").first();
  const layouts = () => map.locator(".layout").count();
  const shown = async () => {
    const steps = await map.locator(".layout").evaluateAll((all) => all.filter((one) => one.clientHeight > 0).map((one) => Number(one.dataset.step)));
    insist(steps.length === 1, `one layout is shown, not those of ${steps}`);
    return steps[0];
  };
  const all = await layouts();
  insist(all > 1, "a screen that came from another one brings every layout");
  const narrow = await shown();
  // To the map after the work and back: the two are not laid out alike.
  const turn = async () => {
    for (const press of ["map-after", "map-now"]) await does(page, () => page.locator(`button[name=press][value=${press}]`).click());
  };
  await turn();
  insist((await layouts()) === 1 && (await shown()) === narrow, "after a deed only the layout that fits was sent");
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.waitForFunction((all) => document.querySelectorAll("[data-drawing]")[0].querySelectorAll(".layout").length === all, all);
  const wide = await shown();
  insist(wide > narrow, `a wide window shows the layout of ${wide}`);
  await turn();
  insist((await layouts()) === 1 && (await shown()) === wide, "and after a deed that one alone");
  insist(page.faults.length === 0, `the page's script said: ${page.faults.join("\n")}`);
  await page.context().close();
  await served.end();
};

export const journeys = async (only = []) => {
  await twice();
  console.log("a double click or a held key: one deed, whenever a second press comes");
  await dropped();
  console.log("dropped photos: kept, or told that they are not");
  await resized();
  console.log("a drawing: in the layout that fits the window, alone where that is known");
  for (const hands of only.length ? only : Object.keys(HANDS)) {
    const answers = await homeowner(hands);
    console.log(`the homeowner by ${hands}: ${answers} answers to what gets through, report saved`);
    await technician(hands);
    console.log(`the technician by ${hands}: photos said and packed`);
  }
};
