// The keyboard alone.
import assert from "node:assert/strict";
import { answered, headline, recommendations, settled, withPage } from "./browser.mjs";

const mostSteps = 120;

export const the_form_can_be_filled_with_the_keyboard_alone = given => withPage(given, {}, async page => {
  await settled(page);
  await write(page, "telescopes.0.apertureMm", "150");
  await write(page, "telescopes.0.focalLengthMm", "1200");
  await reach(page, "telescopes.0.focuserBarrel");
  await page.keyboard.press("ArrowUp");
  await reach(page, "add.barlow");
  await page.keyboard.press("Enter");
  assert.equal(await focused(page), "c-owned.1.factors");
  await page.keyboard.type("2");
  await write(page, "age", "40");
  await press(page, "wearsSpectacles", "Space");
  await write(page, "astigmatismDioptres", "1");
  await press(page, "observes.moon", "Space");
  await write(page, "budget", "310");
  await press(page, "zooms", "Space");
  await reach(page, "add.frame");
  await page.keyboard.press("Enter");
  assert.equal(await focused(page), "c-preferences/mustFrame.0.widthDeg");
  const response = await answered(page, () => page.keyboard.type("1,1"), recommendations, body => body.preferences?.mustFrame?.[0].widthDeg === 1.1);
  assert.deepEqual({ ...response.request().postDataJSON(), catalogue: null, explain: null }, {
    telescopes: [{ apertureMm: 150, focalLengthMm: 1200, focuserBarrel: "1.25in" }],
    observer: { age: 40, wearsSpectacles: true, astigmatismDioptres: 1, observes: ["galaxies", "moon", "planets"] },
    owned: [{ kind: "eyepiece", focalLengthMm: 25, apparentFieldDeg: 50, eyeReliefMm: 18, barrel: "1.25in" }, { kind: "barlow", factors: [2], barrel: "1.25in" }],
    catalogue: null,
    limits: { budget: 310, maxPurchases: 3 },
    preferences: { zooms: "allow", mustFrame: [{ widthDeg: 1.1 }] },
    explain: null,
  });
});

export const the_advice_can_be_used_with_the_keyboard_alone = given => withPage(given, {}, async page => {
  await settled(page);
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  assert.equal(await focused(page), "advice");
  const first = await headline(page);
  await tabTo(page, () => document.activeElement.textContent === "Leave out");
  const response = await answered(page, () => page.keyboard.press("Enter"));
  assert.equal(response.request().postDataJSON().preferences.exclude.length, 1);
  assert.notEqual(await headline(page), first);
});

/** The curve is fetched once: the slider moves on it, and only the advice is asked for anew. */
export const the_slider_moves_the_budget = given => withPage(given, {}, async page => {
  let curves = 0;
  page.on("request", request => (curves += request.url().endsWith("/v1/spending-curves") ? 1 : 0));
  const curve = await (await page.waitForResponse("**/v1/spending-curves")).json();
  await page.locator(".curve svg").waitFor();
  curves = 0;
  await reach(page, "budgetSlider");
  const before = await page.locator(".reading").textContent();
  let budget;
  await answered(page, async () => {
    await page.keyboard.press("Home");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    budget = await page.locator("#c-budget").inputValue();
  }, recommendations, body => String(body.limits.budget) === budget);
  assert.ok(Number(budget) > 0 && Number(budget) < 50, budget);
  assert.notEqual(await page.locator(".reading").textContent(), before);
  assert.equal(await page.locator("#c-budgetSlider").getAttribute("aria-valuetext"), await page.locator(".reading").textContent());
  assert.equal(curves, 0);
  assert.equal(await focused(page), "c-budgetSlider");
  assert.equal(await page.locator(".curve .point").count(), curve.points.filter(point => point.largestStep !== null).length);
  await write(page, "budget", "5000");
  await page.waitForResponse("**/v1/spending-curves");
});

/** Types into a field in place of what is there. */
async function write(page, name, text) {
  await reach(page, name);
  await page.keyboard.press("Control+A");
  await page.keyboard.type(text);
}

async function press(page, name, key) {
  await reach(page, name);
  await page.keyboard.press(key);
}

const reach = (page, name) => tabTo(page, id => document.activeElement.id === id, `c-${name}`);

/** Goes on with the tabulator, and sees at each stop that one sees where one is. */
async function tabTo(page, isThere, given) {
  for (let step = 0; step < mostSteps; step++) {
    if (await page.evaluate(isThere, given)) {
      return;
    }

    await page.keyboard.press("Tab");
    const { shown, where } = await page.evaluate(() => {
      const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement);
      return { shown: document.activeElement === document.body || (outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2), where: document.activeElement.outerHTML.slice(0, 80) };
    });
    assert.ok(shown, `focus does not show on ${where}`);
  }

  assert.fail(`the tabulator does not lead to ${given}`);
}

const focused = page => page.evaluate(() => document.activeElement.id);
