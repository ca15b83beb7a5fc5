// The page in a real browser: node tests/page/main.mjs [journeys] [screens] [speed] [pictures FOLDER]
import { browser } from "./served.mjs";
import { journeys } from "./journeys.mjs";
import { screens } from "./screens.mjs";
import { speed } from "./speed.mjs";
import { LOOKS } from "./looked.mjs";

/** Fewer screens than this were reached by a walk that lost its way. */
const LEAST_SCREENS = 45;

const wanted = process.argv.slice(2);
const pictures = process.env.LEGWORK_PICTURES || "target/page-pictures";
const all = wanted.length === 0;
let failed = false;
try {
  if (all || wanted.includes("journeys")) await journeys();
  if (all || wanted.includes("screens")) {
    const turned = [{ name: "right to left", set: async () => {} }];
    for (const [language, looks] of [["english", LOOKS], ["right-to-left", turned]]) {
      const { seen, wrong } = await screens(`${pictures}/${language}`, language, looks);
      console.log(`${seen.length} screens in ${language}, each in ${looks.length} looks: ${wrong.length} things wrong; pictures in ${pictures}/${language}`);
      for (const line of wrong) console.error(line.slice(0, 400));
      if (wrong.length || seen.length < LEAST_SCREENS) failed = true;
    }
  }
  if (wanted.includes("speed")) await speed();
} catch (error) {
  console.error(error.stack);
  failed = true;
}
await browser.close();
process.exit(failed ? 1 : 0);
