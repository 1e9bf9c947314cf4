// How the page looks and prints, how much it loads, and what it says.
import assert from "node:assert/strict";
import { answered, control, headline, recommendations, settled, violations, weightsOf, withPage } from "./browser.mjs";

const mostBytes = 100_000;
const widths = [360, 800, 1440];
const busy = "#t=203~mm~1218~mm~2in~&o=e~30~52~21~1.25in~~&f=1.2~M~42&a=52&sp=1&cy=0.75&b=420&w=planets&w=galaxies";

export const the_page_breaks_no_rule_of_accessibility_in_english = given => audit(given, "en-US");
export const the_page_breaks_no_rule_of_accessibility_in_german = given => audit(given, "de-DE");

/** The policy of the page lets no script in, so the auditor runs in an isolated world of the browser, with the policy in force. */
async function audit(given, locale) {
  for (const colorScheme of ["light", "dark"]) {
    await withPage(given, { fragment: busy, locale, colorScheme }, async page => {
      await settled(page);
      await page.evaluate(() => document.querySelectorAll("details").forEach(details => (details.open = true)));
      for (const width of widths) {
        await page.setViewportSize({ width, height: 900 });
        assert.deepEqual(await violations(page), [], `${locale} ${colorScheme} ${width}`);
        assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `wider than ${width}`);
      }
    });
  }
}

export const the_page_prints_on_one_sheet = given => withPage(given, { fragment: busy, colorScheme: "dark" }, async page => {
  await settled(page);
  await page.emulateMedia({ media: "print", colorScheme: "light" });
  assert.equal(await page.locator("#form").isVisible(), false);
  assert.equal(await page.locator(".purchases").isVisible(), true);
  assert.match(await page.locator(".sun").innerText(), /never look/);
  assert.match(await page.locator("#for-print").innerText(), /203 mm/);
  assert.equal((await page.pdf({ preferCSSPageSize: true })).toString("latin1").match(/\/Type\s*\/Page\b/g).length, 1);
});

export const the_page_loads_less_than_a_hundred_kilobytes = async given => assertLight(await weightsOf(given, { locale: "de-DE" }, settled));

export const the_page_loads_less_than_a_hundred_kilobytes_with_a_key_too = async ({ browser, keyed }) => assertLight(await weightsOf({ browser, ...keyed }, { locale: "de-DE" }, async page => {
  await control(page, "key").fill(keyed.key);
  await answered(page, () => page.keyboard.press("Enter"));
}));

function assertLight(weights) {
  const total = weights.reduce((sum, [, size]) => sum + size, 0);
  assert.ok(total > mostBytes / 4 && total < mostBytes, `${total} bytes: ${weights.map(one => one.join(" ")).join(", ")}`);
}

/** How long it took is told, and not asserted: the machine may be busy. What is asserted is that nothing is asked before. */
export const the_recommendation_is_requested_before_anything_else = given => {
  const asked = [];
  const before = page => page.on("request", request => request.url().includes("/v1/") && request.method() === "POST" && asked.push(new URL(request.url()).pathname));
  return withPage(given, { before }, async page => {
    await settled(page);
    const soon = await page.evaluate(() => performance.getEntriesByName("first-advice")[0].startTime);
    process.stderr.write(`first advice after ${Math.round(soon)} ms\n`);
    assert.equal(asked[0], recommendations);
  });
};

export const no_text_is_empty_or_has_an_unfilled_value = async given => {
  for (const locale of ["en-US", "de-DE"]) {
    await withPage(given, { fragment: busy, locale }, async page => {
      await settled(page);
      assert.doesNotMatch(await page.locator("body").innerText(), /undefined|null|NaN|\{\w+\}|\[object/);
      assert.deepEqual(await page.locator("label, h2, h3, legend, summary, button, option").evaluateAll(nodes => nodes.filter(node => node.textContent.trim() === "").map(node => node.outerHTML)), []);
    });
  }
};

export const the_language_follows_the_browser_and_can_be_switched = given => withPage(given, { locale: "de-AT" }, async page => {
  await settled(page);
  assert.equal(await page.locator("html").getAttribute("lang"), "de");
  assert.match(await headline(page), /Kaufen Sie/);
  const response = await answered(page, () => page.getByRole("button", { name: "English" }).click());
  assert.equal(response.request().headers()["accept-language"], "en");
  assert.equal(await page.locator("html").getAttribute("lang"), "en");
  assert.match(await headline(page), /Buy/);
  await page.reload();
  await settled(page);
  assert.match(await headline(page), /Buy/);
});

export const inches_are_converted_and_the_millimetres_shown = given => withPage(given, {}, async page => {
  await settled(page);
  await answered(page, () => control(page, "telescopes.0.apertureUnit").selectOption("in"));
  assert.equal(await control(page, "telescopes.0.apertureMm").inputValue(), "7.99");
  const response = await answered(page, () => control(page, "telescopes.0.apertureMm").fill("10"));
  assert.equal(response.request().postDataJSON().telescopes[0].apertureMm, 254);
  await page.getByText("10 inches = 254 mm").waitFor();
});

export const nothing_moves_where_reduced_motion_is_asked_for = given => withPage(given, { reducedMotion: "reduce" }, async page => {
  await settled(page);
  const moving = await page.evaluate(() => [...document.querySelectorAll("*")].filter(node => {
    const { transitionDuration, animationName } = getComputedStyle(node);
    return animationName !== "none" || transitionDuration.split(",").some(duration => Number.parseFloat(duration) > 0);
  }).length);
  assert.equal(moving, 0);
});
