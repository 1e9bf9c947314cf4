// Pictures as a browser sets them, with the typefaces that it has.
import assert from "node:assert/strict";

const typefaces = ["system-ui", "sans-serif"];

/** A hair: letters of neighbouring lines may come this near without touching. */
const nearUnits = 1.5;

export async function No_text_of_a_picture_overlaps_another({ browser, drawn }) {
  const page = await browser.newPage();
  try {
    await page.setContent(drawn.join("\n"));
    for (const typeface of typefaces) {
      assert.deepEqual(await page.evaluate(touching, { typeface, nearUnits }), [], typeface);
    }
  } finally {
    await page.close();
  }
}

function touching({ typeface, nearUnits }) {
  const overlap = (from, to, otherFrom, otherTo) => Math.min(to, otherTo) - Math.max(from, otherFrom);
  return [...document.querySelectorAll("svg")].flatMap(picture => {
    picture.style.fontFamily = typeface;
    const boxes = [...picture.querySelectorAll("text")].map(one => ({ said: one.firstChild.data, box: one.getBBox() }));
    const out = boxes.filter(({ box }) => box.x < 0 || box.x + box.width > picture.viewBox.baseVal.width).map(({ said }) => `${said} leaves the picture`);
    const pairs = boxes.flatMap((one, i) => boxes.slice(i + 1).filter(other =>
      overlap(one.box.x, one.box.x + one.box.width, other.box.x, other.box.x + other.box.width) > 0
      && overlap(one.box.y, one.box.y + one.box.height, other.box.y, other.box.y + other.box.height) > nearUnits).map(other => `${one.said} touches ${other.said}`));
    return [...out, ...pairs];
  });
}
