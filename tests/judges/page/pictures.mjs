// Takes the pictures of the page that are committed: `node page/pictures.mjs <address> <browser> <folder>`.
import { join } from "node:path";
import { control, part, settled, withBrowser, withPage } from "./browser.mjs";

const [address, executable, folder] = process.argv.slice(2);
const fragment = "#t=203~mm~1218~mm~2in~&o=e~30~52~21~1.25in~~&f=1.3~Orion+Nebula&a=52&sp=1&cy=0.75&b=420&w=planets&w=galaxies";
const most = { 360: 2600, 800: 2200, 1440: 1300 };
const above = 500;

await withBrowser(executable, async browser => {
  for (const [width, height] of Object.entries(most)) {
    for (const [colorScheme, locale] of [["light", "en-US"], ["dark", "de-DE"]]) {
      await withPage({ browser, address }, { fragment, colorScheme, locale, viewport: { width: Number(width), height: 900 } }, async page => {
        await settled(page);
        await Promise.all([control(page, "owned.pick").waitFor(), part(page, "ladder").waitFor(), part(page, "curve").waitFor()]);
        const y = await page.evaluate(room => Math.max(0, document.getElementById("advice").offsetTop - room), above);
        await page.screenshot({ path: join(folder, `${width}-${colorScheme}.png`), fullPage: true, clip: { x: 0, y, width: Number(width), height } });
      });
    }
  }
});
